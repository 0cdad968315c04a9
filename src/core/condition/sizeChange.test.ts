import { describe, expect, test } from 'vitest';
import { sizeChanges } from './sizeChange.ts';

const intake = { lengthsMm: [3000, 3010, 3005], widthsMm: [2000, 2000, 2000], uncertaintyMm: 5 };

describe('size after the work', () => {
  test('four ends of 5 mm hide a change of 10 mm, and no more', () => {
    const { lengths } = sizeChanges(intake, { ...intake, lengthsMm: [2990, 2999.9, 3016] });
    expect(lengths.map(({ verdict }) => verdict)).toEqual(['no change to be seen', 'smaller', 'larger']);
    expect(lengths[0]?.uncertaintyMm).toBeCloseTo(10, 12);
  });

  test('a rougher tape hides more', () => {
    const { widths } = sizeChanges(
      { ...intake, uncertaintyMm: 20 },
      { ...intake, uncertaintyMm: 20, widthsMm: [1970, 2000, 2030] },
    );
    expect(widths.every(({ verdict }) => verdict === 'no change to be seen')).toBe(true);
  });
});
