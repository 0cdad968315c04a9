import rule from '../../../data/weave/places.json' with { type: 'json' };
import { done, type Problem, type Result, refused } from '../../units/index.ts';

/** Knots in 7 cm along both axes, counted at one place of a rug. */
export interface PlaceCount {
  readonly weftwiseKnotsPer7cm: number;
  readonly warpwiseKnotsPer7cm: number;
}

/** What is odd about a place: it differs more than is ordinary, or by a whole factor, so that its count is to be looked at. */
export interface OddPlace {
  /** Which of the given places, from 0. */
  readonly place: number;
  readonly axis: 'weftwise' | 'warpwise';
  /** Its count over the median. */
  readonly ratio: number;
  readonly kind: 'differs' | 'factor';
}

export interface RugCount {
  readonly weftwise: { readonly median: number; readonly least: number; readonly most: number };
  readonly warpwise: { readonly median: number; readonly least: number; readonly most: number };
  readonly perDm2: number;
  readonly places: number;
  readonly odd: readonly OddPlace[];
}

export type PlacesProblem = Problem<
  'places-not-enough',
  { readonly given: number; readonly least: number; readonly most: number }
>;

const middleOf = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? Number.NaN) + upper) / 2;
};

const factors = [1 / 3, 1 / 2, 2, 3];

/**
 * One result from counts at several places: medians, how far they spread, and which place is odd.
 *
 * @param places - 3 to 9 counts [knots in 7 cm]
 * @returns medians with least and most; density from the medians [knots/dm²]
 * @refuses places-not-enough - fewer than three places, or more than nine
 * @source common-practice, data/weave/places.json
 */
export function severalPlaces(places: readonly PlaceCount[]): Result<RugCount, PlacesProblem> {
  const { least, most } = rule;
  if (places.length < least || places.length > most)
    return refused('places-not-enough', { given: places.length, least, most });
  const along = (values: readonly number[]) => ({
    median: middleOf(values),
    least: Math.min(...values),
    most: Math.max(...values),
  });
  const weftwise = along(places.map((place) => place.weftwiseKnotsPer7cm));
  const warpwise = along(places.map((place) => place.warpwiseKnotsPer7cm));
  const odd = places.flatMap((place, index) =>
    (
      [
        ['weftwise', place.weftwiseKnotsPer7cm / weftwise.median],
        ['warpwise', place.warpwiseKnotsPer7cm / warpwise.median],
      ] as const
    ).flatMap(([axis, ratio]): readonly OddPlace[] => {
      if (Math.abs(ratio - 1) <= rule.ordinarySpread) return [];
      const byFactor = factors.some((factor) => Math.abs(ratio / factor - 1) <= rule.factorTolerance);
      return [{ place: index, axis, ratio, kind: byFactor ? 'factor' : 'differs' }];
    }),
  );
  return done({
    weftwise,
    warpwise,
    perDm2: (weftwise.median * warpwise.median) / 0.49,
    places: places.length,
    odd,
  });
}
