import geometry from '../../../data/card/geometry.json' with { type: 'json' };
import type { Picture } from '../weave/index.ts';
import { type CornerName, codePlace } from './cardText.ts';
import { type Homography, project, solve, stretchAt } from './homography.ts';

/** The homography with what is known of its accuracy. */
export interface RefinedHomography {
  readonly homography: Homography;
  /** Covariance of its eight numbers. */
  readonly covariance: readonly (readonly number[])[];
  /** Root mean square distance of each code's edges from the fit [mm]. */
  readonly offMm: ReadonlyMap<CornerName, number>;
}

interface EdgePoint {
  readonly corner: CornerName;
  readonly plane: readonly [number, number];
  /** Direction across the edge in the plane, from dark to light. */
  readonly out: readonly [number, number];
}

/** Eight numbers of the homography, and how far all edges have spread. */
const unknowns = 9;

const module = geometry.code.side / geometry.code.modules;

/** Points on the outer edges of the three finder squares of a code: solid dark inside, light outside. */
function edgePoints(corner: CornerName): readonly EdgePoint[] {
  const [left, top] = codePlace(corner);
  const finder = 7 * module;
  const far = geometry.code.side - finder;
  return [
    [0, 0],
    [far, 0],
    [0, far],
  ].flatMap(([fx = 0, fy = 0]) =>
    [0.18, 0.34, 0.5, 0.66, 0.82].flatMap((share): EdgePoint[] => {
      const [x, y] = [left + fx, top + fy];
      const along = share * finder;
      return [
        { corner, plane: [x + along, y], out: [0, -1] },
        { corner, plane: [x + along, y + finder], out: [0, 1] },
        { corner, plane: [x, y + along], out: [-1, 0] },
        { corner, plane: [x + finder, y + along], out: [1, 0] },
      ];
    }),
  );
}

function lightAt({ width, height, channels, data }: Picture, x: number, y: number): number {
  const left = Math.floor(x);
  const top = Math.floor(y);
  if (left < 0 || top < 0 || left + 1 >= width || top + 1 >= height) return Number.NaN;
  const fx = x - left;
  const fy = y - top;
  const grey = (px: number, py: number): number => {
    const at = (py * width + px) * channels;
    return 0.25 * (data[at] ?? 0) + 0.5 * (data[at + 1] ?? 0) + 0.25 * (data[at + 2] ?? 0);
  };
  return (
    (grey(left, top) * (1 - fx) + grey(left + 1, top) * fx) * (1 - fy) +
    (grey(left, top + 1) * (1 - fx) + grey(left + 1, top + 1) * fx) * fy
  );
}

/**
 * How far outward of the expected place an edge lies [mm]; NaN where there is none.
 *
 * Told from the share of dark along a line across the edge, which noise and blur leave where it is; three
 * parallel lines are averaged.
 */
function edgeOffset(picture: Picture, h: Homography, { plane, out }: EdgePoint, reach: number): number {
  const samples = 21;
  const values = new Float64Array(samples);
  for (let index = 0; index < samples; index += 1) {
    const s = reach * ((2 * index) / (samples - 1) - 1);
    for (const side of [-0.35, 0, 0.35]) {
      const x = plane[0] + s * out[0] - side * out[1];
      const y = plane[1] + s * out[1] + side * out[0];
      values[index] = (values[index] ?? 0) + lightAt(picture, ...project(h, x, y)) / 3;
    }
  }
  const mean = (from: number, until: number): number =>
    values.subarray(from, until).reduce((sum, value) => sum + value, 0) / (until - from);
  const low = mean(0, 4);
  const high = mean(samples - 4, samples);
  if (!(high - low > 25)) return Number.NaN;
  return 2 * reach * ((high - mean(0, samples)) / (high - low) - 0.5);
}

/**
 * Draws a homography onto the edges of the codes: their corners come in whole pixels, edges in hundredths.
 *
 * @param start - from the codes' corners
 * @param corners - which codes were seen
 * @returns null where too few edges can be seen
 * @source none: Gauss–Newton on distances to edges
 */
