import { expect, test } from 'vitest';
import type { BathRecipe } from './bathRecipe.ts';
import { dose } from './dose.ts';
import { phOfBath } from './neutralise.ts';
import { titration } from './titration.ts';

const water: BathRecipe = {
  ...{
    litres: 40,
    temperatureC: 20,
    alkalinityMgPerLCaCO3: 250,
    activity: 'davies',
    openToAir: false,
    add: [],
  },
};
const curve = (agent: string, targetPh: number) => {
  const found = titration(water, agent, targetPh);
  if (!found.ok) throw new Error(found.problem.code);
  return found.value;
};

test('acid goes in from nothing, every step more, past the target', () => {
  const points = curve('citric acid, anhydrous', 5);
  expect(points[0]?.grams).toBeCloseTo(0, 6);
  const grams = points.map((point) => point.grams);
  expect(grams).toEqual([...grams].sort((a, b) => a - b));
  expect(points.at(-1)?.pH).toBeLessThan(5);
  for (const { grams: likely, least, most } of points) {
    expect(least).toBeLessThanOrEqual(likely);
    expect(most).toBeGreaterThanOrEqual(likely);
  }
});

test('every point of the curve is the pH of the bath it stands for, and the dose lies on it', () => {
  const points = curve('acetic acid', 5);
  for (const { pH, grams } of points.filter((_, index) => index % 10 === 0)) {
    const bath = phOfBath({ ...water, add: [{ agent: 'acetic acid', grams }] });
    expect(bath.ok ? bath.value : bath.problem.code).toBeCloseTo(pH, 6);
  }
  const dosed = dose(water, 'acetic acid', 5);
  if (!dosed.ok) throw new Error(dosed.problem.code);
  const [before, after] = [points.findLast(({ pH }) => pH >= 5), points.find(({ pH }) => pH <= 5)];
  expect(before?.grams).toBeLessThanOrEqual(dosed.value.grams);
  expect(after?.grams).toBeGreaterThanOrEqual(dosed.value.grams);
});

test('a target out of reach has no curve', () => {
  const found = titration(water, 'acetic acid', 9);
  expect(found.ok ? null : found.problem.code).toBe('target-out-of-reach');
});
