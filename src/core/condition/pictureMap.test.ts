import fc from 'fast-check';
import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { cornersAround, cornersAsSeen, type PictureMap, pictureMap, type RugCorners } from './pictureMap.ts';
import { acrossTheBack, type RugFrame, rugFrame } from './rugFrame.ts';

const frame: RugFrame = rugFrame({
  shape: 'rectangle',
  lengthsMm: [3010, 3000, 2990],
  widthsMm: [2000, 2000, 2000],
  uncertaintyMm: 5,
});

const mapped = (corners: RugCorners, side: 'face' | 'back' = 'face'): PictureMap => {
  const map = pictureMap(corners, frame, side);
  if (!map.ok) throw new Error(map.problem.code);
  return map.value;
};

/** Direct linear transform over four or more pairs: the null vector of the stacked equations. */
const directLinearTransform = (pairs: readonly (readonly [number, number, number, number])[]): number[] => {
  const rows = pairs.flatMap(([x, y, u, v]) => [
    [-x, -y, -1, 0, 0, 0, u * x, u * y, u],
    [0, 0, 0, -x, -y, -1, v * x, v * y, v],
  ]);
  rows.push(Array.from({ length: 9 }, () => 0));
  const svd = new SingularValueDecomposition(new Matrix(rows));
  return svd.rightSingularVectors.getColumn(8);
};

/** A quadrilateral like a rug seen at a slant: each corner strays at most a fifth of the picture. */
const slant = fc
  .array(fc.double({ min: -0.2, max: 0.2, noNaN: true }), { minLength: 8, maxLength: 8 })
  .map((d): RugCorners => {
    const by = (index: number) => d[index] ?? 0;
    return [
      { x: 0.25 + by(0), y: 0.75 + by(1) },
      { x: 0.75 + by(2), y: 0.75 + by(3) },
      { x: 0.75 + by(4), y: 0.25 + by(5) },
      { x: 0.25 + by(6), y: 0.25 + by(7) },
    ];
  })
  .filter((corners) => pictureMap(corners, frame, 'face').ok);

const place = fc.record({
  xMm: fc.double({ min: 0, max: 2000, noNaN: true }),
  yMm: fc.double({ min: 0, max: 3000, noNaN: true }),
});

describe('from picture to rug', () => {
  test('agrees with a direct linear transform (Hartley and Zisserman 2004, algorithm 4.1) solved by singular values', () => {
    fc.assert(
      fc.property(slant, fc.double({ min: 0.3, max: 0.7, noNaN: true }), (corners, at) => {
        const rug = [
          [0, 0],
          [2000, 0],
          [2000, 3000],
          [0, 3000],
        ] as const;
        const h = directLinearTransform(
          corners.map(({ x, y }, index) => {
            const [u, v] = rug[index] ?? [0, 0];
            return [x, y, u / 1000, v / 1000] as const;
          }),
        );
        const on = (row: number, x: number, y: number) =>
          (h[row] ?? 0) * x + (h[row + 1] ?? 0) * y + (h[row + 2] ?? 0);
        const [first, , third] = corners;
        const point = { x: first.x + at * (third.x - first.x), y: first.y + at * (third.y - first.y) };
        const ours = mapped(corners).toRug(point);
        const scale = on(6, point.x, point.y);
        expect(ours.xMm).toBeCloseTo((1000 * on(0, point.x, point.y)) / scale, 3);
        expect(ours.yMm).toBeCloseTo((1000 * on(3, point.x, point.y)) / scale, 3);
      }),
    );
  });

  test('there and back is the same place', () => {
    fc.assert(
      fc.property(slant, place, (corners, point) => {
        const map = mapped(corners);
        const again = map.toRug(map.toPicture(point));
        expect(again.xMm).toBeCloseTo(point.xMm, 4);
        expect(again.yMm).toBeCloseTo(point.yMm, 4);
      }),
    );
  });

  test('a straight line on the rug stays straight on the picture', () => {
    fc.assert(
      fc.property(slant, place, place, (corners, from, to) => {
        const map = mapped(corners);
        const middle = { xMm: (from.xMm + to.xMm) / 2, yMm: (from.yMm + to.yMm) / 2 };
        const [a, m, b] = [map.toPicture(from), map.toPicture(middle), map.toPicture(to)];
        expect((m.x - a.x) * (b.y - a.y) - (m.y - a.y) * (b.x - a.x)).toBeCloseTo(0, 9);
      }),
    );
  });

  test('the diagonals cross in the middle of the rug, however it is seen', () => {
    fc.assert(
      fc.property(slant, (corners) => {
        const [a, b, c, d] = corners;
        const det = (c.x - a.x) * (d.y - b.y) - (c.y - a.y) * (d.x - b.x);
        const along = ((b.x - a.x) * (d.y - b.y) - (b.y - a.y) * (d.x - b.x)) / det;
        const centre = mapped(corners).toRug({ x: a.x + along * (c.x - a.x), y: a.y + along * (c.y - a.y) });
        expect(centre.xMm).toBeCloseTo(1000, 4);
        expect(centre.yMm).toBeCloseTo(1500, 4);
      }),
    );
  });
});

