import { expect, test } from 'vitest';
import { rinsePlans } from './rinsePlans.ts';

const plansFor = (prices: Parameters<typeof rinsePlans>[2] = null) => {
  const found = rinsePlans(10, 0.005, prices);
  if (!found.ok) throw new Error(found.problem.code);
  return found.value;
};

test('two fills with extraction take 200 L and 22 to 42 minutes', () => {
  // By hand: 0.33/10.33 squared is below 0.005; 200 L at 20 L/min, and twice working, draining, extracting.
  const plan = plansFor().find(({ way }) => way === 'fill, drain and extract');
  expect(plan?.litres).toBe(200);
  expect(plan?.minutes.least).toBeCloseTo(22, 10);
  expect(plan?.minutes.most).toBeCloseTo(42, 10);
});

test('extracting first saves water of a flow', () => {
  // By hand: 1.67 + 2·ln(0.165/0.005) = 8.66 L/kg against 2·ln(200) = 10.60 L/kg.
  const litres = (way: string) => plansFor().find((one) => one.way === way)?.litresPerKg ?? Number.NaN;
  expect(litres('extract, then flow')).toBeCloseTo(8.66, 2);
  expect(litres('flow')).toBeCloseTo(10.6, 2);
});

test('every way reaches the end, and the cheapest stands first', () => {
  const plans = plansFor({ waterPerM3: 5, hour: 30 });
  const costs = plans.map(({ cost }) => cost?.most ?? Number.NaN);
  expect(costs).toEqual([...costs].sort((a, b) => a - b));
  for (const { left } of plans) expect(left).toBeLessThanOrEqual(0.005 + 1e-12);
});

test('a rug without mass is refused', () => {
  expect(rinsePlans(0, 0.005).ok).toBe(false);
  expect(rinsePlans(10, 1.5).ok).toBe(false);
});
