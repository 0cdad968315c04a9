import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { crossesItself, markAreaCm2, markLengthCm, pointingOnRugMm, shareOfRug } from './extent.ts';
import { fewerPoints } from './fewerPoints.ts';
import { pictureMap } from './pictureMap.ts';
import { placedOnRug, type RugPoint, rugFrame, standsOn } from './rugFrame.ts';

const points = (...flat: readonly (readonly [number, number])[]): readonly RugPoint[] =>
  flat.map(([xMm, yMm]) => ({ xMm, yMm }));

const ring = (corners: number, radiusMm: number): readonly RugPoint[] =>
  Array.from({ length: corners }, (_, index) => ({
    xMm: 500 + radiusMm * Math.cos((2 * Math.PI * index) / corners),
    yMm: 500 + radiusMm * Math.sin((2 * Math.PI * index) / corners),
  }));

const areaOf = (outline: readonly RugPoint[], pointingMm = 2): number => {
  const measured = markAreaCm2(outline, pointingMm, null);
  return measured.ok ? measured.value.value : Number.NaN;
};

describe('areas of marks, against Euclid', () => {
  test('a triangle is half its base times its height', () => {
    expect(areaOf(points([0, 0], [300, 0], [120, 200]))).toBeCloseTo((30 * 20) / 2, 9);
  });

  test('an L of two rectangles is the sum of both', () => {
    expect(areaOf(points([0, 0], [200, 0], [200, 100], [100, 100], [100, 300], [0, 300]))).toBeCloseTo(
      20 * 10 + 10 * 20,
      9,
    );
  });

  test('a ring of 720 corners comes within 0.002 % of the circle it stands for', () => {
    const circle = Math.PI * 10 ** 2;
    expect(Math.abs(areaOf(ring(720, 100)) / circle - 1)).toBeLessThan(2e-5);
  });

  test('neither the first corner nor the way round changes an area', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 20 }), fc.integer({ min: 0, max: 19 }), (corners, turn) => {
        const outline = ring(corners, 80);
        const turned = [...outline.slice(turn % corners), ...outline.slice(0, turn % corners)].reverse();
        expect(areaOf(turned)).toBeCloseTo(areaOf(outline), 6);
      }),
    );
  });

  test('the interval of a square covers ten thousand shaken hands, and a hand that keeps outside all round', () => {
    const outline = points([0, 0], [200, 0], [200, 200], [0, 200]);
    let seed = 12345;
    const chance = () => {
      seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
      return (seed + 0.5) / 2_147_483_648;
    };
    const shake = () => 3 * Math.sqrt(-2 * Math.log(chance())) * Math.cos(2 * Math.PI * chance());
    const shaken = Array.from({ length: 10_000 }, () =>
      areaOf(outline.map(({ xMm, yMm }) => ({ xMm: xMm + shake(), yMm: yMm + shake() }))),
    );
    const mean = shaken.reduce((sum, value) => sum + value, 0) / shaken.length;
    const spread = Math.sqrt(shaken.reduce((sum, value) => sum + (value - mean) ** 2, 0) / shaken.length);
    const measured = markAreaCm2(outline, 3, null);
    if (!measured.ok) throw new Error(measured.problem.code);
    const half = (measured.value.most - measured.value.least) / 2;
    expect(half).toBeGreaterThan(2 * spread);
    const wide = areaOf(points([-3, -3], [203, -3], [203, 203], [-3, 203]));
    expect(half).toBeGreaterThan(1.9 * (wide - 400));
    expect(half).toBeLessThan(2.5 * Math.hypot(spread, wide - 400));
  });

  test('an outline that crosses itself has no area', () => {
    const bow = points([0, 0], [100, 100], [100, 0], [0, 100]);
    expect(crossesItself(bow)).toBe(true);
    expect(markAreaCm2(bow, 1, null)).toMatchObject({ problem: { code: 'outline-crosses-itself' } });
  });

  test('two points have no area', () => {
    expect(markAreaCm2(points([0, 0], [1, 1]), 1, null)).toMatchObject({
      problem: { code: 'too-few-points', facts: { shape: 'polygon', given: 2, least: 3 } },
    });
  });
});

describe('lengths of marks', () => {
  test('a staircase is as long as its treads and risers', () => {
    const measured = markLengthCm(points([0, 0], [300, 0], [300, 400], [700, 400]), 2, null);
    expect(measured.ok && measured.value.value).toBeCloseTo(30 + 40 + 40, 9);
  });

  test('a straight line is known as well as its two ends, whatever was tapped between', () => {
    const two = markLengthCm(points([0, 0], [400, 0]), 3, null);
    const many = markLengthCm(points([0, 0], [100, 0], [250, 0], [400, 0]), 3, null);
    if (!two.ok || !many.ok) throw new Error('no length');
    expect(many.value.most - many.value.least).toBeCloseTo(two.value.most - two.value.least, 9);
    expect((two.value.most - two.value.least) / 2).toBeCloseTo((2 * Math.SQRT2 * 3) / 10, 9);
  });

  test('one point has no length', () => {
    expect(markLengthCm(points([0, 0]), 1, null).ok).toBe(false);
  });
});

