import {
  constructions,
  type DyeTest,
  dyes,
  fibres,
  findingCodes,
  type Grade,
  type PlanFacts,
  planWash,
  type TestLiquid,
} from '../src/core/wash/index.ts';

type Untested = Omit<PlanFacts, 'dyeTests'>;

/** Every pile × construction × dye × finding, over a cotton foundation. */
function* everyRug(): Generator<Untested> {
  for (const pile of fibres)
    for (const construction of constructions)
      for (const dyeClass of dyes)
        for (const code of findingCodes)
          yield {
            ...{ route: 'rug in use', construction, pile: { [pile]: 1 }, areaM2: 3, dryMassKg: 9 },
            foundation: { warp: 'cotton', weft: 'wool', backing: 'cotton' },
            findings: [{ code, certainty: 'seen' }],
            colours: [
              {
                ...{ id: 'c', name: 'the colour', kind: 'field colour', dyeClass },
                ...{ besideLightField: false, atUrinePlace: false },
              },
            ],
            ...{ expectedDryingHours: 20, monthsSinceWash: 100, valueAboveAuthority: false },
          };
}

const liquids: readonly TestLiquid[] = [
  ...(['dry crock', 'damp crock', 'cold water', 'planned bath'] as const),
  ...(['acid rinse', 'margin', 'covered 24 h'] as const),
];

/** All liquids read on both faces at grade 5, but for those given. */
const read = (
  worse: Partial<Record<TestLiquid, Grade>>,
  colourChangeGrade: Grade = '5',
): readonly DyeTest[] =>
  (['face', 'back'] as const).flatMap((side) =>
    liquids.map((liquid) => ({
      ...{ colour: 'c', side, liquid, outcome: 'graded', grade: worse[liquid] ?? '5', colourChangeGrade },
      ...{ ageDays: 1, pH: liquid === 'acid rinse' ? 5 : 6.5, strengthGPerL: 8 },
      temperatureC: liquid === 'margin' ? 38 : liquid === 'planned bath' ? 28 : 20,
      minutes: liquid === 'covered 24 h' ? 1440 : 30,
    })),
  );

/** Each class of the table of dye tests, by readings that put a colour there. */
const classes: Readonly<Record<string, readonly DyeTest[]>> = {
  unknown: [],
  stable: read({}),
  watch: read({ 'planned bath': '4' }),
  controlled: read({ 'planned bath': '3-4' }),
  'do not immerse': read({ 'planned bath': '2' }),
  'surface colour': read({ 'dry crock': '3' }),
  'acid sensitive': read({}, '3'),
  'thin margin': read({ margin: '3' }),
  'slow bleeder': read({ 'covered 24 h': '3' }),
};

const promisedMs = 5;
/** Untested rugs are planned all; of each class of tested ones every so manieth, so that all tables are met. */
const stride = 29;
let faults = 0;

for (const [dye, dyeTests] of Object.entries(classes)) {
  const times: number[] = [];
  const methods = new Map<string, number>();
  let count = 0;
  for (const untested of everyRug()) {
    count += 1;
    if (dyeTests.length > 0 && count % stride !== 0) continue;
    const facts = { ...untested, dyeTests };
    const from = performance.now();
    const plan = planWash(facts);
    times.push(performance.now() - from);
    const outcome = plan.ok ? plan.value.method : plan.problem.code;
    methods.set(outcome, (methods.get(outcome) ?? 0) + 1);
    if (!plan.ok) continue;
    const { steps, bounds } = plan.value;
    if (steps.some(({ agents }) => agents.some((agent) => bounds.forbiddenAgents.includes(agent))))
      faults += 1;
  }
  times.sort((a, b) => a - b);
  const at = (share: number) => (times[Math.floor(times.length * share)] ?? Number.NaN).toFixed(2);
  const told = [...methods].sort(([, a], [, b]) => b - a).map(([method, count]) => `${method} ${count}`);
  console.log(
    `${dye}: ${times.length} rugs, one plan median ${at(0.5)} ms, p95 ${at(0.95)} ms, p99 ${at(0.99)} ms (promise ${promisedMs} ms)`,
  );
  console.log(`  ${told.join(' · ')}`);
}
console.log(`forbidden agents used in ${faults} plans`);
if (faults > 0) process.exitCode = 1;
