import { atMost, fails, gradedTests, hasMarkedPlace, inDate, mayHave, sidesToTest } from './dyeVerdict.ts';
import type { DyeTest, Fibre, Grade, PlanColour, PlanFacts, Side, TestLiquid } from './planFacts.ts';
import { bookOf, isAlkaline } from './rulebook.ts';
import { isRecorded } from './testCoverage.ts';
import type { RequiredDyeTest } from './washPlan.ts';

type Conditions = Pick<
  RequiredDyeTest,
  'agents' | 'strengthGPerL' | 'pH' | 'temperatureC' | 'minutes' | 'because' | 'blocksWetWork'
>;

const middle = ({ least, most }: { readonly least: number; readonly most: number }) => (least + most) / 2;

/** The fibre that sets the aims: the largest share of the pile, wool while it is unknown. */
const aimOf = (facts: PlanFacts) => {
  const shares = Object.entries(facts.pile ?? {}).sort(([, a], [, b]) => b - a);
  const { fibres } = bookOf(facts);
  const row = fibres[(shares[0]?.[0] ?? 'wool') as Fibre] ?? fibres.wool;
  return {
    bath: row?.bathAim ?? { least: 5.5, most: 7.5 },
    final: row?.finalAim ?? { least: 4.5, most: 5.5 },
  };
};

/** Whether a rug may lie wet so long that a colour must hold for a day. */
const liesLong = (facts: PlanFacts): boolean =>
  facts.expectedDryingHours === undefined || facts.expectedDryingHours > bookOf(facts).tests.longWetHours;

const anyDoubtful = (facts: PlanFacts): boolean =>
  (facts.colours ?? []).some(({ id }) =>
    gradedTests(facts, id).some(
      ({ test, grade }) =>
        ['cold water', 'planned bath', 'acid rinse'].includes(test.liquid) &&
        atMost(grade, bookOf(facts).tests.covered24hIfGradeAtMost as Grade),
    ),
  );

/** Alkaline agents of baths that somebody means to mix, and baths above the pH of the challenge. */
const alkaliPlanned = ({ plannedBaths = [] }: PlanFacts): Conditions['agents'] => [
  ...new Set(plannedBaths.flatMap(({ agents }) => agents.filter(isAlkaline))),
];

const plansAlkali = (facts: PlanFacts): boolean =>
  alkaliPlanned(facts).length > 0 ||
  (facts.plannedBaths ?? []).some(({ pH }) => pH !== undefined && pH >= bookOf(facts).tests.alkaliPh);

/** Liquids a colour is tested with, weakest first, with their conditions. */
function liquidsFor(facts: PlanFacts): readonly (readonly [TestLiquid, Conditions])[] {
  const settings = bookOf(facts).tests;
  const aim = aimOf(facts);
  const bathPh = Math.round(middle(aim.bath) * 10) / 10;
  const bath = {
    agents: settings.bathAgents as Conditions['agents'],
    strengthGPerL: settings.strengthGPerL,
    pH: bathPh,
  };
  const lying: Conditions = {
    ...bath,
    temperatureC: settings.blotTemperatureC,
    minutes: 24 * 60,
    because: liesLong(facts)
      ? `It may lie wet for more than ${settings.longWetHours} h, or nobody said how long.`
      : 'A colour marked the cloth a little, so it is watched for a day.',
    blocksWetWork: true,
  };
  const all: (readonly [TestLiquid, Conditions])[] = [
    ['dry crock', { agents: [], because: 'Loose colour comes off dry first.', blocksWetWork: false }],
    [
      'damp crock',
      { agents: ['water'], because: 'Rubbing with a damp cloth is the first water.', blocksWetWork: false },
    ],
    [
      'cold water',
      {
        agents: ['water'],
        temperatureC: settings.blotTemperatureC,
        minutes: settings.blotMinutes,
        because: 'Every colour meets water first.',
        blocksWetWork: true,
      },
    ],
    [
      'planned bath',
      {
        ...bath,
        temperatureC: settings.bathTemperatureC,
        minutes: settings.bathMinutes,
        because: 'A test covers a bath of the same agents, no stronger, warmer or longer.',
        blocksWetWork: true,
      },
    ],
    [
      'acid rinse',
      {
        agents: settings.acidAgents as Conditions['agents'],
        pH: Math.round(middle(aim.final) * 10) / 10,
        temperatureC: settings.blotTemperatureC,
        minutes: settings.blotMinutes,
        because: 'The last rinse leaves the rug slightly acid.',
        blocksWetWork: true,
      },
    ],
    [
      'margin',
      {
        ...bath,
        temperatureC: settings.bathTemperatureC + settings.marginStepK,
        minutes: settings.marginMinutes,
        because:
          'Shows that the colour holds a little beyond the bath; without it the tested values are hard caps.',
        blocksWetWork: false,
      },
    ],
  ];
  if (plansAlkali(facts)) {
    all.push([
      'alkali challenge',
      {
        agents: alkaliPlanned(facts),
        pH: settings.alkaliPh,
        temperatureC: settings.blotTemperatureC,
        minutes: settings.blotMinutes,
        because: 'An alkaline bath is meant for this rug, and dyes that hold in a neutral one may run in it.',
        blocksWetWork: true,
      },
    ]);
  }
  return liesLong(facts) || anyDoubtful(facts) ? [...all, ['covered 24 h', lying]] : all;
}

