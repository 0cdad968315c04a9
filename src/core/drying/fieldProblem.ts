import { refused } from '../../units/index.ts';
import type { DryingProblem } from './dryingProblem.ts';

/** A refusal, or null where nothing is wrong. */
export type Found = { readonly ok: false; readonly problem: DryingProblem } | null;

/** Field, value, least, most and unit of a number that has to lie between. */
export type Bounded = readonly [
  field: string,
  value: number | undefined,
  least: number,
  most: number,
  symbol: string,
];

export const ofOne = 'as a fraction of 1';

/** The first of the numbers that is given and lies outside its bounds, refused. */
export function firstOutside(rows: readonly Bounded[]): Found {
  const wrong = rows.find(
    ([, value, least, most]) => value !== undefined && !(value >= least && value <= most),
  );
  if (wrong === undefined) return null;
  const [field, value, least, most, symbol] = wrong;
  return refused('out-of-range', { field, value: value ?? Number.NaN, least, most, symbol });
}

/** The first problem that a check finds in a list. */
export const firstOf = <Of>(list: readonly Of[], check: (one: Of, index: number) => Found): Found => {
  for (const [index, one] of list.entries()) {
    const found = check(one, index);
    if (found !== null) return found;
  }
  return null;
};
