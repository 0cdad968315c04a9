import { done, type Result, refused } from '../../units/index.ts';
import type { ConditionProblem } from './conditionProblem.ts';

/** A point of the rug: face up, pile lying toward you, origin lower left, whichever side it is seen from. */
export interface RugPoint {
  readonly xMm: number;
  readonly yMm: number;
}

/** The rug as a frame to place marks in. */
export interface RugFrame {
  /** Mean of the measured widths and lengths, fringe apart. */
  readonly widthMm: number;
  readonly lengthMm: number;
  /** Half the interval in which the true width and length of any part lie. */
  readonly widthUncertaintyMm: number;
  readonly lengthUncertaintyMm: number;
  readonly outline: 'rectangle' | 'ellipse';
  readonly fringeStartMm: number;
  readonly fringeEndMm: number;
}

export interface RugSize {
  readonly shape: 'rectangle' | 'runner' | 'square' | 'round' | 'oval' | 'irregular';
  readonly lengthsMm: readonly number[];
  readonly widthsMm: readonly number[];
  readonly fringeStartMm?: number | undefined;
  readonly fringeEndMm?: number | undefined;
  readonly uncertaintyMm: number;
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
const halfSpread = (values: readonly number[]): number => (Math.max(...values) - Math.min(...values)) / 2;

/**
 * The frame of a measured rug: mean sizes, and how far any part may differ from them: the spread of the
 * measured sizes, and two ends of a tape.
 *
 * @param size - lengths and widths [mm], at least one each; uncertainty of one end [mm]
 * @returns frame in millimetres
 * @source jcgm-100, 5.1.2 (two independent ends add in quadrature); the spread is taken whole
 */
export function rugFrame(size: RugSize): RugFrame {
  const tape = Math.SQRT2 * size.uncertaintyMm;
  return {
    widthMm: mean(size.widthsMm),
    lengthMm: mean(size.lengthsMm),
    widthUncertaintyMm: halfSpread(size.widthsMm) + tape,
    lengthUncertaintyMm: halfSpread(size.lengthsMm) + tape,
    outline: size.shape === 'round' || size.shape === 'oval' ? 'ellipse' : 'rectangle',
    fringeStartMm: size.fringeStartMm ?? 0,
    fringeEndMm: size.fringeEndMm ?? 0,
  };
}

/**
 * The same point counted from the left of the back: x on the back is the width less x on the face.
 * Done twice it gives the point again.
 *
 * @param point - face or back millimetres
 * @param widthMm - of the rug, more than 0
 * @source none: rule of this project
 */
export const acrossTheBack = ({ xMm, yMm }: RugPoint, widthMm: number): RugPoint => ({
  xMm: widthMm - xMm,
  yMm,
});

export type Standing = 'body' | 'fringe' | 'edge of doubt' | 'off the rug';

/**
 * Where a point stands: in the woven body, in the fringe, so near outside that measuring may be at fault,
 * or off the rug.
 *
 * @param point - rug millimetres
 * @param frame - of the measured rug
 * @source none: geometry; the doubt is the frame's own uncertainty
 */
export function standsOn({ xMm, yMm }: RugPoint, frame: RugFrame): Standing {
  const { widthMm, lengthMm } = frame;
  const beyond = (across: number, along: number): boolean => {
    const width = widthMm + 2 * across;
    const length = lengthMm + 2 * along;
    const x = (xMm - widthMm / 2) / (width / 2);
    const y = (yMm - lengthMm / 2) / (length / 2);
    return frame.outline === 'ellipse'
      ? x * x + y * y > 1 + 1e-9
      : Math.max(Math.abs(x), Math.abs(y)) > 1 + 1e-9;
  };
  if (!beyond(0, 0)) return 'body';
  const beside = xMm >= 0 && xMm <= widthMm;
  if (beside && yMm < 0 && yMm >= -frame.fringeStartMm) return 'fringe';
  if (beside && yMm > lengthMm && yMm <= lengthMm + frame.fringeEndMm) return 'fringe';
  return beyond(frame.widthUncertaintyMm, frame.lengthUncertaintyMm) ? 'off the rug' : 'edge of doubt';
}

/**
 * The points of a mark, if each lies on the rug, its fringe, or within the doubt of its measuring.
 *
 * @param points - rug millimetres
 * @param frame - of the measured rug
 * @refuses mark-off-the-rug - a point lies beyond that; the first such point is named
 * @source none: rule of this project
 */
export function placedOnRug(
  points: readonly RugPoint[],
  frame: RugFrame,
): Result<readonly RugPoint[], ConditionProblem> {
  const astray = points.find((point) => standsOn(point, frame) === 'off the rug');
  if (astray === undefined) return done(points);
  const { widthMm, lengthMm } = frame;
  return refused('mark-off-the-rug', { xMm: astray.xMm, yMm: astray.yMm, widthMm, lengthMm });
}