describe('a mark on a picture', () => {
  const frame = rugFrame({
    shape: 'rectangle',
    lengthsMm: [3000, 3000, 3000],
    widthsMm: [2000, 2000, 2000],
    uncertaintyMm: 5,
  });
  const corners = [
    { x: 0.1, y: 0.9 },
    { x: 0.9, y: 0.9 },
    { x: 0.9, y: 0.1 },
    { x: 0.1, y: 0.1 },
  ] as const;

  test('the true area of a square stain lies inside the interval when every tap strays by a fingertip', () => {
    const map = pictureMap(corners, frame, 'face');
    if (!map.ok) throw new Error(map.problem.code);
    const { toPicture, toRug } = map.value;
    const stain = points([500, 500], [1000, 500], [1000, 1000], [500, 1000]);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -0.002, max: 0.002, noNaN: true }), { minLength: 8, maxLength: 8 }),
        (stray) => {
          const tapped = stain.map(toPicture).map(({ x, y }, index) => ({
            x: x + (stray[2 * index] ?? 0),
            y: y + (stray[2 * index + 1] ?? 0),
          }));
          const measured = markAreaCm2(tapped.map(toRug), pointingOnRugMm(tapped, map.value), frame);
          if (!measured.ok) throw new Error(measured.problem.code);
          expect(measured.value.least).toBeLessThanOrEqual(2500);
          expect(measured.value.most).toBeGreaterThanOrEqual(2500);
        },
      ),
    );
  });

  test('a rug out of square widens every interval', () => {
    const crooked = rugFrame({
      ...frame,
      shape: 'irregular',
      lengthsMm: [2900, 3000, 3100],
      widthsMm: [2000, 2000, 2000],
      uncertaintyMm: 5,
    });
    const outline = ring(12, 100);
    const straight = markAreaCm2(outline, 2, frame);
    const bent = markAreaCm2(outline, 2, crooked);
    if (!straight.ok || !bent.ok) throw new Error('no area');
    expect(bent.value.most).toBeGreaterThan(straight.value.most);
  });

  test('half of a rug is half of it, round or square', () => {
    expect(shareOfRug(30_000, frame)).toBeCloseTo(0.5, 12);
    expect(shareOfRug((Math.PI / 8) * 60_000, { ...frame, outline: 'ellipse' })).toBeCloseTo(0.5, 12);
  });
});

describe('where a mark stands', () => {
  const frame = rugFrame({
    shape: 'rectangle',
    lengthsMm: [3000, 3000, 3000],
    widthsMm: [2000, 2000, 2000],
    fringeStartMm: 60,
    uncertaintyMm: 5,
  });

  test.each([
    [1000, 1500, 'body'],
    [0, 0, 'body'],
    [1000, -50, 'fringe'],
    [1000, 3005, 'edge of doubt'],
    [1000, 3050, 'off the rug'],
    [-200, 100, 'off the rug'],
  ] as const)('%d mm across and %d mm along is %s', (xMm, yMm, expected) => {
    expect(standsOn({ xMm, yMm }, frame)).toBe(expected);
  });

  test('a mark beyond the rug is refused, naming the point that strays', () => {
    const refusal = placedOnRug(points([1000, 1000], [2400, 1000]), frame);
    expect(refusal).toMatchObject({ problem: { code: 'mark-off-the-rug', facts: { xMm: 2400 } } });
    expect(placedOnRug(points([1000, 1000], [1000, -40]), frame).ok).toBe(true);
  });

  test('the corner of the square around a round rug is off the rug', () => {
    const round = rugFrame({
      shape: 'round',
      lengthsMm: [2000, 2000, 2000],
      widthsMm: [2000, 2000, 2000],
      uncertaintyMm: 5,
    });
    expect(standsOn({ xMm: 50, yMm: 50 }, round)).toBe('off the rug');
    expect(standsOn({ xMm: 1000, yMm: 1999 }, round)).toBe('body');
  });
});

describe('a stroke with fewer points', () => {
  const stroke = fc.array(
    fc.record({
      x: fc.integer({ min: 0, max: 1000 }).map((at) => at / 1000),
      y: fc.integer({ min: 0, max: 1000 }).map((at) => at / 1000),
    }),
    { minLength: 2, maxLength: 60 },
  );

  test('keeps its ends and invents nothing', () => {
    fc.assert(
      fc.property(stroke, (drawn) => {
        const kept = fewerPoints(drawn, 0.05);
        expect(kept[0]).toBe(drawn[0]);
        expect(kept.at(-1)).toBe(drawn.at(-1));
        expect(kept.every((point) => drawn.includes(point))).toBe(true);
      }),
    );
  });

  test('no dropped point lies farther from the line than the tolerance', () => {
    fc.assert(
      fc.property(stroke, (drawn) => {
        const kept = fewerPoints(drawn, 0.05);
        const near = ({ x, y }: { x: number; y: number }) =>
          kept.slice(1).some((to, index) => {
            const from = kept[index] ?? to;
            const steps = Array.from({ length: 2001 }, (_, step) => step / 2000);
            return steps.some(
              (t) => Math.hypot(x - from.x - t * (to.x - from.x), y - from.y - t * (to.y - from.y)) < 0.051,
            );
          });
        expect(drawn.every(near)).toBe(true);
      }),
    );
  });

  test('a straight stroke becomes its two ends', () => {
    const straight = Array.from({ length: 20 }, (_, index) => ({ x: index / 20, y: index / 40 }));
    expect(fewerPoints(straight, 1e-9)).toEqual([straight[0], straight[19]]);
  });
});
