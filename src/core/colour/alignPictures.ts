import limits from '../../../data/colour/compare.json' with { type: 'json' };
import { type Homography, homographyOf, type PointPair, project } from '../card/index.ts';
import { type LinearPicture, seenThrough } from './linearPicture.ts';
import { likenessOf, phaseShift } from './phaseCorrelation.ts';

/** How two pictures lie on each other. */
export interface Alignment {
  /** Pixels of the first picture to pixels of the second. */
  readonly homography: Homography;
  /** How alike their patterns are in the places that have one: median correlation, −1 … 1; null where none has. */
  readonly likeness: number | null;
}

type Inside = (x: number, y: number) => boolean;

/** Pattern of a picture: lightness less its surroundings; NaN where nothing was photographed. */
function patternOf({ wide, high, rgb }: LinearPicture, reach: number): Float32Array {
  const light = new Float32Array(wide * high);
  const known = new Float32Array(wide * high);
  for (let at = 0; at < light.length; at += 1) {
    const value =
      0.2126 * (rgb[3 * at] ?? 0) + 0.7152 * (rgb[3 * at + 1] ?? 0) + 0.0722 * (rgb[3 * at + 2] ?? 0);
    known[at] = Number.isNaN(value) ? 0 : 1;
    light[at] = Number.isNaN(value) ? 0 : Math.cbrt(value);
  }
  const sums = (plane: Float32Array): Float64Array => {
    const total = new Float64Array((wide + 1) * (high + 1));
    for (let y = 0; y < high; y += 1)
      for (let x = 0; x < wide; x += 1)
        total[(y + 1) * (wide + 1) + x + 1] =
          (plane[y * wide + x] ?? 0) +
          (total[y * (wide + 1) + x + 1] ?? 0) +
          (total[(y + 1) * (wide + 1) + x] ?? 0) -
          (total[y * (wide + 1) + x] ?? 0);
    return total;
  };
  const [lights, counts] = [sums(light), sums(known)];
  const box = (total: Float64Array, x0: number, y0: number, x1: number, y1: number): number =>
    (total[y1 * (wide + 1) + x1] ?? 0) -
    (total[y0 * (wide + 1) + x1] ?? 0) -
    (total[y1 * (wide + 1) + x0] ?? 0) +
    (total[y0 * (wide + 1) + x0] ?? 0);
  const mean = (x: number, y: number, far: number): number => {
    const [x0, y0] = [Math.max(0, x - far), Math.max(0, y - far)];
    const [x1, y1] = [Math.min(wide, x + far + 1), Math.min(high, y + far + 1)];
    return box(lights, x0, y0, x1, y1) / Math.max(1, box(counts, x0, y0, x1, y1));
  };
  // A narrow mean less a wide one: neither pile nor the fall of the light.
  return light.map((_, at) => {
    const [x, y] = [at % wide, Math.floor(at / wide)];
    return known[at] === 0 ? 0 : mean(x, y, 1) - mean(x, y, reach);
  });
}

const cut = (plane: Float32Array, wide: number, left: number, top: number, side: number): Float32Array => {
  const out = new Float32Array(side * side);
  for (let row = 0; row < side; row += 1)
    out.set(plane.subarray((top + row) * wide + left, (top + row) * wide + left + side), row * side);
  return out;
};

/** Share of a square in which a picture shows something. */
const knownIn = ({ wide, rgb }: LinearPicture, left: number, top: number, side: number): number => {
  let [known, asked] = [0, 0];
  for (let row = top; row < top + side; row += 4)
    for (let column = left; column < left + side; column += 4) {
      asked += 1;
      if (!Number.isNaN(rgb[3 * (row * wide + column)] ?? Number.NaN)) known += 1;
    }
  return known / asked;
};

const spreadOf = (values: Float32Array): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

/** A homography put between two grids that are smaller by whole steps; pixel middles lie at whole numbers. */
export const betweenGrids = (h: Homography, before: number, after: number): Homography => {
  const corners = [
    [0, 0],
    [100, 0],
    [100, 100],
    [0, 100],
  ] as const;
  const small = (px: number, by: number): number => (px + 0.5) / by - 0.5;
  const large = (px: number, by: number): number => (px + 0.5) * by - 0.5;
  const pairs = corners.map(([x, y]): PointPair => {
    const [px, py] = project(h, large(x, before), large(y, before));
    return { plane: [x, y], picture: [small(px, after), small(py, after)] };
  });
  return homographyOf(pairs) ?? h;
};

