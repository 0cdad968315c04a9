import { describe, expect, test } from 'vitest';
import type { Bounds } from './limit.ts';
import { within } from './limit.ts';
import { type DyeTest, type PlanFacts, type Side, type TestLiquid, testLiquids } from './planFacts.ts';
import { planWash } from './planWash.ts';
import type { WashPlan } from './washPlan.ts';

// Expectations: the rules of the trade as the project states them (common practice, no published source).

const reading = (liquid: TestLiquid, more: Partial<DyeTest> = {}): DyeTest => ({
  colour: 'red',
  side: 'face',
  liquid,
  outcome: 'graded',
  grade: '5',
  colourChangeGrade: '5',
  ageDays: 1,
  pH: liquid === 'acid rinse' ? 5 : 6.5,
  temperatureC: liquid === 'margin' ? 38 : 28,
  minutes: liquid === 'covered 24 h' ? 1440 : 30,
  ...more,
});

const readings = (change: (test: DyeTest) => DyeTest | null = (one) => one, side: Side = 'face') =>
  testLiquids
    .filter((liquid) => liquid !== 'spotter' && liquid !== 'alkali challenge')
    .map((liquid) => change(reading(liquid, { side })))
    .filter((one) => one !== null);

const rug: PlanFacts = {
  route: 'rug in use',
  construction: 'knotted pile',
  pile: { wool: 1 },
  foundation: { warp: 'wool', weft: 'wool' },
  areaM2: 2,
  dryMassKg: 6,
  colours: [{ id: 'red', name: 'red', kind: 'field colour', dyeClass: 'chrome', besideLightField: false }],
  dyeTests: readings(),
  findings: [],
  expectedDryingHours: 20,
  valueAboveAuthority: false,
};

const planned = (facts: PlanFacts): WashPlan => {
  const plan = planWash(facts);
  if (!plan.ok) throw new Error(JSON.stringify(plan.problem));
  return plan.value;
};
const only = (liquid: TestLiquid, change: Partial<DyeTest> | null) => (one: DyeTest) =>
  one.liquid !== liquid ? one : change === null ? null : { ...one, ...change };

describe('readings that must not clear a wash', () => {
  test('the sound rug may be immersed, so that each case below has one cause', () => {
    expect(planned(rug).method).toBe('full immersion');
  });

  test('colour on a damp cloth counts as colour in water', () => {
    const plan = planned({ ...rug, dyeTests: readings(only('damp crock', { grade: '2' })) });
    expect(plan.method).toBe('low moisture');
  });

  test('a dry crock nobody made keeps brushes off the wet pile', () => {
    const plan = planned({ ...rug, dyeTests: readings(only('dry crock', null)) });
    expect(plan.bounds.forbiddenActs).toContain('wet brushing');
  });

  test('an acid rinse whose colour change nobody graded clears nothing', () => {
    const { colourChangeGrade: _left, ...bare } = reading('acid rinse');
    const dyeTests = readings((one) => (one.liquid === 'acid rinse' ? bare : one));
    expect(planned({ ...rug, dyeTests }).method).toBe('dry only');
  });

  test('a bath of plain water proves nothing about a detergent', () => {
    const plan = planned({ ...rug, dyeTests: readings(only('planned bath', { agents: ['water'] })) });
    expect(plan.method).toBe('dry only');
    expect(plan.missingDyeTests.map(({ liquid }) => liquid)).toContain('planned bath');
  });

  test('the cooler of two faces sets the bath of a flatweave', () => {
    const dyeTests = [...readings(), ...readings(only('planned bath', { temperatureC: 22 }), 'back')];
    expect(planned({ ...rug, construction: 'flatweave', dyeTests }).bounds.temperatureC).toBe(22);
  });

  test('without a margin the tested pH is the upper cap, with one half a pH above', () => {
    const upper = ({ bathPh }: Bounds) => (bathPh === 'no liquid' ? Number.NaN : bathPh.most);
    expect(upper(planned(rug).bounds)).toBe(7);
    expect(upper(planned({ ...rug, dyeTests: readings(only('margin', null)) }).bounds)).toBe(6.5);
  });

  test('a colour that marks the cloth in a day is watched', () => {
    const plan = planned({ ...rug, dyeTests: readings(only('covered 24 h', { grade: '4' })) });
    expect(plan.dyes.map(({ standing }) => standing)).toEqual(['watch']);
  });
});

