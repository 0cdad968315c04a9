import { atMost, dyeClassOf, fails, gradedTests, inDate } from './dyeVerdict.ts';
import type { Band } from './limit.ts';
import type { PlanColour, PlanFacts } from './planFacts.ts';
import { missingDyeTests, unnamedParts } from './requiredDyeTests.ts';
import { bookOf, type Rulebook, shippedRulebook } from './rulebook.ts';
import { dyeLimits, limitsFrom, ruleLimits, type SourcedLimit } from './sourcedLimit.ts';
import { isRecorded, provenBaths } from './testCoverage.ts';
import type { ColourVerdict, DyeStanding, RequiredDyeTest } from './washPlan.ts';

/** The acid rinse that was tested; a failure covers nothing. */
const acidCover = (book: Rulebook, facts: PlanFacts, colour: string) =>
  gradedTests(facts, colour).find(
    ({ test, grade }) =>
      test.liquid === 'acid rinse' && !fails(grade) && inDate(book, test) && isRecorded(book, test),
  )?.test;

const around = ({ tests: settings }: Rulebook, pH: number): Band => ({
  least: Math.max(0, pH - settings.phTolerance),
  most: Math.min(14, pH + settings.phTolerance),
});

/** What the tests of a colour cover: no stronger, warmer or longer, and near the tested pH. */
function coverage(facts: PlanFacts, colour: PlanColour, verdict: ColourVerdict): readonly SourcedLimit[] {
  const book = bookOf(facts);
  const settings = book.tests;
  const acid = acidCover(book, facts, colour.id);
  const row = book.dyes['coverage'];
  if (row === undefined) throw new Error('no row coverage in data/wash/dyeTests.json');
  const { because, source } = row;
  const origin = { rule: 'test coverage', because, source, about: colour.name } as const;
  const thin = verdict.traits.includes('thin margin');
  const bathLimits = provenBaths(facts, colour).flatMap((bath) => {
    if (bath === undefined) return [];
    const { pH, temperatureC, minutes, strengthGPerL } = bath;
    // With no margin shown the tested pH itself is the cap on the alkaline side.
    const bathPh = thin ? { ...around(book, pH), most: pH } : around(book, pH);
    return limitsFrom({ bathPh, temperatureC, bathMinutes: minutes, strengthGPerL }, origin);
  });
  const runs = gradedTests(facts, colour.id).some(
    ({ test, grade }) => (test.liquid === 'margin' || test.liquid === 'alkali challenge') && fails(grade),
  );
  // Where the margin or alkali itself made it run, no bath that anybody mixes goes past the tested pH.
  const capped = runs
    ? provenBaths(facts, colour).flatMap((bath) =>
        bath === undefined
          ? []
          : dyeLimits(book, 'thin margin', colour.name, {
              more: { bathPh: { least: 0, most: bath.pH }, temperatureC: bath.temperatureC },
            }),
      )
    : [];
  const sensitive = verdict.traits.includes('acid sensitive');
  const tested = acid?.pH;
  const weaker = Math.max(settings.acidFloorPh, (tested ?? 0) + settings.acidFloorStepPh);
  // Stronger acid than the tested one is not covered; one that changed the colour must be clearly weaker.
  const finalPh = {
    least: sensitive ? weaker : tested === undefined ? settings.acidFloorPh : tested - settings.phTolerance,
    most: 14,
  };
  const acidLimits = sensitive
    ? dyeLimits(book, 'acid sensitive', colour.name, { more: { finalPh } })
    : limitsFrom({ finalPh }, origin);
  return [...bathLimits, ...capped, ...acidLimits];
}