describe('the back of the rug', () => {
  const square: RugCorners = [
    { x: 0.2, y: 0.9 },
    { x: 0.8, y: 0.9 },
    { x: 0.8, y: 0.1 },
    { x: 0.2, y: 0.1 },
  ];

  test('a place near the left of the back lies near the right of the face', () => {
    const point = mapped(cornersAsSeen(square, 'back'), 'back').toRug({ x: 0.25, y: 0.85 });
    expect(point.xMm).toBeGreaterThan(1800);
    expect(acrossTheBack(point, frame.widthMm).xMm).toBeLessThan(200);
  });

  test('turning over twice gives the place again', () => {
    fc.assert(
      fc.property(place, (point) => {
        const again = acrossTheBack(acrossTheBack(point, 2000), 2000);
        expect(again.xMm).toBeCloseTo(point.xMm, 9);
        expect(again.yMm).toBe(point.yMm);
      }),
    );
  });

  test('corners named for the other side are refused', () => {
    const refusal = pictureMap(square, frame, 'back');
    expect(refusal).toMatchObject({
      ok: false,
      problem: { code: 'corners-mirrored', facts: { side: 'back' } },
    });
  });
});

describe('corners that cannot be a rug', () => {
  test('crossed corners are refused', () => {
    const crossed: RugCorners = [
      { x: 0.2, y: 0.9 },
      { x: 0.8, y: 0.1 },
      { x: 0.8, y: 0.9 },
      { x: 0.2, y: 0.1 },
    ];
    expect(pictureMap(crossed, frame, 'face')).toMatchObject({ problem: { code: 'corners-not-a-rug' } });
  });

  test('a rug that is a speck on the picture is refused', () => {
    const speck: RugCorners = [
      { x: 0.5, y: 0.55 },
      { x: 0.55, y: 0.55 },
      { x: 0.55, y: 0.5 },
      { x: 0.5, y: 0.5 },
    ];
    expect(pictureMap(speck, frame, 'face')).toMatchObject({ problem: { facts: { why: 'too small' } } });
  });

  test('the same corner tapped twice is refused', () => {
    const twice: RugCorners = [
      { x: 0.2, y: 0.9 },
      { x: 0.2, y: 0.9 },
      { x: 0.8, y: 0.1 },
      { x: 0.2, y: 0.1 },
    ];
    expect(pictureMap(twice, frame, 'face').ok).toBe(false);
  });
});

describe('a round rug', () => {
  test('its four farthest places give the corners around it, however it is seen', () => {
    fc.assert(
      fc.property(slant, (corners) => {
        const { toPicture } = mapped(corners);
        const around = cornersAround([
          toPicture({ xMm: 1000, yMm: 0 }),
          toPicture({ xMm: 2000, yMm: 1500 }),
          toPicture({ xMm: 1000, yMm: 3000 }),
          toPicture({ xMm: 0, yMm: 1500 }),
        ]);
        around.forEach((corner, index) => {
          expect(corner.x).toBeCloseTo(corners[index]?.x ?? Number.NaN, 6);
          expect(corner.y).toBeCloseTo(corners[index]?.y ?? Number.NaN, 6);
        });
      }),
    );
  });
});
