import { expect, test } from 'vitest';
import { agreesWith } from '../../../test/support/agreesWith.ts';
import { hardnessConsumed } from './hardnessConsumed.ts';
import type { HardnessUnit } from './supplyWater.ts';
import { surfactantByArea, surfactantByBath } from './surfactantDose.ts';

const gramsFor = (value: number, unit: HardnessUnit, agent: string) => {
  const found = hardnessConsumed({ value, unit }, 10, agent);
  return found.ok ? found.value.grams : Number.NaN;
};

agreesWith(
  {
    source: 'crc-handbook',
    where: 'molar masses; two oleate ions or one EDTA for each calcium ion',
    readFrom: 'worked by hand from atomic masses; memory of the source',
    within: 0.01,
    because: 'molar masses to a hundredth',
    rows: [
      { value: 1, unit: 'mmol/L', agent: 'soap, as sodium oleate', expected: 0.01 * 2 * 304.44 },
      { value: 100.087, unit: 'mg/L CaCO₃', agent: 'soap, as sodium oleate', expected: 6.089 },
      { value: 1, unit: 'mmol/L', agent: 'disodium EDTA, dihydrate', expected: 3.722 },
      { value: 5.6077, unit: '°dH', agent: 'disodium EDTA, dihydrate', expected: 3.722 },
    ] as const,
  },
  ({ value, unit, agent }) => gramsFor(value, unit, agent),
);

test('a synthetic detergent and citrate have no fixed figure, and none is told', () => {
  for (const agent of ['alcohol ethoxylate', 'trisodium citrate, dihydrate', 'sodium carbonate']) {
    const found = hardnessConsumed({ value: 14, unit: '°dH' }, 10, agent);
    expect(found.ok ? null : found.problem.code).toBe('binding-not-fixed');
  }
});

test('a rug of 4 m² takes 60 to 160 g of concentrate, and its bath is as strong as that makes it', () => {
  // 15 to 40 g/m²: common practice, no published source.
  const found = surfactantByArea(4, 40);
  expect(found.ok ? found.value : null).toEqual({
    grams: { least: 60, most: 160 },
    gPerL: { least: 1.5, most: 4 },
  });
});

test('half a gram a litre of a quarter-strength product is two grams a litre of it', () => {
  const found = surfactantByBath(0.5, 40, 0.25, 0.25);
  expect(found.ok ? found.value.grams : Number.NaN).toBeCloseTo(80, 10);
  expect(found.ok ? found.value.interval : null).toEqual([64, 80 / 0.75]);
  expect(surfactantByBath(0.5, 40, 1.2, 0.05).ok).toBe(false);
  expect(surfactantByArea(-1, 40).ok).toBe(false);
});
