import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { within, withinOn } from './limit.ts';
import { agentsAllowed } from './mixtures.ts';
import {
  constructions,
  type DyeTest,
  dyes,
  type Fibre,
  type FindingCode,
  fibres,
  findingCodes,
  type Grade,
  grades,
  type PlanFacts,
  ruleIds,
  type TestLiquid,
} from './planFacts.ts';
import { planWash, tightens } from './planWash.ts';
import { missingDyeTests } from './requiredDyeTests.ts';
import { shippedRulebook } from './rulebook.ts';

const bathTest = (liquid: TestLiquid, grade: Grade, more: Partial<DyeTest> = {}): DyeTest => ({
  colour: 'red',
  side: 'face',
  liquid,
  outcome: 'graded',
  grade,
  colourChangeGrade: '5',
  ageDays: 1,
  pH: liquid === 'acid rinse' ? 5 : 6.5,
  temperatureC: liquid === 'margin' ? 38 : liquid === 'planned bath' ? 28 : 20,
  minutes: liquid === 'covered 24 h' ? 1440 : liquid === 'margin' ? 30 : 20,
  strengthGPerL: 8,
  ...more,
});
const liquids: readonly TestLiquid[] = [
  'dry crock',
  'damp crock',
  'cold water',
  'planned bath',
  'acid rinse',
  'margin',
  'covered 24 h',
];
/** All liquids read on both faces; `grade` is the planned bath's. */
const tested = (grade: Grade = '5', more: Partial<Record<TestLiquid, Grade>> = {}): readonly DyeTest[] =>
  (['face', 'back'] as const).flatMap((side) =>
    liquids.map((liquid) =>
      bathTest(liquid, more[liquid] ?? (liquid === 'planned bath' ? grade : '5'), { side }),
    ),
  );

/** A wool rug about which everything is known and nothing is wrong. */
const soundRug: PlanFacts = {
  route: 'rug in use',
  construction: 'knotted pile',
  pile: { wool: 1 },
  foundation: { warp: 'wool', weft: 'wool' },
  areaM2: 2,
  lengthM: 2,
  dryMassKg: 6,
  liftingLimitKg: 40,
  pileHeightMm: 8,
  colours: [
    {
      id: 'red',
      name: 'red',
      kind: 'field colour',
      dyeClass: 'chrome',
      besideLightField: false,
      atUrinePlace: false,
    },
  ],
  dyeTests: tested(),
  findings: [],
  stains: [],
  expectedDryingHours: 20,
  soiling: 'soiled',
  monthsSinceWash: 120,
  valueAboveAuthority: false,
};
const found = (...codes: readonly FindingCode[]): PlanFacts => ({
  ...soundRug,
  findings: codes.map((code) => ({ code })),
});
const bare = (facts: PlanFacts) => {
  const plan = planWash(facts);
  return plan.ok ? plan.value : null;
};

interface Case {
  readonly rug: string;
  readonly facts: PlanFacts;
  /** Method, or the code of the refusal. */
  readonly gives: string;
  /** The rule that binds, and why a master would say so. */
  readonly rule: string;
  readonly because: string;
}

const c = (rug: string, facts: PlanFacts, gives: string, rule: string, because: string): Case => ({
  rug,
  facts,
  gives,
  rule,
  because,
});