interface Sizes {
  readonly picture: LinearPicture;
  /** Pixels of the whole picture to one of this. */
  readonly by: number;
}

const patternReach = Math.round(limits.tile / 6);

/** Where squares of the first picture lie in the second, as far as their patterns tell. */
function matches(before: Sizes, one: Float32Array, after: Sizes, h: Homography, inside: Inside) {
  const side = limits.tile;
  const { wide, high } = before.picture;
  const warped = seenThrough(after.picture, betweenGrids(h, before.by, after.by), wide, high);
  const other = patternOf(warped, patternReach);
  const found: { readonly pair: PointPair; readonly likeness: number }[] = [];
  let seen = 0;
  for (let top = 0; top + side <= high; top += side / 2)
    for (let left = 0; left + side <= wide; left += side / 2) {
      const [x, y] = [left + side / 2, top + side / 2];
      const [fullX, fullY] = [(x + 0.5) * before.by - 0.5, (y + 0.5) * before.by - 0.5];
      if (!inside(fullX, fullY)) continue;
      const known = Math.min(knownIn(before.picture, left, top, side), knownIn(warped, left, top, side));
      if (known < limits.tileKnown) continue;
      const [p, q] = [cut(one, wide, left, top, side), cut(other, wide, left, top, side)];
      if (spreadOf(p) < limits.leastTexture) continue;
      seen += 1;
      const { dx, dy } = phaseShift(p, q, side);
      if (Math.hypot(dx, dy) > limits.mostShiftShare * side) {
        found.push({ pair: { plane: [0, 0], picture: [0, 0] }, likeness: 0 });
        continue;
      }
      const [sx, sy] = [Math.round(dx), Math.round(dy)];
      const moved = (plane: Float32Array, signX: number, signY: number): Float32Array => {
        const [w, t] = [side - Math.abs(sx), side - Math.abs(sy)];
        const out = new Float32Array(w * t);
        for (let row = 0; row < t; row += 1)
          for (let column = 0; column < w; column += 1)
            out[row * w + column] =
              plane[(row + Math.max(0, signY * sy)) * side + column + Math.max(0, signX * sx)] ?? 0;
        return out;
      };
      const likeness = likenessOf(moved(p, -1, -1), moved(q, 1, 1));
      const to = (px: number): number => (px + 0.5) * before.by - 0.5;
      found.push({ pair: { plane: [to(x), to(y)], picture: [to(x + dx), to(y + dy)] }, likeness });
    }
  return { found, seen };
}

const middle = (values: readonly number[]): number =>
  values.toSorted((p, q) => p - q)[values.length >> 1] ?? Number.NaN;

/** Draws the homography onto the matches, those that lie far off the others left out. */
function redrawn(h: Homography, pairs: readonly PointPair[]): Homography {
  const inAfter = pairs.map(({ plane, picture }): PointPair => ({ plane, picture: project(h, ...picture) }));
  const off = (fit: Homography, { plane, picture: [x, y] }: PointPair): number => {
    const [px, py] = project(fit, ...plane);
    return Math.hypot(px - x, py - y);
  };
  const first = homographyOf(inAfter);
  if (first === null) return h;
  const bound = Math.max(1, 3 * middle(inAfter.map((pair) => off(first, pair))));
  return homographyOf(inAfter.filter((pair) => off(first, pair) <= bound)) ?? first;
}

/**
 * Draws a first guess of how two pictures of one rug lie on each other onto their pattern.
 *
 * @param before - the first picture, made smaller; NaN where it does not show the rug
 * @param after - the second
 * @param start - pixels of the whole first picture to pixels of the whole second, from taps or from the card
 * @param inside - which pixels of the whole first picture show the rug
 * @returns the better homography with the likeness of the patterns under it
 * @source none: squares matched by phase correlation, a homography by least squares through them, three rounds
 */
export function alignPictures(before: Sizes, after: Sizes, start: Homography, inside: Inside): Alignment {
  let homography = start;
  const pattern = patternOf(before.picture, patternReach);
  for (let round = 0; round < limits.rounds; round += 1) {
    const { found } = matches(before, pattern, after, homography, inside);
    const good = found.filter(({ likeness }) => likeness >= limits.tileLikeness);
    if (good.length < limits.leastTiles) break;
    homography = redrawn(
      homography,
      good.map(({ pair }) => pair),
    );
  }
  const { found, seen } = matches(before, pattern, after, homography, inside);
  return {
    homography,
    likeness: seen === 0 ? null : middle(found.map(({ likeness }) => likeness)),
  };
}
