import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readNumber } from './readNumber.ts';

describe('reading a number as typed', () => {
  test.each([
    ['12', 12],
    ['12.5', 12.5],
    ['12,5', 12.5],
    [' 7 ', 7],
    ['.5', 0.5],
    ['-3', -3],
    ['−3', -3],
  ])('“%s” is read as %d', (text, number) => {
    expect(readNumber(text)).toBe(number);
  });

  test.each(['', '1,234.5', '1.234,5', '1 234', '12cm', '1e3', '--1', 'Infinity', '٣'])(
    '“%s” is no plain number and is not guessed at',
    (text) => {
      expect(readNumber(text)).toBeNull();
    },
  );

  test('whatever is written with a point or a comma is read as the same number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), fc.integer({ min: 0, max: 99 }), (whole, hundredths) => {
        const decimals = String(hundredths).padStart(2, '0');
        expect(readNumber(`${whole}.${decimals}`)).toBe(readNumber(`${whole},${decimals}`));
      }),
    );
  });
});
