import Color from 'colorjs.io';
import { converter, differenceCiede2000 } from 'culori';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import pairs from '../../../data/colour/ciede2000Pairs.json' with { type: 'json' };
import greyScales from '../../../data/wash/greyScales.json' with { type: 'json' };
import { agreesWith } from '../../../test/support/agreesWith.ts';
import { ciede2000 } from './ciede2000.ts';
import { colourChangeGrade, stainingGrade } from './fastnessGrade.ts';
import { type Lab, labFromLinear, labFromSrgb, luminanceOfLightness } from './lab.ts';

const lab = (L: number, a: number, b: number): Lab => ({ L, a, b });

agreesWith(
  {
    source: 'sharma-wu-dalal-2005',
    where: 'table 1, all 34 pairs',
    readFrom: 'a copy of the table',
    within: 1e-4,
    because: 'the table is printed to four decimals',
    rows: pairs.rows.map(([L1 = 0, a1 = 0, b1 = 0, L2 = 0, a2 = 0, b2 = 0, expected = Number.NaN]) => ({
      ...{ one: lab(L1, a1, b1), other: lab(L2, a2, b2) },
      expected,
    })),
  },
  ({ one, other }) => ciede2000(one, other),
);

test('the published table was taken over whole', () => expect(pairs.rows).toHaveLength(34));

// Worked by the formulas of IEC 61966-2-1 and ISO/CIE 11664-4 with the white 0.95047, 1, 1.08883; here the white
// comes from its chromaticity 0.3127, 0.3290, which moves L* by up to 0.003 and a*, b* by less than 0.02.
test.each([
  [
    [140, 30, 35],
    [30.943, 45.563, 25.98],
  ],
  [
    [32, 50, 96],
    [21.699, 9.175, -29.606],
  ],
  [
    [214, 196, 160],
    [79.793, 0.746, 20.402],
  ],
] as const)('the colour of the pixel %j is the worked one', (pixel, [L, a, b]) => {
  const found = labFromSrgb(pixel);
  expect(Math.abs(found.L - L)).toBeLessThan(0.003);
  expect(Math.abs(found.a - a)).toBeLessThan(0.02);
  expect(Math.abs(found.b - b)).toBeLessThan(0.02);
});

test('white is L* 100 without colour, and a grey of a lightness has that lightness', () => {
  const white = labFromSrgb([255, 255, 255]);
  expect(white.L).toBeCloseTo(100, 9);
  expect(Math.hypot(white.a, white.b)).toBeLessThan(1e-9);
  const grey = luminanceOfLightness(41);
  expect(labFromLinear([grey, grey, grey]).L).toBeCloseTo(41, 9);
});

describe('every step of the grey scales returns its own grade (ISO 105-A03 and A02)', () => {
  test.each(greyScales.rows)('grade $grade', ({ grade, staining, change }) => {
    const { whiteLightness, greyLightness } = greyScales;
    expect(stainingGrade(lab(whiteLightness, 0, 0), lab(whiteLightness - staining, 0, 0)).grade).toBe(grade);
    expect(colourChangeGrade(lab(greyLightness, 0, 0), lab(greyLightness + change, 0, 0)).grade).toBe(grade);
  });
});

// Worked by hand from the formulas of ISO 105-A04 and A05; common practice, no published example.
test.each([
  [lab(94, -0.5, 2.5), lab(90, 4, 3), 4.23, 4.03, '4'],
  [lab(94, -0.5, 2.5), lab(84, 14, 6), 11.992, 2.5, '2-3'],
] as const)('the worked stain %j to %j', (white, stained, deltaEGS, rating, grade) => {
  const found = stainingGrade(white, stained);
  expect(Math.abs(found.deltaEGS - deltaEGS)).toBeLessThan(6e-4);
  expect(Math.abs(found.rating - rating)).toBeLessThan(6e-3);
  expect(found.grade).toBe(grade);
});
test.each([
  [lab(40, 50, 30), lab(42, 45, 27), 3.294, '3'],
  [lab(25, 10, -35), lab(27, 8, -28), 4.524, '2-3'],
  [lab(35, 40, -3), lab(36, 39, 3), 5.318, '2-3'],
] as const)('the worked change %j to %j', (before, after, deltaEF, grade) => {
  const found = colourChangeGrade(before, after);
  expect(Math.abs(found.deltaEF - deltaEF)).toBeLessThan(6e-4);
  expect(found.grade).toBe(grade);
});

describe('agreement with two general colour libraries, which is no proof of truth', () => {
  const byte = fc.integer({ min: 0, max: 255 });
  const pixel = fc.tuple(byte, byte, byte);
  const toLab65 = converter('lab65');
  const difference = differenceCiede2000();
  const culoriLab = ([r, g, b]: readonly [number, number, number]) =>
    toLab65({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });

  test('CIELAB of any pixel', () => {
    fc.assert(
      fc.property(pixel, (given) => {
        const ours = labFromSrgb(given);
        const second = culoriLab(given);
        const [L, a, b] = new Color('srgb', [given[0] / 255, given[1] / 255, given[2] / 255]).to(
          'lab-d65',
        ).coords;
        expect(Math.hypot(ours.L - second.l, ours.a - second.a, ours.b - second.b)).toBeLessThan(0.05);
        expect(Math.hypot(ours.L - (L ?? Number.NaN), ours.a - (a ?? 0), ours.b - (b ?? 0))).toBeLessThan(
          0.05,
        );
      }),
      { seed: 4, numRuns: 200 },
    );
  });

  test('ΔE00 of any two pixels', () => {
    fc.assert(
      fc.property(pixel, pixel, (one, other) => {
        const [p, q] = [culoriLab(one), culoriLab(other)];
        const ours = ciede2000(lab(p.l, p.a, p.b), lab(q.l, q.a, q.b));
        expect(Math.abs(ours - difference(p, q))).toBeLessThan(1e-6);
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});

test('a difference is the same both ways round and nothing to itself', () => {
  const any = fc.record({
    L: fc.double({ min: 0, max: 100, noNaN: true }),
    a: fc.double({ min: -90, max: 90, noNaN: true }),
    b: fc.double({ min: -90, max: 90, noNaN: true }),
  });
  fc.assert(
    fc.property(any, any, (one, other) => {
      expect(ciede2000(one, one)).toBe(0);
      expect(ciede2000(one, other)).toBeCloseTo(ciede2000(other, one), 6);
    }),
    { seed: 6, numRuns: 200 },
  );
});
