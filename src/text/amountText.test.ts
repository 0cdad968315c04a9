import { expect, test } from 'vitest';
import { amountText, rangeText } from './amountText.ts';

// Reading only: how many figures a scale or a cylinder of a workshop shows.
test.each([
  [0, 'g', '0 g'],
  [0.0563, 'g', '56 mg'],
  [0.0032, 'g', '3.2 mg'],
  [0.31, 'mL', '0.31 mL'],
  [250, 'mL', '250 mL'],
  [4321, 'g', '4.32 kg'],
] as const)('%s %s reads %s', (value, unit, words) => {
  expect(amountText(value, unit)).toBe(words);
});

test.each([
  [0.0748, 0.1003, 'g', '0.075 – 0.1 g'],
  [0.0413, 0.0553, 'g', '41 – 55 mg'],
  [20, 50, 'mL', '20 – 50 mL'],
  [800, 1200, 'g', '0.80 – 1.20 kg'],
  [160, 160, 'mL', '160 mL'],
] as const)('a range from %s to %s %s is read in one unit: %s', (least, most, unit, words) => {
  expect(rangeText(least, most, unit)).toBe(words);
});