describe('what must tighten', () => {
  test('a urine stain asks for a flush and tests at its place, like a finding of urine', () => {
    const plan = planned({ ...rug, stains: [{ id: 's', class: 'urine' }] });
    expect(plan.bounds.requiredActs).toContain('urine pre-flush');
    expect(plan.missingDyeTests.some(({ atUrinePlace }) => atUrinePlace)).toBe(true);
  });

  test('a bleeding colour keeps its caps when urine makes more tests missing', () => {
    const bleeding = { ...rug, dyeTests: readings(only('planned bath', { grade: '3-4' })) };
    const after = planned({ ...bleeding, findings: [{ code: 'urine' }] });
    expect(within(after.bounds, planned(bleeding).bounds)).toBe(true);
    expect(after.bounds.consents).toContain('bleeding');
  });

  test('acid with a sulfite at pH 4.5 wants ventilation, below 4 it is refused', () => {
    const bath = (pH: number): PlanFacts => ({
      ...rug,
      plannedBaths: [{ purpose: 'reducing', agents: ['citric acid', 'metabisulfite'], pH }],
    });
    expect(planned(bath(4.5)).bounds.requiredActs).toContain('ventilate');
    expect(planWash(bath(3.9))).toMatchObject({ ok: false, problem: { code: 'wash-mixture-forbidden' } });
  });

  test('only dust and no known date of the last wash means dusting', () => {
    expect(planned({ ...rug, soiling: 'dust only' }).method).toBe('dry only');
  });

  test('a clash that comes from an unknown weft keeps the rug dry and says what to find out', () => {
    const dyeTests = readings(only('planned bath', { pH: 7.5 }));
    const plan = planned({ ...rug, dyeTests, foundation: { warp: 'wool' } });
    expect(plan.method).toBe('dry only');
    expect(plan.loosens.map(({ fact }) => fact)).toContain('weft fibre');
  });
});

test('what is assumed of an unknown part names the candidate it comes from', () => {
  const { pile: _pile, ...unknown } = rug;
  const texts = planned(unknown).consents.map(({ risk, text }) => `${risk}: ${text}`);
  expect(texts.filter((text) => /^silk/.test(text)).every((text) => text.includes('silk pile'))).toBe(true);
  expect(texts.some((text) => /^viscose:.*viscose pile/.test(text))).toBe(true);
});

describe('amounts stay within what was tested', () => {
  test.each([{ construction: 'felt' }, { pile: { viscose: 1 } }, {}] as const)('%o', (change) => {
    const plan = planned({ ...rug, ...change, areaM2: 9, dryMassKg: 27 });
    const wash = plan.steps.find(({ kind }) => kind === 'wash');
    const amount = (agent: string) => wash?.amounts.find((one) => one.agent.startsWith(agent))?.most ?? 0;
    expect(amount('detergent')).toBeGreaterThan(0);
    expect(amount('detergent') / amount('water')).toBeLessThanOrEqual(plan.bounds.strengthGPerL);
    expect(amount('washing')).toBeLessThanOrEqual(plan.bounds.wetMinutes);
  });
});

test('planning a rug of eight colours with everything unknown takes at most five milliseconds of work', () => {
  const colours = Array.from({ length: 8 }, (_, i) => ({
    id: `c${i}`,
    name: `colour ${i}`,
    kind: 'field colour' as const,
  }));
  const { pile: _pile, foundation: _foundation, ...unknown } = rug;
  const facts: PlanFacts = { ...unknown, colours, dyeTests: [] };
  const plans = (count: number) => {
    const start = process.cpuUsage();
    for (let run = 0; run < count; run++) planned(facts);
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000 / count;
  };
  plans(100);
  // Processor time, not the clock: other work on the machine must not fail a sound planner.
  expect(Math.min(plans(40), plans(40), plans(40))).toBeLessThan(5);
});