const satisfies = (test: DyeTest, sides: readonly Side[], liquid: TestLiquid, urine: boolean): boolean =>
  test.liquid === liquid && sides.includes(test.side) && (test.atUrinePlace ?? false) === urine;

function testsForSite(
  facts: PlanFacts,
  liquids: ReturnType<typeof liquidsFor>,
  colour: PlanColour,
  sides: readonly Side[],
  urine: boolean,
): readonly RequiredDyeTest[] {
  const graded = gradedTests(facts, colour.id);
  const needed: RequiredDyeTest[] = [];
  for (const [liquid, conditions] of liquids) {
    if (urine && !conditions.blocksWetWork) continue;
    const { id, name } = colour;
    needed.push({ colour: id, name, side: sides[0] ?? 'face', liquid, atUrinePlace: urine, ...conditions });
    const crock = liquid === 'dry crock' || liquid === 'damp crock';
    const here = graded.filter(({ test }) => satisfies(test, sides, liquid, urine));
    // The first failure decides: nothing stronger needs to touch this colour.
    if (!crock && here.some(({ grade }) => fails(grade))) break;
  }
  return needed;
}

/**
 * Every dye test this rug asks for: colours × sites × liquids, weakest liquid first, ending at the first
 * failure.
 *
 * @param facts - what is known of the rug
 * @source cci-13-14 for testing every colour; sites, liquids and times are workshop settings (data/wash/dyeTests.json)
 */
export function requiredDyeTests(facts: PlanFacts): readonly RequiredDyeTest[] {
  const marked = hasMarkedPlace(facts);
  const liquids = liquidsFor(facts);
  const sites = sidesToTest(facts);
  return (facts.colours ?? []).flatMap((colour) => [
    ...sites.flatMap((sides) => testsForSite(facts, liquids, colour, sides, false)),
    ...(marked && colour.atUrinePlace !== false
      ? testsForSite(facts, liquids, colour, ['face', 'back'], true)
      : []),
  ]);
}

/** Findings that show a part dyed by itself, which must stand among the colours to be tested. */
const partsShown = [
  { finding: 'old repair', kind: 'repair yarn', rule: 'R15', caseName: 'yarn not named' },
  { finding: 'touched up', kind: 'touch-up', rule: 'R16', caseName: 'touch-up not named' },
] as const;

/**
 * Parts of the rug that were found and that nobody has named among its colours, so that no test covers them.
 *
 * @source workshop-setting, sites of the dye tests (data/wash/dyeTests.json)
 */
export const unnamedParts = (facts: PlanFacts): readonly (typeof partsShown)[number][] =>
  partsShown.filter(
    ({ finding, kind }) =>
      mayHave(facts, finding) && !(facts.colours ?? []).some((colour) => colour.kind === kind),
  );

/** Whether a required test has a reading that clears it: graded, in date, on a side that counts. */
function isMade(facts: PlanFacts, required: RequiredDyeTest): boolean {
  const sides = sidesToTest(facts).find((one) => one.includes(required.side)) ?? [required.side];
  const book = bookOf(facts);
  const counted = required.atUrinePlace ? (['face', 'back'] as const) : sides;
  return gradedTests(facts, required.colour).some(
    ({ test, grade }) =>
      satisfies(test, counted, required.liquid, required.atUrinePlace) &&
      ((inDate(book, test) && isRecorded(book, test)) || fails(grade)),
  );
}

/**
 * The required tests that no reading clears yet, in the order to make them.
 *
 * @source workshop-setting: a reading clears for 30 days (data/wash/dyeTests.json)
 */
export const missingDyeTests = (facts: PlanFacts): readonly RequiredDyeTest[] =>
  requiredDyeTests(facts).filter((required) => !isMade(facts, required));
