import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BathRecipe } from './bathRecipe.ts';
import type { AgentAmount } from './contents.ts';
import { effluent } from './effluent.ts';
import { carryOver, neutralise, phOfBath } from './neutralise.ts';

const bath = (litres: number, add: readonly AgentAmount[], more: Partial<BathRecipe> = {}): BathRecipe => ({
  ...{ litres, add, temperatureC: 25, alkalinityMgPerLCaCO3: 0, activity: 'ideal', openToAir: false },
  ...more,
});
const lye = (grams: number) => ({ agent: 'sodium hydroxide', grams });
const hydrochloric = (grams: number) => ({ agent: 'hydrochloric acid', grams });
const strong = { acid: 'hydrochloric acid', base: 'sodium hydroxide' };
const judged = (...baths: readonly [BathRecipe, ...BathRecipe[]]) => {
  const found = effluent(baths);
  if (!found.ok) throw new Error(found.problem.code);
  return found.value;
};

describe('what a rug still holds', () => {
  // Mole for mole: HCl 36.461 and NaOH 39.997 g/mol, CRC Handbook, section 4; from memory.
  test('half the lye of a bath is held, and half the acid neutralises it', () => {
    const found = carryOver(bath(20, [lye(7.9994)]), { massKg: 5, retainedLPerKg: 2 }, null, 7, strong);
    expect(found.ok ? found.value.agent : found.problem.code).toBe('hydrochloric acid');
    expect(found.ok ? found.value.grams : Number.NaN).toBeCloseTo(3.6461, 2);
    expect(found.ok ? found.value.heldLitres : Number.NaN).toBe(10);
  });
  test('fresh hard water needs its own acid besides', () => {
    const held = { massKg: 5, retainedLPerKg: 0.33 };
    const soda = bath(50, [{ agent: 'sodium carbonate', grams: 50 }]);
    const soft = carryOver(soda, held, bath(30, []), 5.5);
    const hard = carryOver(soda, held, bath(30, [], { alkalinityMgPerLCaCO3: 250 }), 5.5);
    expect(soft.ok && hard.ok && hard.value.grams > soft.value.grams).toBe(true);
  });
  test('a rug cannot hold more than its bath', () => {
    const found = carryOver(bath(5, [lye(1)]), { massKg: 10, retainedLPerKg: 2 }, null, 7);
    expect(found.ok ? null : found.problem.code).toBe('out-of-range');
  });
});

describe('waste water', () => {
  test('equal lye and acid run together are neutral, and one has brought the other right', () => {
    const found = judged(bath(10, [lye(3.9997)]), bath(10, [hydrochloric(3.6461)]));
    expect(found.pH).toBeCloseTo(7, 1);
    expect([found.mayGo, found.equalised, found.correction]).toEqual([true, true, null]);
  });
  test('lye in a thousand times its water is in the limits and still may not go', () => {
    const found = judged(bath(1, [lye(0.04)]), bath(5000, []));
    expect(found.pH).toBeLessThan(9);
    expect([found.mayGo, found.reasons]).toEqual([false, ['diluted only']]);
    expect(found.correction?.grams).toBeGreaterThan(0);
  });
  test('a trace of salt in that water does not make it a treatment', () => {
    const found = judged(bath(1, [lye(0.04)]), bath(5000, [{ agent: 'sodium chloride', grams: 1 }]));
    expect(found.reasons).toEqual(['diluted only']);
  });
  // 40 CFR 403.5(b)(2): nothing below pH 5.0; from memory.
  test('an acid bath may not go, nor may a workshop set the lower limit under pH 5.0', () => {
    const acid = bath(40, [{ agent: 'citric acid, anhydrous', grams: 40 }]);
    expect(judged(acid).reasons).toEqual(['too acid']);
    const low = effluent([acid], { leastPh: 2, mostPh: 9, mostTemperatureC: 40 });
    expect(low.ok ? null : low.problem.code).toBe('out-of-range');
  });
  test('the correction of an acid bath brings it within the limits', () => {
    const acid = bath(40, [{ agent: 'citric acid, anhydrous', grams: 40 }]);
    const { correction } = judged(acid);
    if (correction?.agent == null) throw new Error('no correction');
    const after = judged({
      ...acid,
      add: [...acid.add, { agent: correction.agent, grams: correction.grams }],
    });
    expect([after.mayGo, after.reasons]).toEqual([true, []]);
  });
  test('a hot bath cools first, whatever it is run together with', () => {
    expect(judged(bath(1, [], { temperatureC: 55 }), bath(99, [])).reasons).toEqual(['too hot']);
  });
  test('the dose told brings the bath where it was told', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 5, noNaN: true }), (gramsPerL) => {
        const soda = bath(1, [{ agent: 'sodium carbonate', grams: gramsPerL }]);
        const found = neutralise(soda, 7);
        if (!found.ok || found.value.agent === null) throw new Error('no dose');
        const { agent, grams } = found.value;
        const after = phOfBath(bath(1, [...soda.add, { agent, grams }]));
        expect(after.ok ? after.value : Number.NaN).toBeCloseTo(7, 6);
      }),
      { numRuns: 20 },
    );
  });
});
