import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type RugCorners, rugFrame } from '../../core/condition/index.ts';
import { type PadPicture, pointsOn, type Surface, surfacesOf } from './surface.ts';

const frame = rugFrame({
  shape: 'rectangle',
  lengthsMm: [3000, 3000, 3000],
  widthsMm: [2000, 2000, 2000],
  fringeStartMm: 50,
  uncertaintyMm: 5,
});

const corners: RugCorners = [
  { x: 0.1, y: 0.9 },
  { x: 0.9, y: 0.9 },
  { x: 0.9, y: 0.1 },
  { x: 0.1, y: 0.1 },
];
const picture = (shows: PadPicture['shows'], given: RugCorners | null): PadPicture => ({
  photo: shows,
  widthPx: 1000,
  heightPx: 1500,
  shows,
  corners: given,
});

const named = (surfaces: readonly Surface[], key: string): Surface => {
  const found = surfaces.find((surface) => surface.key === key);
  if (found === undefined) throw new Error(`no ${key}`);
  return found;
};

const place = fc.record({
  xMm: fc.double({ min: 0, max: 2000, noNaN: true }),
  yMm: fc.double({ min: 0, max: 3000, noNaN: true }),
});

describe('what marks are drawn on', () => {
  test('without size and pictures there is nothing to draw on', () => {
    expect(surfacesOf([], null)).toEqual([]);
  });

  test('a side without a photograph is drawn as an outline', () => {
    const keys = surfacesOf([picture('face', null)], frame).map(({ key }) => key);
    expect(keys).toEqual(['face', 'outline back']);
  });

  test('a place on either outline comes back as the same place of the rug', () => {
    const surfaces = surfacesOf([], frame);
    fc.assert(
      fc.property(place, fc.constantFrom('outline face', 'outline back'), (point, key) => {
        const { toRug, toSurface } = named(surfaces, key);
        const again = toRug?.(toSurface?.(point) ?? { x: Number.NaN, y: Number.NaN });
        expect(again?.xMm).toBeCloseTo(point.xMm, 6);
        expect(again?.yMm).toBeCloseTo(point.yMm, 6);
      }),
    );
  });

  test('a mark near the left of the face shows near the right of the back', () => {
    const back = named(surfacesOf([], frame), 'outline back');
    const [point] = pointsOn({ side: 'both', pointsMm: [{ xMm: 100, yMm: 1500 }] }, back) ?? [];
    expect(point?.x).toBeGreaterThan(0.8);
  });

  test('a mark on the face does not show on the back, one through both does', () => {
    const back = named(surfacesOf([], frame), 'outline back');
    const at = [{ xMm: 100, yMm: 1500 }];
    expect(pointsOn({ side: 'face', pointsMm: at }, back)).toBeNull();
    expect(pointsOn({ side: 'both', pointsMm: at }, back)).not.toBeNull();
  });

  test('corners of the wrong side are reported and give no millimetres', () => {
    const face = named(surfacesOf([picture('back', corners)], frame), 'back');
    expect(face.problem?.code).toBe('corners-mirrored');
    expect(face.toRug).toBeNull();
  });

  test('a mark drawn before the corners were known still shows where it was drawn', () => {
    const face = named(surfacesOf([picture('face', null)], frame), 'face');
    const drawn = { photo: 'face', points: [{ x: 0.3, y: 0.4 }] };
    expect(pointsOn({ side: 'face', pointsMm: [], drawn }, face)).toEqual(drawn.points);
  });
});