/** Expectations of a careful workshop; common practice, no published source, where none is named. */
const cases: readonly Case[] = [
  c('sound wool', soundRug, 'full immersion', 'fibre wool', 'nothing forbids a bath'),
  c(
    'nobody tested',
    { ...soundRug, dyeTests: [] },
    'dry only',
    'dye unknown',
    'every untested colour counts as unstable',
  ),
  c(
    'tests two months old',
    { ...soundRug, dyeTests: tested().map((one) => ({ ...one, ageDays: 60 })) },
    'dry only',
    'dye unknown',
    'a test covers thirty days',
  ),
  c(
    'bath not tested, only water',
    { ...soundRug, dyeTests: tested().filter(({ liquid }) => liquid !== 'planned bath') },
    'dry only',
    'dye unknown',
    'water says nothing about detergent',
  ),
  c(
    'reading unclear',
    {
      ...soundRug,
      dyeTests: tested().map((one) =>
        one.liquid === 'planned bath' ? { ...one, outcome: 'unclear' as const } : one,
      ),
    },
    'dry only',
    'dye unknown',
    'unclear is not passed',
  ),
  c(
    'grade 4 in the bath',
    { ...soundRug, dyeTests: tested('4') },
    'full immersion',
    'dye watch',
    'cool, slightly acid, short',
  ),
  c(
    'grade 3-4 in the bath',
    { ...soundRug, dyeTests: tested('3-4') },
    'flow wash',
    'dye controlled',
    'no soak, acid first, test again',
  ),
  c(
    'grade 3 beside dark colours',
    { ...soundRug, dyeTests: tested('3') },
    'flow wash',
    'dye controlled',
    'a run would not show',
  ),
  c(
    'grade 3 beside ivory',
    {
      ...soundRug,
      dyeTests: tested('3'),
      colours: [{ id: 'red', name: 'red', kind: 'field colour', dyeClass: 'chrome', besideLightField: true }],
    },
    'low moisture',
    'dye do not immerse',
    'a run would show for good',
  ),
  c(
    'grade 2 in the bath',
    { ...soundRug, dyeTests: tested('2') },
    'low moisture',
    'R01',
    'CCI Notes 13/14: dye migration cannot be undone',
  ),
  c(
    'grade 2 long ago',
    { ...soundRug, dyeTests: tested('2').map((one) => ({ ...one, ageDays: 400 })) },
    'low moisture',
    'dye do not immerse',
    'a bad grade does not age',
  ),
  c(
    'loose dry colour',
    { ...soundRug, dyeTests: tested('5', { 'dry crock': '3' }) },
    'full immersion',
    'R02',
    'no wet brushing, disclose',
  ),
  c(
    'holds the bath, runs overnight',
    { ...soundRug, dyeTests: tested('5', { 'covered 24 h': '3' }) },
    'low moisture',
    'dye slow bleeder too slow',
    'twenty hours to dry are too long',
  ),
  c(
    'runs overnight, dries in ten hours',
    { ...soundRug, expectedDryingHours: 10, dyeTests: tested('5', { 'covered 24 h': '3' }) },
    'full immersion',
    'dye slow bleeder',
    'dry before it runs',
  ),
  c(
    'photograph says one in ten it is a 3',
    {
      ...soundRug,
      dyeTests: tested().map((one) =>
        one.liquid === 'planned bath' ? { ...one, gradeProbabilities: { '3': 0.1, '4-5': 0.9 } } : one,
      ),
    },
    'flow wash',
    'dye controlled',
    'the worst grade above 5 % rules',
  ),
  c(
    'no colour named',
    { ...soundRug, colours: [], dyeTests: [] },
    'dry only',
    'R40',
    'every dye counts as loose',
  ),
  c(
    'viscose pile',
    { ...soundRug, pile: { viscose: 1 } },
    'low moisture',
    'R05',
    'half its strength is gone when wet',
  ),
  c(
    'wool with a little viscose',
    { ...soundRug, pile: { wool: 0.8, viscose: 0.2 } },
    'low moisture',
    'R05',
    'the weak fibre decides',
  ),
  c('silk pile', { ...soundRug, pile: { silk: 1 } }, 'full immersion', 'R06', 'neutral, cool, by hand, flat'),
  c(
    'silk foundation',
    { ...soundRug, foundation: { warp: 'silk', weft: 'silk' } },
    'full immersion',
    'R06',
    'the foundation carries the wet weight',
  ),
  c('jute pile', { ...soundRug, pile: { jute: 1 } }, 'dry only', 'R07', 'browns and rots'),
  c(
    'jute weft',
    { ...soundRug, foundation: { warp: 'cotton', weft: 'jute' } },
    'low moisture',
    'R07',
    'damp it only',
  ),
  c('seagrass', { ...soundRug, pile: { seagrass: 1 } }, 'dry only', 'R07', 'browns and rots'),
  c('unknown pile', { ...soundRug, pile: { unknown: 1 } }, 'dry only', 'R40', 'it could be jute'),
  c(
    'tufted, sound latex',
    { ...soundRug, construction: 'tufted', latex: 'sound' },
    'full immersion',
    'R10',
    'flat, no spin, consent',
  ),
  c(
    'tufted, failing latex',
    { ...soundRug, construction: 'tufted', latex: 'failing' },
    'low moisture',
    'R09',
    'it would come apart',
  ),
  c(
    'tufted, nobody looked',
    { ...soundRug, construction: 'tufted' },
    'low moisture',
    'R09',
    'unknown counts as failing',
  ),
  c('felt', { ...soundRug, construction: 'felt', foundation: {} }, 'low moisture', 'R11', 'shrinks'),
  c(
    'flatweave',
    { ...soundRug, construction: 'flatweave' },
    'full immersion',
    'R25',
    'block to size, dry flat',
  ),
  c(
    'unknown construction',
    { ...soundRug, construction: 'unknown' },
    'low moisture',
    'R40',
    'it could be tufted with failing latex',
  ),
  c('metal thread', found('metal thread'), 'dry only', 'R12', 'CCI Notes 13/14: composite objects'),
  c('beads', found('beads'), 'dry only', 'R12', 'CCI Notes 13/14: composite objects'),
  c('dry rot', found('dry rot'), 'panel wash', 'R13', 'supported, a panel at a time'),
  c('hole in the field', found('hole'), 'full immersion', 'mark open damage', 'held first'),
  c('open end', found('open ends'), 'full immersion', 'R14', 'secured before water'),
  c('old repair', found('old repair'), 'full immersion', 'R15', 'AIC V.B: test the yarn'),
  c('painted tips', { ...found('painted'), dyeTests: tested() }, 'full immersion', 'R16', 'disclosed'),
  c('corroded brown', found('corroded brown'), 'full immersion', 'R18', 'least agitation, no chelator'),
  c('lined', found('lined'), 'dry only', 'R26', 'CCI Notes 13/14: layers shrink apart'),
  c('colours ran before', found('colour run'), 'dry only', 'R03', 'agree an aim first'),
  c(
    'colours ran, aim agreed',
    { ...found('colour run'), correctiveAimAgreed: true },
    'flow wash',
    'R03',
    'correction without soaking',
  ),
  c('living moth', found('active moth'), 'wash-blocked', 'R27', 'CCI Notes 3/3: quarantine'),
  c('mould at work', found('active mould'), 'wash-blocked', 'R28', 'CCI Notes 13/15: quarantine'),
  c('old insecticide', found('old insecticide'), 'dry only', 'R30', 'laboratory first'),
  c('sewage', found('category 3 water'), 'full immersion', 'R29', 'IICRC S500: a line of its own'),
  c(
    'heritage, no conservator',
    { ...soundRug, route: 'heritage piece' },
    'dry only',
    'R33',
    'a second judgement before water',
  ),
  c(
    'heritage, conservator signed',
    { ...soundRug, route: 'heritage piece', signOffs: ['conservator'] },
    'full immersion',
    'R33',
    'signed',
  ),
  c(
    'client refuses tests and signs',
    { ...soundRug, clientRefusals: [{ what: 'dye test', signed: true }] },
    'dry only',
    'R34',
    'no water without tests',
  ),
  c(
    'client refuses disclosure',
    { ...soundRug, clientRefusals: [{ what: 'disclosure', signed: false }] },
    'wash-blocked',
    'R34',
    'no consent',
  ),
  c(
    'washed in spring, dusty',
    { ...soundRug, monthsSinceWash: 6, soiling: 'dust only' },
    'dry only',
    'R35',
    'needless wetting',
  ),
  c('dryer down', { ...soundRug, equipmentDown: ['dryer'] }, 'dry only', 'R36', 'could not be finished'),
  c(
    'sixty hours to dry',
    { ...soundRug, expectedDryingHours: 60 },
    'dry only',
    'R38',
    'US EPA: dry within 48 hours',
  ),
  c(
    'sixty hours, owner overrides',
    { ...soundRug, expectedDryingHours: 60, overrides: [{ rule: 'R38', reason: 'two fans more' }] },
    'full immersion',
    'fibre wool',
    'the owner answers for it',
  ),
  c(
    'promised tomorrow',
    { ...soundRug, promiseHours: 24 },
    'wash-promise-too-early',
    'R39',
    'twenty hours and a day of watching',
  ),
  c(
    'condition not recorded',
    { ...soundRug, findings: undefined as never },
    'dry only',
    'R40',
    'the worst is assumed',
  ),
  c(
    'indigo with a reducer',
    {
      ...soundRug,
      colours: [
        { id: 'red', name: 'blue', kind: 'field colour', dyeClass: 'indigo', besideLightField: false },
      ],
      plannedBaths: [{ purpose: 'brighten', agents: ['dithionite'], pH: 6 }],
    },
    'wash-agent-forbidden',
    'R19',
    'indigo dissolves',
  ),
  c(
    'protease on wool',
    { ...soundRug, plannedBaths: [{ purpose: 'pre-spray', agents: ['protease'], pH: 7 }] },
    'wash-agent-forbidden',
    'R21',
    'it digests the pile',
  ),
  c(
    'chlorine on wool',
    { ...soundRug, plannedBaths: [{ purpose: 'whiten', agents: ['hypochlorite'], pH: 9 }] },
    'wash-agent-forbidden',
    'R22',
    'ISO 1833-4 dissolves wool this way',
  ),
  c(
    'acid and bisulfite at pH 3',
    { ...soundRug, plannedBaths: [{ purpose: 'strip', agents: ['citric acid', 'metabisulfite'], pH: 3 }] },
    'wash-mixture-forbidden',
    'R24',
    'sulfur dioxide',
  ),
  c(
    'bisulfite, pH not known',
    { ...soundRug, plannedBaths: [{ purpose: 'strip', agents: ['citric acid', 'metabisulfite'] }] },
    'wash-mixture-forbidden',
    'R24',
    'unknown counts as worst',
  ),
  c(
    'peroxide and ammonia on acid dye',
    {
      ...soundRug,
      colours: [{ id: 'red', name: 'red', kind: 'field colour', dyeClass: 'acid', besideLightField: false }],
      plannedBaths: [{ purpose: 'brighten', agents: ['hydrogen peroxide', 'ammonia'], pH: 8 }],
    },
    'wash-mixture-forbidden',
    'R23',
    'the dye is stripped',
  ),
];

