import { describe, expect, test } from 'vitest';
import { agreesWith } from '../../../test/support/agreesWith.ts';
import { medianHalf } from './medianInterval.ts';

agreesWith(
  {
    source: 'nist-sematech',
    where: '1.3.6.7.2: t(0.975) is 2.776 with 4 degrees of freedom and 4.303 with 2',
    readFrom: 'memory of the source; times √(π/2) and the standard error, worked by hand',
    within: 0.0002,
    because: 'four figures are given',
    rows: [
      // Standard deviation √2.5 about 30.
      { values: [28, 29, 30, 31, 32], expected: (2.776 * 1.25331 * Math.sqrt(2.5)) / Math.sqrt(5) / 30 },
      { values: [39, 40, 41], expected: (4.303 * 1.25331 * 1) / Math.sqrt(3) / 40 },
    ],
  },
  ({ values }) => medianHalf(values) ?? Number.NaN,
);

describe('the interval of several places', () => {
  test('two places give none, nor do ten', () => {
    expect(medianHalf([30, 31])).toBeNull();
    expect(medianHalf(Array.from({ length: 10 }, (_, at) => 30 + at))).toBeNull();
  });

  test('equal places leave no spread, and more places narrow it', () => {
    expect(medianHalf([30, 30, 30])).toBe(0);
    expect(medianHalf([29, 31, 29, 31, 29, 31]) ?? 1).toBeLessThan(medianHalf([29, 31, 29, 31]) ?? 0);
  });
});
