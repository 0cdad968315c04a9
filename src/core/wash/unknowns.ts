import fibreTable from '../../../data/wash/fibres.json' with { type: 'json' };
import { gradedTests } from './dyeVerdict.ts';
import { hasBackingAlways } from './materialLimits.ts';
import type { Construction, DyeTest, Fibre, PlanColour, PlanFacts } from './planFacts.ts';
import { missingDyeTests, unnamedParts } from './requiredDyeTests.ts';
import { bookOf } from './rulebook.ts';
import type { RequiredDyeTest } from './washPlan.ts';

/** Something not known, what was assumed, and the facts as they would be if it turned out well. */
export interface Unknown {
  readonly fact: string;
  readonly find: string;
  readonly assumed: string;
  readonly favourable: string;
  readonly hopeful: (facts: PlanFacts) => PlanFacts;
}

const { favourable } = fibreTable;

/** The reading that would clear a required test. */
const clearing = (test: RequiredDyeTest): DyeTest => ({
  colour: test.colour,
  side: test.side,
  liquid: test.liquid,
  agents: test.agents,
  outcome: 'graded',
  grade: '5',
  colourChangeGrade: '5',
  ageDays: 0,
  atUrinePlace: test.atUrinePlace,
  ...(test.strengthGPerL === undefined ? {} : { strengthGPerL: test.strengthGPerL }),
  ...(test.pH === undefined ? {} : { pH: test.pH }),
  ...(test.temperatureC === undefined ? {} : { temperatureC: test.temperatureC }),
  ...(test.minutes === undefined ? {} : { minutes: test.minutes }),
});

/** Adds clearing readings until nothing is missing: a cleared liquid may call for a stronger one. */
function allTested(facts: PlanFacts): PlanFacts {
  let tested = facts;
  for (let round = 0; round < 4; round++) {
    const missing = missingDyeTests(tested);
    if (missing.length === 0) break;
    tested = { ...tested, dyeTests: [...(tested.dyeTests ?? []), ...missing.map(clearing)] };
  }
  return tested;
}

const unknownFibre = (fibre: Fibre | undefined) => fibre === undefined || fibre === 'unknown';

function materialUnknowns(facts: PlanFacts): readonly Unknown[] {
  const { pile = {}, foundation = {}, construction = 'unknown' } = facts;
  const found: Unknown[] = [];
  if (construction === 'unknown') {
    found.push({
      fact: 'construction',
      find: 'Look at the back, the edges and one knot: how is it made?',
      assumed: 'the most sensitive construction',
      favourable: favourable.construction,
      hopeful: (now) => ({ ...now, construction: favourable.construction as Construction }),
    });
  }
  if (Object.keys(pile).length === 0 || (pile.unknown ?? 0) > 0) {
    found.push({
      fact: 'pile fibre',
      find: 'Burn or solubility test, or microscope, on a few pile fibres.',
      assumed: 'the most sensitive fibre',
      favourable: favourable.pile,
      hopeful: (now) => ({ ...now, pile: { [favourable.pile as Fibre]: 1 } }),
    });
  }
  const isOpen = {
    warp: construction !== 'felt' && unknownFibre(foundation.warp),
    weft: construction !== 'felt' && unknownFibre(foundation.weft),
    backing:
      foundation.backing === 'unknown' || (foundation.backing === undefined && hasBackingAlways(facts)),
  };
  for (const part of ['warp', 'weft', 'backing'] as const) {
    if (!isOpen[part]) continue;
    const from = part === 'backing' ? 'its edge' : 'the fringe or an open edge';
    found.push({
      fact: `${part} fibre`,
      find: `Burn test on a thread of the ${part}, from ${from}.`,
      assumed: 'the most sensitive fibre',
      favourable: favourable[part],
      hopeful: (now) => ({ ...now, foundation: { ...now.foundation, [part]: favourable[part] as Fibre } }),
    });
  }
  if (construction === 'tufted' && (facts.latex ?? 'unknown') === 'unknown') {
    found.push({
      fact: 'latex',
      find: 'Bend a corner of the back: does the latex powder, crack or smell?',
      assumed: 'failing',
      favourable: 'sound',
      hopeful: (now) => ({ ...now, latex: 'sound' }),
    });
  }
  return found;
}

function conditionUnknowns(facts: PlanFacts): readonly Unknown[] {
  const unseen: readonly Unknown[] =
    facts.findings !== undefined && facts.lookedOver !== false
      ? []
      : [
          {
            fact: 'condition',
            find: 'Look the rug over, face and back, and record what is there.',
            assumed: 'the worst',
            favourable: facts.findings === undefined ? 'nothing found' : 'nothing more found',
            hopeful: (now) => ({ ...now, findings: now.findings ?? [], lookedOver: true }),
          },
        ];
  const suspected = (facts.findings ?? [])
    .filter(({ certainty }) => certainty === 'suspected')
    .map(({ code }) => ({
      fact: code,
      find: `Find out whether there is ${code}.`,
      assumed: 'present',
      favourable: 'ruled out',
      hopeful: (now: PlanFacts) => ({
        ...now,
        findings: (now.findings ?? []).map((one) =>
          one.code === code ? { ...one, certainty: 'ruled out' as const } : one,
        ),
      }),
    }));
  return [...unseen, ...suspected];
}