describe('a master’s table', () => {
  test.each(cases.map((one) => [one.rug, one] as const))('%s', (_rug, { facts, gives, rule }) => {
    const plan = planWash(facts);
    if (!plan.ok) {
      expect(plan.problem.code).toBe(gives);
      expect(JSON.stringify(plan.problem.facts)).toContain(`"${rule}"`);
      return;
    }
    expect(plan.value.method).toBe(gives);
    const rules: readonly string[] = plan.value.limits.map((limit) => limit.rule);
    expect(rules).toContain(rule);
  });
  test('there are at least forty, and each says why', () => {
    expect(cases.length).toBeGreaterThanOrEqual(40);
    for (const { because } of cases) expect(because.length).toBeGreaterThan(3);
  });
});

const anyRug: fc.Arbitrary<PlanFacts> = fc
  .record({
    construction: fc.constantFrom(...constructions),
    pile: fc.constantFrom(...fibres),
    warp: fc.constantFrom(...fibres),
    weft: fc.constantFrom(...fibres),
    dyeClass: fc.constantFrom(...dyes),
    grade: fc.constantFrom<Grade>(...grades),
    findings: fc.subarray([...findingCodes], { maxLength: 4 }),
    hours: fc.constantFrom(8, 20, 30, 60),
    stain: fc.constantFrom('tannin', 'rust', 'synthetic dye', 'mould stain', 'oil, wax or gum' as const),
  })
  .map(({ construction, pile, warp, weft, dyeClass, grade, findings, hours, stain }) => ({
    ...soundRug,
    construction,
    pile: { [pile]: 1 } as { readonly [F in Fibre]?: number },
    foundation: { warp, weft },
    colours: [
      {
        id: 'red',
        name: 'red',
        kind: 'field colour',
        dyeClass,
        besideLightField: false,
        atUrinePlace: false,
      },
    ],
    dyeTests: [...tested(grade), bathTest('spotter', '5', { agents: ['citric acid'] })],
    findings: findings.map((code) => ({ code })),
    expectedDryingHours: hours,
    stains: [{ id: 's1', class: stain }],
  }));

