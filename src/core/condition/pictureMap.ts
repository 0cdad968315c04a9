import { done, type Result, refused } from '../../units/index.ts';
import type { ConditionProblem } from './conditionProblem.ts';
import type { RugFrame, RugPoint } from './rugFrame.ts';

/** A point of a picture, 0 … 1 of its width and height, from its upper left. */
export interface PicturePoint {
  readonly x: number;
  readonly y: number;
}

/** Start-left, start-right, end-right, end-left as named on the face; on a picture of the back they stand mirrored. */
export type RugCorners = readonly [PicturePoint, PicturePoint, PicturePoint, PicturePoint];

/** Nine numbers, row by row, that carry homogeneous points. */
type Homography = readonly [number, number, number, number, number, number, number, number, number];

/** Carries points between one picture and the rug it shows. */
export interface PictureMap {
  readonly frame: RugFrame;
  readonly toRug: (point: PicturePoint) => RugPoint;
  readonly toPicture: (point: RugPoint) => PicturePoint;
  /** How far a point of the rug moves when the picture's point moves by the whole picture [mm]. */
  readonly mmPerPicture: (point: PicturePoint) => number;
}

const carry = (h: Homography, x: number, y: number): readonly [number, number] => {
  const w = h[6] * x + h[7] * y + h[8];
  return [(h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w];
};

const inverse = ([a, b, c, d, e, f, g, h, i]: Homography): Homography => [
  e * i - f * h,
  c * h - b * i,
  b * f - c * e,
  f * g - d * i,
  a * i - c * g,
  c * d - a * f,
  d * h - e * g,
  b * g - a * h,
  a * e - b * d,
];

/** Unit square to quadrilateral, Heckbert's closed form. */
const squareToCorners = ([p0, p1, p2, p3]: RugCorners): Homography => {
  const sx = p0.x - p1.x + p2.x - p3.x;
  const sy = p0.y - p1.y + p2.y - p3.y;
  const dx1 = p1.x - p2.x;
  const dy1 = p1.y - p2.y;
  const dx2 = p3.x - p2.x;
  const dy2 = p3.y - p2.y;
  const det = dx1 * dy2 - dx2 * dy1;
  const g = (sx * dy2 - dx2 * sy) / det;
  const h = (dx1 * sy - sx * dy1) / det;
  return [
    p1.x - p0.x + g * p1.x,
    p3.x - p0.x + h * p3.x,
    p0.x,
    p1.y - p0.y + g * p1.y,
    p3.y - p0.y + h * p3.y,
    p0.y,
    g,
    h,
    1,
  ];
};

/** Least share of the picture the rug must fill; below it a finger's tap is larger than the marks. */
const leastShare = 0.01;

/** Turn at each corner: all of one sign when the outline is convex. */
const turns = (corners: RugCorners): readonly number[] => {
  const [a, b, c, d] = corners;
  const turn = (p: PicturePoint, q: PicturePoint, r: PicturePoint) =>
    (q.x - p.x) * (r.y - q.y) - (q.y - p.y) * (r.x - q.x);
  return [turn(a, b, c), turn(b, c, d), turn(c, d, a), turn(d, a, b)];
};

/**
 * The map between a picture and the rug in it, from the four corners a person tapped. The rug is taken
 * as flat and, within the frame's uncertainty, as a rectangle; the lens as without distortion.
 *
 * @param corners - start-left, start-right, end-right, end-left of the woven body [0 … 1 of the picture]
 * @param frame - measured size of the rug
 * @param side - which side the picture shows
 * @returns maps in both directions; rug points are face millimetres on either side
 * @refuses corners-not-a-rug - the outline crosses itself, is not convex, or is smaller than a hundredth of the picture
 * @refuses corners-mirrored - the corners run the wrong way round for that side
 * @source heckbert-1989, section 2.2.3 (square to quadrilateral)
 */
export function pictureMap(
  corners: RugCorners,
  frame: RugFrame,
  side: 'face' | 'back',
): Result<PictureMap, ConditionProblem> {
  const [a, b, c, d] = corners;
  const bent = turns(corners);
  const convex = bent.every((turn) => turn > 1e-9) || bent.every((turn) => turn < -1e-9);
  if (!convex) return refused('corners-not-a-rug', { why: 'crossed' as const });
  const area = Math.abs((c.x - a.x) * (d.y - b.y) - (d.x - b.x) * (c.y - a.y)) / 2;
  if (area < leastShare) return refused('corners-not-a-rug', { why: 'too small' as const });
  // In a picture y grows downwards, so the face's corners turn left (negative) and the back's right.
  const seen = (bent[0] ?? 0) < 0 ? 'face' : 'back';
  if (seen !== side) return refused('corners-mirrored', { side });

  const { widthMm, lengthMm } = frame;
  const forth = squareToCorners(corners);
  const back = inverse(forth);
  const toRug = ({ x, y }: PicturePoint): RugPoint => {
    const [u, v] = carry(back, x, y);
    return { xMm: u * widthMm, yMm: v * lengthMm };
  };
  const toPicture = ({ xMm, yMm }: RugPoint): PicturePoint => {
    const [x, y] = carry(forth, xMm / widthMm, yMm / lengthMm);
    return { x, y };
  };
  const mmPerPicture = ({ x, y }: PicturePoint): number => {
    const step = 1e-5;
    const here = toRug({ x, y });
    const across = toRug({ x: x + step, y });
    const down = toRug({ x, y: y + step });
    return Math.max(
      Math.hypot(across.xMm - here.xMm, across.yMm - here.yMm) / step,
      Math.hypot(down.xMm - here.xMm, down.yMm - here.yMm) / step,
    );
  };
  return done({ frame, toRug, toPicture, mmPerPicture });
}

/**
 * Corners named as on the face from corners tapped as seen: lower left, lower right, upper right, upper
 * left with the start end nearest the person who looks at that side. On the back left and right change places.
 *
 * @param seen - four taps in that order
 * @param side - which side the picture shows
 * @source none: rule of this project
 */
export const cornersAsSeen = ([ll, lr, ur, ul]: RugCorners, side: 'face' | 'back'): RugCorners =>
  side === 'face' ? [ll, lr, ur, ul] : [lr, ll, ul, ur];

/**
 * Corners of the square or rectangle around a round rug, from the four places where it reaches farthest:
 * the start, the right, the far end and the left, as seen. They may lie outside the picture.
 *
 * @param reaches - four taps in that order; on the back left and right are as seen there
 * @returns lower left, lower right, upper right, upper left as seen
 * @source heckbert-1989, section 2.2.3, on the square that stands on its corner
 */
export function cornersAround(reaches: RugCorners): RugCorners {
  const forth = squareToCorners(reaches);
  // In the square of the four reaches the corners of the rug lie half a side outside.
  const at = (s: number, t: number): PicturePoint => {
    const [x, y] = carry(forth, s, t);
    return { x, y };
  };
  return [at(-0.5, 0.5), at(0.5, -0.5), at(1.5, 0.5), at(0.5, 1.5)];
}
