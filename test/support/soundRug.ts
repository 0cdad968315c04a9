import type { DyeTest, FindingCode, Grade, PlanFacts, TestLiquid } from '../../src/core/wash/index.ts';

/** One reading of a red, complete in all its conditions. */
export const bathTest = (liquid: TestLiquid, grade: Grade, more: Partial<DyeTest> = {}): DyeTest => ({
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
export const tested = (
  grade: Grade = '5',
  more: Partial<Record<TestLiquid, Grade>> = {},
): readonly DyeTest[] =>
  (['face', 'back'] as const).flatMap((side) =>
    liquids.map((liquid) =>
      bathTest(liquid, more[liquid] ?? (liquid === 'planned bath' ? grade : '5'), { side }),
    ),
  );

/** A wool rug about which everything is known and nothing is wrong. */
export const soundRug: PlanFacts = {
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
/** The same rug with something found on it. */
export const found = (...codes: readonly FindingCode[]): PlanFacts => ({
  ...soundRug,
  findings: codes.map((code) => ({ code })),
});
