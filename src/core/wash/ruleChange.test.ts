import { describe, expect, test } from 'vitest';
import type { DyeTest, PlanFacts } from './planFacts.ts';
import { planWash, tightens } from './planWash.ts';
import { shippedRulebook } from './rulebook.ts';
import { judgeRuleChange, rulebookWith, ruleEntryAt } from './ruleChange.ts';
import { ruleEntries } from './ruleEntry.ts';

const woolRug: PlanFacts = {
  route: 'rug in use',
  construction: 'knotted pile',
  pile: { wool: 1 },
  foundation: { warp: 'cotton', weft: 'cotton' },
  areaM2: 2,
  findings: [],
  expectedDryingHours: 20,
  monthsSinceWash: 60,
  valueAboveAuthority: false,
  colours: [{ id: 'red', name: 'red', kind: 'field colour', dyeClass: 'chrome' }],
};

/** Every liquid on both faces, all of them harmless. */
const everyTest = (['face', 'back'] as const).flatMap((side) =>
  (
    ['dry crock', 'damp crock', 'cold water', 'planned bath', 'acid rinse', 'margin', 'covered 24 h'] as const
  ).map(
    (liquid): DyeTest => ({
      ...{ colour: 'red', side, liquid, outcome: 'graded', grade: '5', colourChangeGrade: '5', ageDays: 1 },
      ...{ pH: liquid === 'acid rinse' ? 5 : 6.5, temperatureC: liquid === 'margin' ? 38 : 28 },
      ...{ minutes: liquid === 'covered 24 h' ? 1440 : 30, strengthGPerL: 8 },
    }),
  ),
);

const codeOf = (address: string, value: unknown) => {
  const judged = judgeRuleChange({ address, value });
  return judged.ok ? 'allowed' : judged.problem.code;
};
const bookWith = (address: string, value: unknown) => rulebookWith([{ address, value }], 'test');

describe('what an owner may not loosen', () => {
  test.each([
    ['rules/R22/protein/forbiddenAgents', []],
    ['rules/R20/natural/bathPh', { least: 0, most: 9 }],
    ['mixtures/acid with sulfite below pH 4/belowPh', 3.5],
    ['mixtures/peroxide above pH 9 on wool or silk/abovePh', 10],
    ['mixtures/chlorine with acid/b', ['citric acid']],
    ['rules/R28/mould/method', 'flow wash'],
    ['shop/longWetHours', 24.5],
    ['sewer/leastPh', 4.5],
    ['residues/readingsInARow', 1],
    ['stops/phOff', 0.6],
    ['stops/temperatureOffC', 8],
    ['stops/lengthShare', 0.02],
    ['tests/alkaliPh', 9],
    ['stains/synthetic dye/remaining colour/ph', { least: 3.5, most: 6 }],
    ['stains/mould stain/remaining colour/mostC', 40],
    ['dyes/unknown/method', 'full immersion'],
    ['dyes/no common bath/method', 'low moisture'],
  ])('%s is not loosened', (address, value) => {
    expect(['rule-looser-than-delivered', 'rule-value-wrong']).toContain(codeOf(address, value));
  });

  test.each([
    ['rules/R22/protein/forbiddenAgents', ['hypochlorite', 'percarbonate']],
    ['mixtures/acid with sulfite below pH 4/belowPh', 5],
    ['rules/R20/natural/bathPh', { least: 0, most: 7 }],
    ['shop/mouldHours', 36],
    ['rules/R08/slow/method', 'flow wash'],
    ['fibres/wool/temperatureC', 35],
    ['sewer/leastPh', 6],
    ['sewer/mostPh', 11],
    ['sewer/mostTemperatureC', 55],
    ['rinse/waterLPerMin', 35],
    ['residues/readingsInARow', 3],
    ['stops/phOff', 0.3],
    ['flows/browning/acid/dwellMinutes', 20],
    ['stains/protein/protein/dose', { least: 1, most: 4 }],
    ['spotting/spotMlPerCm2', { least: 0.1, most: 0.3 }],
  ])('%s may be tightened, or moved where it is a setting', (address, value) => {
    expect(codeOf(address, value)).toBe('allowed');
  });
});