describe('laws over every combination of material, dye and finding', () => {
  test('a plan exists or refuses with a reason, and its steps never leave its limits', () => {
    fc.assert(
      fc.property(anyRug, (facts) => {
        const plan = planWash(facts);
        if (!plan.ok) {
          expect(plan.problem.code).toMatch(/^wash-/);
          return;
        }
        const { bounds, steps, method } = plan.value;
        const dry = withinOn('method', method, 'dry only');
        let wetMinutes = 0;
        for (const step of steps) {
          expect(agentsAllowed(step.agents, bounds)).toBe(true);
          if (dry) expect(step.wet).toBe(false);
          if (step.wet) wetMinutes += step.dwellMinutes ?? 0;
          if (step.temperatureC !== undefined)
            expect(step.temperatureC.most).toBeLessThanOrEqual(bounds.temperatureC);
          const acid = step.kind === 'acid rinse' || step.kind === 'acid pre-treatment';
          const cap = acid ? bounds.finalPh : bounds.bathPh;
          if (step.targetPh !== undefined && cap !== 'no liquid') {
            expect(step.targetPh.least).toBeGreaterThanOrEqual(cap.least);
            expect(step.targetPh.most).toBeLessThanOrEqual(cap.most);
          }
        }
        expect(wetMinutes).toBeLessThanOrEqual(bounds.wetMinutes + 1e-9);
      }),
      { numRuns: 700 },
    );
  });

  test('one more finding never loosens any axis', () => {
    fc.assert(
      fc.property(anyRug, fc.constantFrom(...findingCodes), (facts, code) => {
        const before = bare(facts);
        const after = bare({ ...facts, findings: [...(facts.findings ?? []), { code }] });
        if (before === null || after === null) return;
        expect(within(after.bounds, before.bounds)).toBe(true);
        expect(tightens(after, before)).toEqual([]);
      }),
      { numRuns: 700 },
    );
  });

  test('after a refusal one more finding does not make a plan', () => {
    fc.assert(
      fc.property(anyRug, fc.constantFrom(...findingCodes), (facts, code) => {
        const before = planWash(facts);
        if (before.ok || before.problem.code !== 'wash-blocked') return;
        expect(planWash({ ...facts, findings: [...(facts.findings ?? []), { code }] }).ok).toBe(false);
      }),
      { numRuns: 400 },
    );
  });

  test('what would loosen a plan truly does, and never tightens what it names', () => {
    fc.assert(
      fc.property(anyRug, (facts) => {
        const plan = bare({ ...facts, findings: undefined as never, pile: { unknown: 1 } });
        if (plan === null) return;
        for (const { axis, from, to } of plan.loosens.flatMap(({ allows }) => allows)) {
          if (axis === 'steps') continue;
          expect(withinOn(axis, from as never, to as never) && from === to).toBe(false);
          expect(withinOn(axis, to as never, from as never)).toBe(false);
        }
      }),
      { numRuns: 200 },
    );
  });
});

