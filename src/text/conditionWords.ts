import type { ConditionProblem, RugFrame, RugPoint } from '../core/condition/index.ts';
import type { WordsFor } from './words.ts';

const cm = (mm: number): string => `${Math.round(mm / 10)} cm`;

export const conditionProblemWords = {
  'corners-not-a-rug': ({ why }) =>
    why === 'crossed'
      ? {
          happened: 'The four corners do not go round the rug in order.',
          matters: 'Marks drawn on the picture would land in the wrong place on the rug.',
          now: 'Tap the corners again in the order shown, each on the woven body, not on the fringe.',
        }
      : {
          happened: 'The rug fills less than a hundredth of this picture.',
          matters: 'A fingertip would cover more than most marks, so no size could be trusted.',
          now: 'Take a picture in which the rug fills most of the frame.',
        },
  'corners-mirrored': ({ side }) => ({
    happened: `The corners run the other way round than on the ${side} of a rug.`,
    matters: 'Left and right would change places, and with them every mark.',
    now: `Check whether the picture shows the ${side}; then tap the corners again in the order shown.`,
  }),
  'outline-crosses-itself': () => ({
    happened: 'The outline crosses itself.',
    matters: 'The area inside such an outline means nothing.',
    now: 'Draw it again without crossing, or type the size by hand.',
  }),
  'too-few-points': ({ shape, given, least }) => ({
    happened: `A ${shape === 'line' ? 'line' : 'outline'} needs at least ${least} points; there ${
      given === 1 ? 'is 1' : `are ${given}`
    }.`,
    matters: 'Without them it has no size.',
    now: shape === 'line' ? 'Add the other end.' : 'Add corners until the outline closes around the mark.',
  }),
  'mark-off-the-rug': ({ xMm, yMm, widthMm, lengthMm }) => ({
    happened: `The point ${Math.round(xMm)} mm from the left and ${Math.round(yMm)} mm from the start lies off the rug.`,
    matters: 'A mark that is not on the rug will be looked for in vain.',
    now: `The rug measures ${Math.round(widthMm)} × ${Math.round(lengthMm)} mm: give a place on it or on its fringe, or measure the rug again.`,
  }),
} satisfies WordsFor<ConditionProblem>;

/**
 * Where on the rug a place is, as a washer would say it.
 *
 * @param points - rug millimetres, the middle of them counts; at least one
 * @param frame - of the measured rug
 * @param side - which side the mark is on
 * @returns for instance `face, left side, 40 cm from the start end`
 * @source none: words of this project
 */
export function placeWords(
  points: readonly RugPoint[],
  frame: Pick<RugFrame, 'widthMm' | 'lengthMm'>,
  side: 'face' | 'back' | 'both',
): string {
  const middle = (values: readonly number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  const x = middle(points.map(({ xMm }) => xMm));
  const y = middle(points.map(({ yMm }) => yMm));
  const across = x / frame.widthMm;
  const column =
    across < 0.15
      ? `left side, ${cm(x)} in`
      : across > 0.85
        ? `right side, ${cm(frame.widthMm - x)} in`
        : across < 0.4
          ? 'left of the middle'
          : across > 0.6
            ? 'right of the middle'
            : 'middle';
  const row =
    y < 0
      ? 'in the fringe of the start end'
      : y > frame.lengthMm
        ? 'in the fringe of the far end'
        : y <= frame.lengthMm / 2
          ? `${cm(y)} from the start end`
          : `${cm(frame.lengthMm - y)} from the far end`;
  return `${side === 'both' ? 'through both sides' : side}, ${column}, ${row}`;
}

/** What an activity means for the rug. */
export const activityWords = {
  stable: 'Stable: it does not grow',
  slow: 'Slow: it grows with use',
  active: 'Active: it grows now',
  unknown: 'Not known; counts as active',
} as const;

/** How sure somebody is of a cause. */
export const confidenceWords = {
  certain: 'certain',
  probable: 'probable',
  possible: 'possible',
} as const;
