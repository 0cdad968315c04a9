import { expect, test } from 'vitest';
import type { BathRecipe } from './bathRecipe.ts';
import { phOfBath } from './neutralise.ts';
import { phRange } from './phRange.ts';

const bath: BathRecipe = {
  ...{ litres: 1, temperatureC: 25, alkalinityMgPerLCaCO3: 250, activity: 'davies', openToAir: false },
  add: [{ agent: 'citric acid, anhydrous', grams: 0.55 }],
};
const rangeOf = (...args: Parameters<typeof phRange>) => {
  const found = phRange(...args);
  if (!found.ok) throw new Error(found.problem.code);
  return found.value;
};

test('a bath’s pH lies within its range, and the range holds every bath its lots and water may make', () => {
  const { pH, least, most } = rangeOf(bath, { strength: 0.05, alkalinity: 0.1 });
  expect(least).toBeLessThan(pH);
  expect(most).toBeGreaterThan(pH);
  for (const [strength, water] of [
    [0.95, 275],
    [1.05, 225],
    [0.95, 225],
    [1.05, 275],
  ] as const) {
    const add = bath.add.map((one) => ({ ...one, grams: (one.grams ?? 0) * strength }));
    const other = phOfBath({ ...bath, alkalinityMgPerLCaCO3: water, add });
    if (!other.ok) throw new Error(other.problem.code);
    expect(other.value).toBeGreaterThanOrEqual(least);
    expect(other.value).toBeLessThanOrEqual(most);
  }
});

test('a buffered bath is surer than water with a pinch of acid', () => {
  const buffered = rangeOf({
    ...bath,
    add: [
      { agent: 'acetic acid', grams: 6 },
      { agent: 'sodium acetate', grams: 8 },
    ],
  });
  const pinch = rangeOf({ ...bath, add: [{ agent: 'citric acid, anhydrous', grams: 0.3 }] });
  expect(buffered.most - buffered.least).toBeLessThan(pinch.most - pinch.least);
});

test('water nobody has read widens it, and pure water is never surer than the law', () => {
  const known = rangeOf(bath);
  const unknown = rangeOf(bath, undefined, { least: 0, most: 400 });
  expect(unknown.most - unknown.least).toBeGreaterThan(known.most - known.least);
  const pure = rangeOf({ ...bath, alkalinityMgPerLCaCO3: 0, add: [] });
  // Half the width of the check against the standard buffers.
  expect(pure.most - pure.least).toBeCloseTo(0.1, 9);
});