describe('dye tests', () => {
  test('the weakest liquid comes first, and the first failure ends the row', () => {
    const order = missingDyeTests({ ...soundRug, dyeTests: [] }).map(({ liquid }) => liquid);
    expect(order.slice(0, 3)).toEqual(['dry crock', 'damp crock', 'cold water']);
    const failed = missingDyeTests({ ...soundRug, dyeTests: [bathTest('cold water', '2')] });
    expect(failed.map(({ liquid }) => liquid)).toEqual(['dry crock', 'damp crock']);
  });
  test('a flatweave is tested on both faces, a knotted rug on one', () => {
    const count = (construction: PlanFacts['construction']) =>
      missingDyeTests({ ...soundRug, construction: construction ?? 'unknown', dyeTests: [] }).length;
    expect(count('flatweave')).toBe(2 * count('knotted pile'));
  });
  test('urine asks for tests at its place', () => {
    const urine: PlanFacts = {
      ...found('urine'),
      colours: [{ id: 'red', name: 'red', kind: 'field colour', dyeClass: 'chrome' }],
    };
    expect(missingDyeTests(urine).some(({ atUrinePlace }) => atUrinePlace)).toBe(true);
  });
  test('a wet time above twelve hours asks for a day under cover', () => {
    const quick = missingDyeTests({ ...soundRug, expectedDryingHours: 10, dyeTests: [] }).map(
      ({ liquid }) => liquid,
    );
    const slow = missingDyeTests({ ...soundRug, expectedDryingHours: 14, dyeTests: [] }).map(
      ({ liquid }) => liquid,
    );
    expect(quick).not.toContain('covered 24 h');
    expect(slow).toContain('covered 24 h');
  });
  test('the plan is no warmer, stronger or longer than what was tested', () => {
    const cool = tested().map((one) =>
      one.liquid === 'planned bath' ? { ...one, temperatureC: 22, minutes: 8 } : one,
    );
    const plan = bare({ ...soundRug, dyeTests: cool });
    expect(plan?.bounds.temperatureC).toBeLessThanOrEqual(22);
    expect(plan?.bounds.bathMinutes).toBeLessThanOrEqual(8);
  });
});

