import { describe, expect, test } from 'vitest';
import { agreesWith } from '../../test/support/agreesWith.ts';
import { type KnotCount, knotResult } from './knotResult.ts';

const over = (count: number, overMm: number) => ({ count, overMm });
const byHand = (places: readonly (readonly [number, number])[], nodesPerKnot: 1 | 2 = 1): KnotCount => ({
  counted: 'by hand',
  nodesPerKnot,
  places: places.map(([weftwise, warpwise], at) => ({
    place: `place ${at + 1}`,
    weftwise: over(weftwise, 70),
    warpwise: over(warpwise, 70),
  })),
});

type Photographed = Extract<KnotCount, { counted: 'photographed' }>;
type Axis = Photographed['places'][number]['weftwise'];

const axis = (count: number, half: number, basis: Axis['basis'] = 'confirmed'): Axis => ({
  count,
  overMm: 70,
  interval95: { least: count * (1 - half), most: count * (1 + half) },
  basis,
  confidence: 0.9,
});
const photographed = (
  places: readonly (readonly [Axis, Axis])[],
  scaleHalf: number,
  barMm: number | undefined = 100,
): Photographed => ({
  counted: 'photographed',
  nodesPerKnot: 1,
  nodesWhy: 'seen on the back',
  algorithm: 'a counter',
  places: places.map(([weftwise, warpwise], at) => ({
    place: `place ${at + 1}`,
    photo: 'a'.repeat(64),
    scale: {
      from: 'card',
      serial: '7K3M4Q',
      codes: 4,
      mmPerPx: 0.1,
      interval95: { least: 0.1 * (1 - scaleHalf), most: 0.1 * (1 + scaleHalf) },
      ...(barMm === undefined ? {} : { barMm }),
    },
    weftwise,
    warpwise,
  })),
});

agreesWith(
  {
    source: 'common-practice',
    where: 'a raj counts the knots along 7 cm of the weft; 40 raj is 326 531 knots/m² when square',
    readFrom: 'trade usage, worked by hand from the definitions',
    within: 1,
    because: 'the tables print whole knots',
    rows: [
      { across: 40, along: 40, nodes: 1 as const, expected: 326_531 },
      { across: 80, along: 40, nodes: 2 as const, expected: 326_531 },
      { across: 70, along: 70, nodes: 1 as const, expected: 1_000_000 },
    ],
  },
  ({ across, along, nodes }) => 100 * knotResult(byHand([[across, along]], nodes)).perDm2.value,
);

describe('knots counted at several places', () => {
  test('the median stands, one odd place does not move it, and it is named', () => {
    const { weftwisePerM, odd } = knotResult(
      byHand([
        [40, 44],
        [41, 45],
        [82, 46],
      ]),
    );
    expect(weftwisePerM.value * 0.07).toBeCloseTo(41, 9);
    expect(weftwisePerM.most * 0.07).toBeCloseTo(82, 9);
    expect(weftwisePerM.least * 0.07).toBeCloseTo(40, 9);
    expect(odd).toMatchObject([{ place: 2, axis: 'weftwise', kind: 'factor' }]);
  });

  test('two nodes a knot halve what is seen across, never the rows along', () => {
    const one = knotResult(byHand([[40, 44]], 1)).density;
    const two = knotResult(byHand([[40, 44]], 2)).density;
    expect(two.weftwisePerM).toBeCloseTo(one.weftwisePerM / 2, 9);
    expect(two.warpwisePerM).toBeCloseTo(one.warpwisePerM, 9);
  });

  test('one place or two say nothing of the whole rug, so no interval stands', () => {
    expect(knotResult(byHand([[40, 44]])).perDm2.interval95).toBeNull();
    const two = byHand([
      [40, 44],
      [41, 44],
    ]);
    expect(knotResult(two).weftwisePerM.interval95).toBeNull();
  });

  test('by hand with a ruler nothing is surer than one per cent', () => {
    const same = Array.from({ length: 9 }, () => [700, 700] as const);
    const { interval95, value } = knotResult(byHand(same)).weftwisePerM;
    expect((interval95?.[1] ?? 0) / value - 1).toBeGreaterThanOrEqual(0.01);
  });
});

describe('knots counted on photographs', () => {
  const three = [axis(30, 0.01), axis(30, 0.01), axis(30, 0.01)].map((one) => [one, one] as const);

  test('what all places share is not averaged away: a card nobody measured leaves three per cent', () => {
    const half = (count: KnotCount) => {
      const { interval95, value } = knotResult(count).weftwisePerM;
      return ((interval95?.[1] ?? 0) - (interval95?.[0] ?? 0)) / 2 / value;
    };
    const many = Array.from({ length: 9 }, () => [axis(30, 0.031), axis(30, 0.031)] as const);
    expect(half(photographed(many, 0.03, undefined))).toBeGreaterThanOrEqual(0.03);
    expect(half(photographed(many, 0.002))).toBeLessThan(0.02);
  });

  test('an area takes the scale twice', () => {
    const { perDm2 } = knotResult(photographed(three, 0.03, undefined));
    expect((perDm2.interval95?.[1] ?? 0) / perDm2.value - 1).toBeGreaterThanOrEqual(0.06);
  });

  test('it is confirmed only when a person confirmed both ways at every place', () => {
    expect(knotResult(photographed(three, 0.002)).isConfirmed).toBe(true);
    for (const basis of ['automatic', 'tapped'] as const) {
      const one = [...three.slice(1), [axis(30, 0.01), axis(30, 0.01, basis)] as const];
      expect(knotResult(photographed(one, 0.002)).isConfirmed).toBe(false);
    }
  });
});
