import { describe, expect, test } from 'vitest';
import { agreesWith } from '../../../test/support/agreesWith.ts';
import { asPoured, sharesOf } from './shelfAgent.ts';
import { asCalciumCarbonate, type HardnessUnit, hardnessUnits, waterToReckonWith } from './supplyWater.ts';

agreesWith(
  {
    source: 'common-practice',
    where: 'definitions: 10 mg/L CaO, 10 mg/L CaCO₃, 1 grain (64.799 mg) per 4.546 L or 3.785 L, 1 mmol/L',
    readFrom: 'computed by hand from the definitions: 10·100.087/56.077; 64.799/4.54609; 64.799/3.785412',
    within: 0.002,
    because: 'the table is rounded to a thousandth',
    rows: [
      { unit: '°dH', expected: 17.848 },
      { unit: '°fH', expected: 10 },
      { unit: '°e', expected: 14.254 },
      { unit: 'gpg', expected: 17.118 },
      { unit: 'mmol/L', expected: 100.087 },
      { unit: 'mmol/L acid', expected: 50.0435 },
    ],
  },
  ({ unit }) => asCalciumCarbonate(1, unit as HardnessUnit),
);

describe('the water that is reckoned with', () => {
  const water = { on: '2026-01-10', alkalinityMgPerLCaCO3: 250, hardnessMgPerLCaCO3: 300 };
  test('every unit a supplier may use is in the table', () => {
    for (const unit of hardnessUnits) expect(asCalciumCarbonate(1, unit)).toBeGreaterThan(0);
  });
  test('a reading in date is taken as read, give or take a tenth', () => {
    const { alkalinity, asks } = waterToReckonWith(water, '2026-06-01');
    expect(asks).toBeNull();
    expect(alkalinity).toMatchObject({ value: 250, assumed: false });
    expect([alkalinity.least, alkalinity.most].map(Math.round)).toEqual([225, 275]);
  });
  test.each([
    [null, 'absent'],
    [{ ...water, on: '2024-12-01' }, 'old'],
    [{ on: '2026-01-10', hardnessMgPerLCaCO3: 300 }, 'no alkalinity'],
  ] as const)('water that is not known is asked for and taken at its worst', (known, asks) => {
    const reckoned = waterToReckonWith(known, '2026-06-01');
    expect(reckoned.asks).toBe(asks);
    expect(reckoned.alkalinity).toMatchObject({ assumed: true, least: 0, most: 400 });
  });
});

describe('what a product is made of', () => {
  const acid = (value: number) =>
    [{ kind: 'acid', chemical: 'acetic acid', strength: { value, unit: '% w/w' } }] as const;
  test('more than the whole is refused', () => {
    const found = sharesOf({ name: 'Sharp 120', parts: acid(120) });
    expect(found.ok ? null : found.problem.code).toBe('strength-above-whole');
  });
  test('an unknown chemical is refused with the names that are known', () => {
    const found = sharesOf({
      name: 'Mystery',
      parts: [{ kind: 'acid', chemical: 'moonlight', strength: { value: 5, unit: '% w/w' } }],
    });
    expect(found.ok ? null : found.problem.code).toBe('agent-unknown');
  });
  test('g/L needs the density, and gives the share of the mass with it', () => {
    const parts = [{ kind: 'acid', chemical: 'acetic acid', strength: { value: 642, unit: 'g/L' } }] as const;
    const without = sharesOf({ name: 'Sour', parts });
    expect(without.ok ? null : without.problem.code).toBe('density-missing');
    const shares = sharesOf({ name: 'Sour', parts, densityGPerMl: 1.07 });
    expect(shares.ok && shares.value[0]?.strength).toBeCloseTo(0.6, 10);
  });
  test('what is poured is grams by the density', () => {
    const poured = asPoured({ name: 'Sour', parts: acid(60), densityGPerMl: 1.07 }, 'mL', 107);
    expect(poured.ok && poured.value).toBeCloseTo(100, 10);
  });
});