test('a wet plan carries the usual cautions: skin, gas, eyes, mixtures, current, waste water', () => {
  expect(bare(soundRug)?.cautions.join(' ')).toMatch(
    /Gloves and goggles.*safety data sheet.*Air the room.*eyewash.*Never mix.*Wet floor and current.*local authority/s,
  );
});

describe('the rulebook', () => {
  test('has every rule R01 to R40, each with a reason a client can read', () => {
    for (const id of ruleIds) {
      const row = shippedRulebook.rules.find((one) => one.id === id);
      expect(row, id).toBeDefined();
      for (const { because } of Object.values(row?.cases ?? {})) expect(because).toMatch(/^[A-Z].*\.$/);
    }
  });
  test('forbidden mixtures, consent and quarantine are never overridden', () => {
    for (const rule of ['R19', 'R20', 'R21', 'R22', 'R23', 'R24', 'R27', 'R28', 'R34'] as const) {
      const plan = planWash({ ...soundRug, overrides: [{ rule, reason: 'x' }] });
      expect(plan.ok ? null : plan.problem.code).toBe('wash-override-not-possible');
    }
  });
  // Rule of this project: an override lifts a cap, never the duty to tell the client of the risk.
  test('a client is told of every rule the owner sets aside, and of all it would have told', () => {
    const slow = bare({ ...soundRug, expectedDryingHours: 60, overrides: [{ rule: 'R38', reason: 'fans' }] });
    expect(slow?.consents.map(({ text }) => text).join(' ')).toMatch(/sets a rule .* aside.*grow mould/);
    const rotten = { ...soundRug, findings: [{ code: 'dry rot', certainty: 'seen' }] } as const;
    const told = bare({ ...rotten, overrides: [{ rule: 'R13', reason: 'a board' }] })?.consents ?? [];
    expect(told.map(({ risk }) => risk)).toEqual(expect.arrayContaining(['dry rot', 'rule set aside']));
  });
  test('negative sizes and blends that are no whole are named', () => {
    const plan = planWash({ ...soundRug, areaM2: -2, pile: { wool: 0.5 } });
    const faults = plan.ok
      ? []
      : (plan.problem.facts as { readonly faults: readonly { readonly field: string }[] }).faults;
    expect(faults.map(({ field }) => field)).toEqual(['areaM2', 'pile']);
  });
});
