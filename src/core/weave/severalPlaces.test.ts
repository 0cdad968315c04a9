import { describe, expect, test } from 'vitest';
import { type PlaceCount, severalPlaces } from './severalPlaces.ts';

const place = (weftwiseKnotsPer7cm: number, warpwiseKnotsPer7cm = 40): PlaceCount => ({
  weftwiseKnotsPer7cm,
  warpwiseKnotsPer7cm,
});

describe('counts at several places', () => {
  test('the median stands, the spread is told, and nothing is odd within five per cent', () => {
    const result = severalPlaces([place(40), place(41), place(39.5), place(40.5), place(40.2)]);
    if (!result.ok) throw new Error(result.problem.code);
    expect(result.value.weftwise).toEqual({ median: 40.2, least: 39.5, most: 41 });
    expect(result.value.odd).toEqual([]);
  });

  test('40 by 40 knots in 7 cm are 3265 per dm², as 40 raj', () => {
    const result = severalPlaces([place(40), place(40), place(40)]);
    expect(result.ok && result.value.perDm2).toBeCloseTo(3265.3, 1);
  });

  test('a place counted with the wrong factor does not move the result and is pointed at', () => {
    const result = severalPlaces([place(40), place(81), place(41)]);
    if (!result.ok) throw new Error(result.problem.code);
    expect(result.value.weftwise.median).toBe(41);
    expect(result.value.odd).toMatchObject([{ place: 1, axis: 'weftwise', kind: 'factor' }]);
  });

  test('a place that is truly coarser is called different, not wrong', () => {
    const result = severalPlaces([place(40), place(36), place(40.5)]);
    expect(result.ok && result.value.odd).toMatchObject([{ place: 1, kind: 'differs' }]);
  });

  test('two places are not enough', () => {
    const result = severalPlaces([place(40), place(40)]);
    expect(!result.ok && result.problem.code).toBe('places-not-enough');
  });
});
