import { done, type Result, refused } from '../../units/index.ts';
import type { ConditionProblem } from './conditionProblem.ts';
import type { PictureMap, PicturePoint } from './pictureMap.ts';
import type { RugFrame, RugPoint } from './rugFrame.ts';

/** A figure with the interval it lies in about 19 times of 20. */
export interface Measured {
  readonly value: number;
  readonly least: number;
  readonly most: number;
}

/**
 * Half the interval of one pointed place on a picture, as a share of the picture: a fingertip on a tablet.
 * @source workshop-setting
 */
export const tapUncertainty = 0.004;

/** Half the interval of a place measured with a tape by hand [mm]. @source workshop-setting */
export const tapeUncertaintyMm = 5;

const at = (points: readonly RugPoint[], index: number): RugPoint =>
  points[(index + points.length) % points.length] ?? { xMm: 0, yMm: 0 };

const cross = (o: RugPoint, p: RugPoint, q: RugPoint): number =>
  (p.xMm - o.xMm) * (q.yMm - o.yMm) - (p.yMm - o.yMm) * (q.xMm - o.xMm);

const within = (value: number, tap: number, scale: number): Measured => {
  const half = 2 * Math.hypot(tap, value * scale);
  return { value, least: Math.max(0, value - half), most: value + half };
};

/**
 * Whether an outline crosses itself.
 *
 * @param points - corners in order; the last joins the first
 * @source none: geometry
 */
export function crossesItself(points: readonly RugPoint[]): boolean {
  const count = points.length;
  for (let i = 0; i < count; i++) {
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue;
      const [a, b, c, d] = [at(points, i), at(points, i + 1), at(points, j), at(points, j + 1)];
      if (cross(a, b, c) * cross(a, b, d) < 0 && cross(c, d, a) * cross(c, d, b) < 0) return true;
    }
  }
  return false;
}

/** Shoelace, unsigned. */
const area = (points: readonly RugPoint[]): number =>
  Math.abs(
    points.reduce((sum, p, index) => {
      const q = at(points, index + 1);
      return sum + p.xMm * q.yMm - q.xMm * p.yMm;
    }, 0),
  ) / 2;

/**
 * Area inside an outline, with its interval from how well each corner was pointed at, from a hand that
 * keeps outside or inside the edge all the way round, and from how well the rug was measured.
 *
 * @param points - corners in order [rug mm], at least 3
 * @param pointingMm - standard uncertainty of each corner [mm], one for each or one for all
 * @param frame - measured rug; null when the points come from a tape and need no rug
 * @returns area [cm²] with interval
 * @refuses too-few-points - fewer than three
 * @refuses outline-crosses-itself - its area would be wrong
 * @source jcgm-100, 5.1.2, on the shoelace formula
 * @accuracy linear in the pointing error; marks smaller than that error get an interval down to 0
 */
export function markAreaCm2(
  points: readonly RugPoint[],
  pointingMm: readonly number[] | number,
  frame: RugFrame | null,
): Result<Measured, ConditionProblem> {
  if (points.length < 3)
    return refused('too-few-points', { shape: 'polygon' as const, given: points.length, least: 3 });
  if (crossesItself(points)) return refused('outline-crosses-itself', { corners: points.length });
  let apart = 0;
  let together = 0;
  points.forEach((here, index) => {
    const [before, after] = [at(points, index - 1), at(points, index + 1)];
    const pointing = pointingAt(pointingMm, index);
    apart += ((Math.hypot(after.xMm - before.xMm, after.yMm - before.yMm) / 2) * pointing) ** 2;
    together += Math.hypot(after.xMm - here.xMm, after.yMm - here.yMm) * pointing;
  });
  const tap = Math.hypot(Math.sqrt(apart), together);
  const scale =
    frame === null
      ? 0
      : Math.hypot(
          shareOf(frame.widthUncertaintyMm, frame.widthMm),
          shareOf(frame.lengthUncertaintyMm, frame.lengthMm),
        );
  const mm2 = within(area(points), tap, scale);
  return done({ value: mm2.value / 100, least: mm2.least / 100, most: mm2.most / 100 });
}