/** Colours wait together: clearing one of several frees nothing, so each question is asked once for all. */
function dyeUnknowns(facts: PlanFacts): readonly Unknown[] {
  const colours = facts.colours ?? [];
  const found: Unknown[] = [];
  const waiting = [...new Set(missingDyeTests(facts).map(({ name }) => name))];
  if (waiting.length > 0) {
    found.push({
      fact: 'dye tests',
      find: `Make the dye tests still missing: ${waiting.join(', ')}.`,
      assumed: 'loose',
      favourable: 'fast in every liquid',
      hopeful: allTested,
    });
  }
  for (const { finding, kind } of unnamedParts(facts)) {
    found.push({
      fact: kind,
      find: `Name the ${kind} (${finding}) among the colours, and test it.`,
      assumed: 'loose',
      favourable: 'fast in every liquid',
      hopeful: (now) =>
        allTested({
          ...now,
          colours: [
            ...(now.colours ?? []),
            { id: kind, name: kind, kind, dyeClass: favourable.dye as 'chrome' },
          ],
        }),
    });
  }
  const changed = (some: readonly PlanColour[], change: Partial<PlanColour>) => (now: PlanFacts) => ({
    ...now,
    colours: (now.colours ?? []).map((one) =>
      some.some(({ id }) => id === one.id) ? { ...one, ...change } : one,
    ),
  });
  const names = (some: readonly PlanColour[]) => some.map(({ name }) => name).join(', ');
  const unclassed = colours.filter(({ dyeClass = 'unknown' }) => dyeClass === 'unknown');
  if (unclassed.length > 0) {
    found.push({
      fact: `dye class of ${names(unclassed)}`,
      find: `Find out what kind of dye it is: ${names(unclassed)}.`,
      assumed: 'indigo, natural and acid at once',
      favourable: favourable.dye,
      hopeful: changed(unclassed, { dyeClass: favourable.dye as 'chrome' }),
    });
  }
  // The neighbour decides only where the cloth was marked at grade 3.
  const beside = colours.filter(
    ({ id, besideLightField }) =>
      besideLightField === undefined && gradedTests(facts, id).some(({ grade }) => grade === '3'),
  );
  if (beside.length > 0) {
    found.push({
      fact: `neighbours of ${names(beside)}`,
      find: `Look whether a light colour touches it: ${names(beside)}.`,
      assumed: 'yes',
      favourable: 'no',
      hopeful: changed(beside, { besideLightField: false }),
    });
  }
  return found;
}

function workUnknowns(facts: PlanFacts): readonly Unknown[] {
  const found: Unknown[] = [];
  if (facts.expectedDryingHours === undefined) {
    const hours = bookOf(facts).shop.favourableDryingHours;
    found.push({
      fact: 'drying time',
      find: 'Say how many hours it will need to dry with what hangs already.',
      assumed: 'more than 48 h',
      favourable: `${hours} h`,
      hopeful: (now) => ({ ...now, expectedDryingHours: hours }),
    });
  }
  if (facts.valueAboveAuthority === undefined) {
    found.push({
      fact: 'declared value',
      find: 'Ask what the rug is worth to its owner.',
      assumed: 'above the washer’s authority',
      favourable: 'within it',
      hopeful: (now) => ({ ...now, valueAboveAuthority: false }),
    });
  }
  if (facts.dryMassKg === undefined) {
    found.push({
      fact: 'dry mass',
      find: 'Weigh the rug dry.',
      assumed: 'the heaviest of its kind',
      favourable: 'the lightest of its kind',
      hopeful: (now) => {
        const band = bookOf(now).shop.massKgPerM2[now.construction ?? 'unknown'];
        return { ...now, dryMassKg: band.least * now.areaM2 };
      },
    });
  }
  if (facts.route === 'heritage piece' && facts.signOffs?.includes('conservator') !== true) {
    found.push({
      fact: 'conservator’s signature',
      find: 'Ask a conservator to judge a wet treatment and sign.',
      assumed: 'not given',
      favourable: 'given',
      hopeful: (now) => ({ ...now, signOffs: [...(now.signOffs ?? []), 'conservator'] }),
    });
  }
  return found;
}

/**
 * Everything that is not known of a rug and could loosen its plan, in the order a workshop would find out.
 *
 * @source none: rule of this project; unknown counts as the most sensitive candidate
 */
export const unknownsOf = (facts: PlanFacts): readonly Unknown[] => [
  ...materialUnknowns(facts),
  ...conditionUnknowns(facts),
  ...workUnknowns(facts),
  ...dyeUnknowns(facts),
];
