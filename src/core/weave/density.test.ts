import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import references from '../../../data/references.json' with { type: 'json' };
import table from '../../../data/weave/notations.json' with { type: 'json' };
import { agreesWith } from '../../../test/support/agreesWith.ts';
import {
  type KnotDensity,
  knotsPerSquareMetre,
  notation,
  notations,
  readKnotDensity,
  writeKnotDensity,
} from './density.ts';

const read = (text: string, id: string, rajMm = 70): KnotDensity => {
  const result = readKnotDensity(text, id, { rajMm });
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
};

const areaIn = (text: string, id: string, to: string): number => {
  const way = notation(to);
  if (!way.ok) throw new Error(way.problem.code);
  const [value = Number.NaN] = writeKnotDensity(read(text, id), way.value).values;
  return value;
};

agreesWith(
  {
    source: 'common-practice',
    where: 'conversion tables of the trade: raj, line, Indian and Turkish counts',
    readFrom: 'trade usage, worked by hand from the definitions',
    within: (expected) => expected * 5e-4,
    because: 'the tables print four figures',
    rows: [
      { text: '40', from: 'raj', to: 'per-square-metre', expected: 326_531 },
      { text: '40', from: 'raj', to: 'per-square-inch', expected: 210.7 },
      { text: '50', from: 'raj', to: 'per-square-metre', expected: 510_204 },
      { text: '50', from: 'raj', to: 'per-square-inch', expected: 329.2 },
      { text: '60', from: 'raj', to: 'per-square-inch', expected: 474.0 },
      { text: '70', from: 'raj', to: 'per-square-metre', expected: 1_000_000 },
      { text: '90', from: 'line', to: 'per-square-inch', expected: 56.25 },
      { text: '120', from: 'line', to: 'per-square-inch', expected: 100.0 },
      { text: '9/60', from: 'indian', to: 'per-square-inch', expected: 133.3 },
      { text: '5/40', from: 'indian', to: 'per-square-inch', expected: 49.4 },
      { text: '26x33', from: 'turkish', to: 'per-square-decimetre', expected: 858 },
      { text: '26x33', from: 'turkish', to: 'per-square-inch', expected: 55.35 },
      { text: '15/18', from: 'pakistani', to: 'per-square-inch', expected: 270 },
    ],
  },
  ({ text, from, to }) => areaIn(text, from, to),
);

agreesWith(
  {
    source: 'si-brochure',
    where: 'the inch is exactly 25.4 mm, so 1 per square inch is 1550.0031 per m²',
    readFrom: 'memory of the source',
    within: 0.0001,
    because: 'exact by definition, printed to four decimals',
    rows: [{ text: '100', expected: 155_000.31 }],
  },
  ({ text }) => Number(areaIn(text, 'per-square-inch', 'per-square-metre').toFixed(2)),
);

describe('reading a knot density', () => {
  test('a raj counted over 6.5 cm is finer than the same raj over 7 cm, and the length is printed', () => {
    const short = notation('raj', { rajMm: 65 });
    expect(knotsPerSquareMetre(read('40', 'raj', 65)).perSquareMetre).toBeGreaterThan(
      knotsPerSquareMetre(read('40', 'raj')).perSquareMetre,
    );
    expect(short.ok && writeKnotDensity(read('40', 'raj', 65), short.value).name).toContain('6.5 cm');
  });

  test('squaring one number is said to assume square knots, multiplying two is not', () => {
    expect(knotsPerSquareMetre(read('40', 'raj')).assumesSquare).toBe(true);
    expect(knotsPerSquareMetre(read('26x33', 'turkish')).assumesSquare).toBe(false);
    expect(knotsPerSquareMetre(read('100', 'per-square-inch')).assumesSquare).toBe(false);
  });

  test('an area split into two equal axes is said to assume square knots', () => {
    const turkish = notation('turkish');
    const whole = read('100', 'per-square-inch');
    expect(turkish.ok && writeKnotDensity(whole, turkish.value).assumesSquare).toBe(true);
  });

  test.each([
    ['nine', 'raj', 'knot-density-not-readable'],
    ['', 'raj', 'knot-density-not-readable'],
    ['40/50', 'raj', 'knot-density-not-readable'],
    ['9', 'indian', 'knot-density-not-readable'],
    ['9/60/3', 'indian', 'knot-density-not-readable'],
    ['-40', 'raj', 'knot-density-not-readable'],
    ['1e9', 'raj', 'knot-density-not-readable'],
    ['0', 'raj', 'out-of-range'],
    ['4000', 'raj', 'out-of-range'],
    ['26x3300', 'turkish', 'out-of-range'],
    ['40', 'furlongs', 'unknown-notation'],
  ])('“%s” in %s is refused as %s', (text, id, code) => {
    const result = readKnotDensity(text, id);
    expect(!result.ok && result.problem.code).toBe(code);
  });

  test('a raj length nobody uses is refused', () => {
    const result = readKnotDensity('40', 'raj', { rajMm: 700 });
    expect(!result.ok && result.problem.code).toBe('out-of-range');
  });

  test('a density of two axes survives being written in any two-axis notation and read again', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 3000, noNaN: true }),
        fc.double({ min: 60, max: 3000, noNaN: true }),
        fc.constantFrom(...notations().filter((way) => way.kind === 'both-axes')),
        (weftwisePerM, warpwisePerM, way) => {
          const { values } = writeKnotDensity({ kind: 'both-axes', weftwisePerM, warpwisePerM }, way);
          const back = readKnotDensity(values.map((value) => value.toFixed(9)).join('x'), way.id);
          if (!back.ok || back.value.kind !== 'both-axes') throw new Error('lost an axis');
          expect(back.value.weftwisePerM / weftwisePerM).toBeCloseTo(1, 9);
          expect(back.value.warpwisePerM / warpwisePerM).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  test('the notations name a source that the bibliography holds', () => {
    expect(Object.keys(references)).toContain(table.source);
  });
});