/**
 * Length along a line, with its interval as for areas.
 *
 * @param points - in order [rug mm], at least 2
 * @param pointingMm - standard uncertainty of each point [mm], one for each or one for all
 * @param frame - measured rug; null when the points come from a tape
 * @returns length [cm] with interval
 * @refuses too-few-points - fewer than two
 * @source jcgm-100, 5.1.2
 */
export function markLengthCm(
  points: readonly RugPoint[],
  pointingMm: readonly number[] | number,
  frame: RugFrame | null,
): Result<Measured, ConditionProblem> {
  if (points.length < 2)
    return refused('too-few-points', { shape: 'line' as const, given: points.length, least: 2 });
  let length = 0;
  let variance = 0;
  for (let index = 0; index < points.length; index++) {
    const here = at(points, index);
    const towards = (other: RugPoint | null): readonly [number, number] => {
      if (other === null) return [0, 0];
      const far = Math.hypot(here.xMm - other.xMm, here.yMm - other.yMm);
      return far === 0 ? [1, 0] : [(here.xMm - other.xMm) / far, (here.yMm - other.yMm) / far];
    };
    const before = index === 0 ? null : at(points, index - 1);
    const after = index === points.length - 1 ? null : at(points, index + 1);
    if (after !== null) length += Math.hypot(after.xMm - here.xMm, after.yMm - here.yMm);
    const [bx, by] = towards(before);
    const [ax, ay] = towards(after);
    variance += ((bx + ax) ** 2 + (by + ay) ** 2) * pointingAt(pointingMm, index) ** 2;
  }
  const scale =
    frame === null
      ? 0
      : Math.max(
          shareOf(frame.widthUncertaintyMm, frame.widthMm),
          shareOf(frame.lengthUncertaintyMm, frame.lengthMm),
        );
  const mm = within(length, Math.sqrt(variance), scale);
  return done({ value: mm.value / 10, least: mm.least / 10, most: mm.most / 10 });
}

/** A frame's uncertainty is a half interval of two standard uncertainties; here one is wanted, as a share. */
const shareOf = (halfIntervalMm: number, ofMm: number): number => halfIntervalMm / 2 / ofMm;

const pointingAt = (pointingMm: readonly number[] | number, index: number): number =>
  typeof pointingMm === 'number'
    ? pointingMm
    : (pointingMm[index] ?? pointingMm.at(-1) ?? tapeUncertaintyMm / 2);

/**
 * How well places on a picture are known on the rug: a tap at the mark, which is finer the more the picture
 * was enlarged, and the taps at the corners.
 *
 * @param points - places on the picture
 * @param map - from the picture to the rug
 * @param seenShare - share of the picture's width that filled the screen while the mark was drawn [0 … 1]
 * @returns one standard uncertainty for each [mm]
 * @source jcgm-100, 5.1.2; the size of a tap is a workshop setting
 */
export const pointingOnRugMm = (
  points: readonly PicturePoint[],
  map: PictureMap,
  seenShare = 1,
): readonly number[] =>
  points.map((point) => Math.hypot(1, seenShare) * (tapUncertainty / 2) * map.mmPerPicture(point));

/**
 * Share of the woven body an area takes up.
 *
 * @param areaCm2 - at least 0
 * @param frame - measured rug
 * @returns fraction 0 … 1
 * @source none: geometry (a rectangle, or the ellipse in it)
 */
export function shareOfRug(areaCm2: number, frame: RugFrame): number {
  const whole = frame.widthMm * frame.lengthMm * (frame.outline === 'ellipse' ? Math.PI / 4 : 1);
  return Math.min(1, (areaCm2 * 100) / whole);
}