export function refine(
  picture: Picture,
  start: Homography,
  corners: readonly CornerName[],
): RefinedHomography | null {
  const points = corners.flatMap(edgePoints);
  let h = [...start];
  // Ink that spreads, or light that blooms over it, moves every edge outward alike; it is found and taken off.
  let bloomMm = 0;
  let normal: number[][] = [];
  let variance = 0;
  let used: { readonly corner: CornerName; readonly off: number }[] = [];
  for (let round = 0; round < 6; round += 1) {
    const reach = module * (round < 2 ? 0.85 : 0.7);
    normal = Array.from({ length: unknowns }, () => new Array<number>(unknowns).fill(0));
    const right = new Array<number>(unknowns).fill(0);
    used = [];
    const scales = [1, 1, 100, 1, 1, 100, 0.01, 0.01];
    const seen = points.flatMap((point) => {
      const off = edgeOffset(picture, h, point, reach);
      return Number.isNaN(off) ? [] : [{ point, off: off - bloomMm }];
    });
    if (seen.length < 30) return null;
    const sorted = seen.map(({ off }) => Math.abs(off)).sort((a, b) => a - b);
    const tolerance = Math.max(0.02, 3 * (sorted[sorted.length >> 1] ?? 0));
    let squares = 0;
    for (const { point, off } of seen) {
      const { plane, out, corner } = point;
      used.push({ corner, off });
      const [xx, xy, yx, yy] = stretchAt(h, plane[0], plane[1]);
      // The edge's direction in the picture is fixed by its direction in the plane; its normal is across it.
      const [ex, ey] = [xx * -out[1] + xy * out[0], yx * -out[1] + yy * out[0]];
      const length = Math.hypot(ex, ey);
      let [nx, ny] = [ey / length, -ex / length];
      const [ox, oy] = [xx * out[0] + xy * out[1], yx * out[0] + yy * out[1]];
      if (nx * ox + ny * oy < 0) [nx, ny] = [-nx, -ny];
      const pxPerMm = nx * ox + ny * oy;
      const distance = off * pxPerMm;
      const weight = 1 / (1 + (off / tolerance) ** 2);
      const row = scales.map((scale, index) => {
        const moved = [...h];
        const step = 1e-6 * scale;
        moved[index] = (moved[index] ?? 0) + step;
        const [x1, y1] = project(moved, plane[0], plane[1]);
        const [x0, y0] = project(h, plane[0], plane[1]);
        return (nx * (x1 - x0) + ny * (y1 - y0)) / 1e-6;
      });
      row.push(pxPerMm);
      squares += weight * distance * distance;
      for (let i = 0; i < unknowns; i += 1) {
        right[i] = (right[i] ?? 0) + weight * (row[i] ?? 0) * distance;
        const line = normal[i];
        if (line !== undefined)
          for (let j = 0; j < unknowns; j += 1)
            line[j] = (line[j] ?? 0) + weight * (row[i] ?? 0) * (row[j] ?? 0);
      }
    }
    variance = squares / Math.max(1, seen.length - unknowns);
    const change = solve(normal, right);
    if (change === null) return null;
    h = h.map((value, index) => value + (change[index] ?? 0) * (scales[index] ?? 0));
    bloomMm += change[8] ?? 0;
    if (round === 5) {
      const inverse = Array.from(
        { length: 8 },
        (_, column) =>
          solve(
            normal,
            Array.from({ length: unknowns }, (__, at) => (at === column ? 1 : 0)),
          ) ?? [],
      );
      const covariance = scales.map((a, i) =>
        scales.map((b, j) => a * b * variance * (inverse[j]?.[i] ?? 0)),
      );
      const offMm = new Map(
        corners.map((corner) => {
          const mine = used.filter((one) => one.corner === corner);
          return [
            corner,
            mine.length === 0
              ? Number.NaN
              : Math.sqrt(mine.reduce((total, { off }) => total + off * off, 0) / mine.length),
          ] as const;
        }),
      );
      return { homography: h, covariance, offMm };
    }
  }
  return null;
}
