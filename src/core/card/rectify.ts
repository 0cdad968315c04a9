import { solve } from './homography.ts';

type Point = readonly [number, number];

/** Points of one flat piece: where they are on it [mm] and in the picture [px]. */
export interface SeenPiece {
  readonly onPiece: readonly Point[];
  readonly inPicture: readonly Point[];
}

/** A picture's plane made metric, from pieces that lie anywhere in it. */
export interface Rectified {
  /** Picture [px from the middle of the pieces, in hundreds] to plane [mm]: a, b, c, g, h of ((a u + b v)/w, c v/w), w = 1 + g u + h v. */
  readonly numbers: readonly number[];
  readonly middle: Point;
  /** Root mean square of what is left at each piece [mm]. */
  readonly offMm: readonly number[];
  /** Direction of each piece's x in the plane [radians]. */
  readonly turns: readonly number[];
  /** Standard error of the scale at the middle [share]. */
  readonly scaleError: number;
}

export const rectifiedUnitPx = 100;

const toPlane = ([a = 0, b = 0, c = 0, g = 0, h = 0]: readonly number[], u: number, v: number): Point => {
  const w = 1 + g * u + h * v;
  return [(a * u + b * v) / w, (c * v) / w];
};

const mean = (points: readonly Point[]): Point => {
  const sum = points.reduce(([x, y], [px, py]) => [x + px, y + py] as const, [0, 0] as Point);
  return [sum[0] / points.length, sum[1] / points.length];
};

/** What is left between a piece as it is and as the plane has it, turned and moved but never stretched. */
function leftOver(
  piece: SeenPiece,
  inPlane: readonly Point[],
): { readonly off: readonly number[]; readonly turn: number } {
  const [cx, cy] = mean(piece.onPiece);
  const [px, py] = mean(inPlane);
  let [dot, cross] = [0, 0];
  piece.onPiece.forEach(([x, y], index) => {
    const [qx = 0, qy = 0] = inPlane[index] ?? [];
    dot += (x - cx) * (qx - px) + (y - cy) * (qy - py);
    cross += (x - cx) * (qy - py) - (y - cy) * (qx - px);
  });
  const turn = Math.atan2(cross, dot);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const off = piece.onPiece.flatMap(([x, y], index) => {
    const [qx = 0, qy = 0] = inPlane[index] ?? [];
    const [dx, dy] = [x - cx, y - cy];
    return [qx - px - (cos * dx - sin * dy), qy - py - (sin * dx + cos * dy)];
  });
  return { off, turn };
}

/**
 * Finds the perspective under which pieces of known size, lying anyhow in one plane, have their true size.
 *
 * @param pieces - two or more
 * @param mmPerPx - a first guess
 * @returns null where the pieces fix no plane
 * @source none: Levenberg–Marquardt on what a rigid fit leaves at each piece
 */
export function rectify(pieces: readonly SeenPiece[], mmPerPx: number): Rectified | null {
  const middle = mean(pieces.map(({ inPicture }) => mean(inPicture)));
  const seen = pieces.map((piece) => ({
    piece,
    at: piece.inPicture.map(
      ([x, y]) => [(x - middle[0]) / rectifiedUnitPx, (y - middle[1]) / rectifiedUnitPx] as const,
    ),
  }));
  const residuals = (numbers: readonly number[]): readonly number[] =>
    seen.flatMap(
      ({ piece, at }) =>
        leftOver(
          piece,
          at.map(([u, v]) => toPlane(numbers, u, v)),
        ).off,
    );
  const squares = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value * value, 0);
  const first = mmPerPx * rectifiedUnitPx;
  // Perspective numbers are as small as one over the distance in hundreds of pixels.
  const steps = [first * 1e-6, first * 1e-6, first * 1e-6, 1e-8, 1e-8];
  let numbers: readonly number[] = [first, 0, first, 0, 0];
  let left = residuals(numbers);
  let damping = 1e-3;
  let normal: number[][] = [];
  for (let round = 0; round < 80; round += 1) {
    const slopes = steps.map((step, index) => {
      const moved = residuals(numbers.map((value, at) => (at === index ? value + step : value)));
      return moved.map((value, at) => (value - (left[at] ?? 0)) / step);
    });
    normal = slopes.map((one) =>
      slopes.map((other) => one.reduce((sum, value, at) => sum + value * (other[at] ?? 0), 0)),
    );
    const right = slopes.map((one) => -one.reduce((sum, value, at) => sum + value * (left[at] ?? 0), 0));
    const change = solve(
      normal.map((row, at) => row.map((value, column) => (column === at ? value * (1 + damping) : value))),
      right,
    );
    if (change === null) return null;
    const next = numbers.map((value, at) => value + (change[at] ?? 0));
    const nextLeft = residuals(next);
    if (!(squares(nextLeft) < squares(left))) {
      damping *= 10;
      if (damping > 1e9) break;
      continue;
    }
    const gained = 1 - squares(nextLeft) / squares(left);
    [numbers, left, damping] = [next, nextLeft, damping / 10];
    if (gained < 1e-9) break;
  }
  const fits = seen.map(({ piece, at }) =>
    leftOver(
      piece,
      at.map(([u, v]) => toPlane(numbers, u, v)),
    ),
  );
  const free = Math.max(1, left.length - 5 - 3 * pieces.length);
  const variance = squares(left) / free;
  // ln of the scale at the middle is half of ln a + ln c.
  const slope = [0.5 / (numbers[0] ?? 1), 0, 0.5 / (numbers[2] ?? 1), 0, 0];
  const spread = solve(normal, slope);
  if (spread === null) return null;
  return {
    numbers,
    middle,
    offMm: fits.map(({ off }) => Math.sqrt((2 * squares(off)) / off.length)),
    turns: fits.map(({ turn }) => turn),
    scaleError: Math.sqrt(
      Math.max(0, variance * slope.reduce((sum, value, at) => sum + value * (spread[at] ?? 0), 0)),
    ),
  };
}
