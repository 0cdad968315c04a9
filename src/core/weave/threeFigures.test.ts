import { expect, test } from 'vitest';
import { threeFigures, toThreeFigures } from './threeFigures.ts';

// Rounding to significant figures by its definition.
test('a count of knots is never written with more than three figures', () => {
  expect([31.87, 2083.4, 0.98765, 30].map(threeFigures)).toEqual(['31.9', '2080', '0.988', '30']);
  expect(threeFigures(1_248_700)).toBe('1\u00a0250\u00a0000');
  expect(toThreeFigures('9.83/55.42')).toBe('9.83/55.4');
});