describe('what cannot be a value', () => {
  test.each([
    ['rules/R99/x/method', 'flow wash', 'rule-value-unknown'],
    ['fibres/wool/temperatureC', 140, 'rule-value-wrong'],
    ['fibres/wool/temperatureC', Number.NaN, 'rule-value-wrong'],
    ['fibres/wool/bathPh', { least: 8, most: 5 }, 'rule-value-wrong'],
    ['fibres/wool/bathPh', { least: 5, most: 15 }, 'rule-value-wrong'],
    ['rules/R08/slow/method', 'boil', 'rule-value-wrong'],
    ['stops/pH off band', 'x', 'rule-value-unknown'],
    ['mixtures/+mine', { a: [], b: [], hazard: 'x' }, 'rule-value-wrong'],
  ])('%s: %j', (address, value, code) => {
    expect(codeOf(address, value)).toBe(code);
  });
});

describe('a plan is judged by the rulebook it is given', () => {
  test('a cooler wool limit makes the plan cooler and names the rulebook', () => {
    const rulebook = bookWith('fibres/wool/temperatureC', 22);
    const [before, after] = [planWash(woolRug), planWash({ ...woolRug, rulebook })];
    if (!before.ok || !after.ok) throw new Error('both rugs have a plan');
    expect(after.value.bounds.temperatureC).toBe(22);
    expect(after.value.rulebook).toBe('test');
    expect(before.value.rulebook).toBe(shippedRulebook.version);
    expect(tightens(before.value, after.value).map(({ axis }) => axis)).toContain('temperatureC');
  });

  test('a limit added to a rule holds, and taking it back leaves the delivered rulebook', () => {
    const address = 'fibres/cotton/people';
    const added = planWash({ ...woolRug, rulebook: bookWith(address, 3) });
    expect(added.ok && added.value.bounds.people).toBe(3);
    expect(rulebookWith([{ address, value: null }], shippedRulebook.version)).toEqual(shippedRulebook);
  });

  test('a mixture the owner forbids blocks a bath, and stands in the list', () => {
    const rulebook = bookWith('mixtures/+disinfectant on our dyes', {
      a: ['disinfectant'],
      b: ['dye stabiliser'],
      hazard: 'colours run',
    });
    const bath = { purpose: 'spotting', agents: ['disinfectant', 'dye stabiliser'], pH: 6 } as const;
    const plan = planWash({ ...woolRug, rulebook, plannedBaths: [bath] });
    expect(plan.ok ? null : plan.problem).toMatchObject({
      code: 'wash-mixture-forbidden',
      facts: { hazard: 'colours run' },
    });
    expect(
      ruleEntries(rulebook).some(({ address }) => address === 'mixtures/+disinfectant on our dyes'),
    ).toBe(true);
  });

  test('the owner’s rinse pace and waste-water limits stand in the plan', () => {
    const rulebook = rulebookWith(
      [
        { address: 'rinse/waterLPerMin', value: 36 },
        { address: 'rinse/drainMin', value: { least: 4, most: 6 } },
        { address: 'sewer/mostPh', value: 10.5 },
      ],
      'test',
    );
    const plan = planWash({ ...woolRug, dyeTests: everyTest, rulebook });
    if (!plan.ok) throw new Error(plan.problem.code);
    const rinse = plan.value.steps.find(({ kind }) => kind === 'rinse');
    // 2 m² at 18 L/m² and 36 L/min take a minute; a fill is worked 1 to 3 and drained 4 to 6 minutes.
    expect(rinse?.amounts.filter(({ unit }) => unit === 'min')).toMatchObject([
      { agent: 'water running in', least: 1, most: 1 },
      { agent: 'working and draining each fill', least: 5, most: 9 },
    ]);
    expect(plan.value.cautions.join(' ')).toContain('pH 5 to 10.5, at most 40 °C (workshop setting)');
  });

  test('a dose moved keeps how it is made up', () => {
    const book = bookWith('stains/protein/protein/dose', { least: 1, most: 4 });
    const protein = book.stains.find((one) => one.class === 'protein');
    expect(protein?.treatments.find(({ golden }) => golden === 'protein')?.dose).toEqual({
      kind: 'grams per litre',
      least: 1,
      most: 4,
    });
  });

  test('a dwell and a use of water change the steps', () => {
    const rulebook = rulebookWith(
      [
        { address: 'shop/detergentGPerM2', value: { least: 5, most: 8 } },
        { address: 'tests/validDays', value: 10 },
      ],
      'test',
    );
    expect(rulebook.shop.detergentGPerM2).toEqual({ least: 5, most: 8 });
    expect(ruleEntryAt(rulebook, 'tests/validDays')?.value).toBe(10);
    expect(shippedRulebook.tests.validDays).toBe(30);
  });
});

