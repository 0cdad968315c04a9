import type { Axis } from './candidate.ts';
import type { Directions } from './direction.ts';
import type { Flattened } from './flatten.ts';

/** Strips laid along an axis over a level. */
export interface Strips {
  /** Unit step along a strip and from strip to strip [level px]. */
  readonly main: readonly [number, number];
  readonly cross: readonly [number, number];
  readonly centre: readonly [number, number];
  /** Samples along a strip, one per level pixel. */
  readonly length: number;
  /** Distance of each strip from the centre [level px]. */
  readonly sides: readonly number[];
  readonly width: number;
}

const mostStrips = 26;

/**
 * Lays strips along an axis over the largest parallelogram that fits a level.
 *
 * @param pitch - repeat along the axis [level px]
 * @param other - repeat of the other axis, which sets the width [level px]
 * @returns null where fewer than four repeats fit
 * @source none: geometry
 */
export function layStrips(
  flat: Flattened,
  directions: Directions,
  axis: Axis,
  pitch: number,
  other: number,
): Strips | null {
  const { wide, high } = flat.relief;
  const width = Math.max(2.5, Math.min(2.2 * pitch, 1.1 * other));
  const { columns, rows } = directions;
  const alongWeft = [Math.cos(rows), Math.sin(rows)] as const;
  const alongWarp = [-Math.sin(columns), Math.cos(columns)] as const;
  const [main, cross] = axis === 'weftwise' ? [alongWeft, alongWarp] : [alongWarp, alongWeft];
  const [alongSide, crossSide] = axis === 'weftwise' ? [wide, high] : [high, wide];
  const tilt = Math.abs(axis === 'weftwise' ? main[1] : main[0]);
  const lean = Math.abs(axis === 'weftwise' ? cross[0] : cross[1]);
  const halfLong = (alongSide / 2 - 1.5 - lean * crossSide * 0.5) / (1 - tilt * lean);
  const halfWide = crossSide / 2 - 1.5 - tilt * halfLong;
  const length = Math.floor(2 * halfLong);
  if (!(length >= 4 * pitch) || !(halfWide >= width / 2)) return null;
  const count = Math.max(1, Math.min(mostStrips, Math.floor((2 * halfWide) / width)));
  const sides = Array.from({ length: count }, (_, index) =>
    count === 1 ? 0 : -halfWide + width / 2 + (index * (2 * halfWide - width)) / (count - 1),
  );
  return { main, cross, centre: [(wide - 1) / 2, (high - 1) / 2], length, sides, width };
}

/** Mean of the relief across a strip: one line for each colour, so that opposite contrasts cannot cancel, one of all, one with colour left in. */
export function linesOf(flat: Flattened, strips: Strips, side: number): readonly Float64Array[] {
  const { wide, high, at: relief } = flat.relief;
  const lines = Array.from({ length: flat.colours + 2 }, () => new Float64Array(strips.length));
  const shadeLine = lines[flat.colours];
  const whole = lines[flat.colours + 1];
  const rays = Math.max(2, Math.min(5, Math.round(strips.width / 2)));
  const half = strips.length / 2;
  for (let ray = 0; ray < rays; ray += 1) {
    const off = side + ((ray + 0.5) / rays - 0.5) * strips.width;
    const startX = strips.centre[0] + off * strips.cross[0] - half * strips.main[0];
    const startY = strips.centre[1] + off * strips.cross[1] - half * strips.main[1];
    for (let index = 0; index < strips.length; index += 1) {
      const x = startX + index * strips.main[0];
      const y = startY + index * strips.main[1];
      const left = Math.floor(x);
      const top = Math.floor(y);
      if (left < 0 || top < 0 || left + 1 >= wide || top + 1 >= high) continue;
      const fx = x - left;
      const fy = y - top;
      const first = top * wide + left;
      const blend = (plane: Float32Array): number =>
        ((plane[first] ?? 0) * (1 - fx) + (plane[first + 1] ?? 0) * fx) * (1 - fy) +
        ((plane[first + wide] ?? 0) * (1 - fx) + (plane[first + wide + 1] ?? 0) * fx) * fy;
      const colour = flat.colour[Math.round(y) * wide + Math.round(x)] ?? 0;
      const line = lines[colour];
      if (whole !== undefined) whole[index] = (whole[index] ?? 0) + 1.5 * blend(relief);
      if (line !== undefined) line[index] = (line[index] ?? 0) + blend(relief);
      if (shadeLine !== undefined) shadeLine[index] = (shadeLine[index] ?? 0) + 0.6 * blend(flat.shade.at);
    }
  }
  return lines;
}