function verdictLimits(
  facts: PlanFacts,
  verdict: ColourVerdict,
  graded: DyeStanding,
  crockMissing: boolean,
): readonly SourcedLimit[] {
  const book = bookOf(facts);
  const { name, standing, traits, binding } = verdict;
  const slowHours = book.dyes['slow bleeder']?.limits.totalWetHours ?? 0;
  const tooSlow = (facts.expectedDryingHours ?? Number.POSITIVE_INFINITY) > slowHours;
  const bath = binding?.liquid === 'planned bath' && atMost(binding.grade, '2-3');
  return [
    ...(standing === 'stable' ? [] : dyeLimits(book, standing, name, { assumed: standing === 'unknown' })),
    // A bad reading counts on while other tests are missing.
    ...(standing === 'unknown' && graded !== 'stable' ? dyeLimits(book, graded, name) : []),
    ...(crockMissing ? dyeLimits(book, 'surface colour', name, { assumed: true }) : []),
    ...(bath ? ruleLimits(book, 'R01', 'bath', name) : []),
    ...traits.flatMap((trait): readonly SourcedLimit[] => {
      // Its floor of pH stands with what the acid rinse covers.
      if (trait === 'acid sensitive') return [];
      if (trait === 'surface colour') {
        return [...dyeLimits(book, trait, name), ...ruleLimits(book, 'R02', 'colour', name)];
      }
      if (trait === 'slow bleeder' && tooSlow) {
        return [...dyeLimits(book, 'slow bleeder', name), ...dyeLimits(book, 'slow bleeder too slow', name)];
      }
      return dyeLimits(book, trait, name);
    }),
  ];
}

/** What the dyes allow: each colour's class and what its tests cover. */
export interface DyePart {
  readonly verdicts: readonly ColourVerdict[];
  readonly missing: readonly RequiredDyeTest[];
  readonly limits: readonly SourcedLimit[];
}

/**
 * The limits that the dyes set.
 *
 * @param facts - what is known of the rug; no colour named counts as all loose
 * @source workshop-setting, table of dye classes (data/wash/dyeTests.json)
 */
export function dyePart(facts: PlanFacts): DyePart {
  const book = bookOf(facts);
  const colours = facts.colours ?? [];
  if (colours.length === 0) {
    return { verdicts: [], missing: [], limits: ruleLimits(book, 'R40', 'colours', 'no colour named', true) };
  }
  const missing = missingDyeTests(facts);
  const waits = (id: string) => missing.some((test) => test.colour === id && test.blocksWetWork);
  const parts = colours.map((colour) => {
    // A bath nobody tested is not covered, however well the colour stood cold water.
    const uncovered = provenBaths(facts, colour).includes(undefined);
    const graded = dyeClassOf(facts, colour, false).standing;
    const waiting = waits(colour.id) || (uncovered && graded !== 'do not immerse');
    const verdict = dyeClassOf(facts, colour, waiting);
    const crockMissing = missing.some((test) => test.colour === colour.id && test.liquid === 'dry crock');
    return {
      verdict,
      limits: [...verdictLimits(facts, verdict, graded, crockMissing), ...coverage(facts, colour, verdict)],
    };
  });
  const unnamed = unnamedParts(facts).flatMap(({ rule, caseName, finding }) =>
    ruleLimits(book, rule, caseName, finding, true),
  );
  const own = [...parts.flatMap(({ limits }) => limits), ...unnamed];
  const bands = own.flatMap((limit) =>
    limit.axis === 'bathPh' && limit.rule === 'test coverage' && limit.value !== 'no liquid'
      ? [limit.value]
      : [],
  );
  const apart =
    bands.length > 1 &&
    Math.max(...bands.map(({ least }) => least)) > Math.min(...bands.map(({ most }) => most));
  return {
    verdicts: parts.map(({ verdict }) => verdict),
    missing,
    limits: [...own, ...(apart ? dyeLimits(book, 'no common bath', 'all colours together') : [])],
  };
}

/** Temperature a bath is tested and worked at when nothing caps it [°C]. @source workshop-setting */
export const usualBathTemperatureC = shippedRulebook.shop.bathTemperatureC;