test('a change that is looser than the tables now allow is left out: the delivered value holds', () => {
  const book = bookWith('rules/R22/protein/forbiddenAgents', []);
  expect(ruleEntryAt(book, 'rules/R22/protein/forbiddenAgents')?.value).toEqual(['hypochlorite']);
});

describe('a value the owner changed is never printed as an authority', () => {
  const limitOf = (address: string, value: unknown, facts: PlanFacts, rule: string, axis: string) => {
    const plan = planWash({ ...facts, rulebook: bookWith(address, value) });
    if (!plan.ok) throw new Error(plan.problem.code);
    return plan.value.limits.find((one) => one.rule === rule && one.axis === axis);
  };
  test('a limit of a rule with a published source becomes a workshop setting, its neighbours keep theirs', () => {
    const rule = shippedRulebook.rules.find(({ id }) => id === 'R38');
    expect(rule?.source).toBe('epa-mould-course');
    const slow = { ...woolRug, dyeTests: everyTest, expectedDryingHours: 60 };
    const before = limitOf('fibres/silk/people', 2, slow, 'R38', 'method');
    expect(before?.source).toBe('epa-mould-course');
    const after = limitOf('rules/R38/slow/people', 3, slow, 'R38', 'people');
    expect(after?.source).toBe('workshop-setting');
    expect(limitOf('rules/R38/slow/people', 3, slow, 'R38', 'method')?.source).toBe('epa-mould-course');
  });

  test('hours moved away from the published ones take the source of their rule along', () => {
    const slow = { ...woolRug, dyeTests: everyTest, expectedDryingHours: 40 };
    expect(limitOf('shop/mouldHours', 36, slow, 'R38', 'method')?.source).toBe('workshop-setting');
  });

  test('a step whose dwell the owner changed, and a stain whose dose, are the workshop’s', () => {
    const dosed = bookWith('stains/protein/protein/dose', { least: 1, most: 4 });
    expect(dosed.stains.find((one) => one.class === 'protein')?.source).toBe('workshop-setting');
    const [address] = ruleEntries(shippedRulebook).flatMap((one) =>
      one.address.startsWith('steps/') && one.address.endsWith('/dwellMinutes') ? [one.address] : [],
    );
    const held = bookWith(address ?? '', 20);
    const moved = held.steps.filter((step, at) => step !== shippedRulebook.steps[at]);
    expect(moved.map(({ source }) => source)).toEqual(['workshop-setting']);
  });

  test('the plan carries what was changed, and none where the delivered rulebook holds', () => {
    const plan = planWash({ ...woolRug, rulebook: bookWith('fibres/wool/temperatureC', 22) });
    expect(plan.ok && plan.value.ownRules).toEqual([{ address: 'fibres/wool/temperatureC', value: 22 }]);
    const delivered = planWash({ ...woolRug });
    expect(delivered.ok && delivered.value.ownRules).toBeUndefined();
  });
});
