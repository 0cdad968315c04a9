import trained from '../../../data/weave/confidence.json' with { type: 'json' };
import type { Axis } from './candidate.ts';
import { type Weighed, weigh } from './judge.ts';
import { type MeasuredRepeat, measureRepeat } from './repeat.ts';
import { candidatesAlong, type Survey } from './survey.ts';

/** A measured repeat and how likely it is the one the eye counts, 0 … 1; what is missing to 1 is for none of them. */
export interface LikelyRepeat {
  readonly repeat: MeasuredRepeat;
  readonly likelihood: number;
}

/** Measured repeats closer than this are one [ln ratio]. */
const sameRepeat = 0.06;

/** How many candidates of an axis are measured, and the weight below which none is worth it. */
const mostMeasured = 3;
const leastWeight = 0.02;

/** Without those that measuring has made one; the heavier stays. */
const distinct = (repeats: readonly MeasuredRepeat[]): readonly MeasuredRepeat[] =>
  repeats.filter(
    ({ pitchPx }, index) =>
      !repeats.slice(0, index).some((other) => Math.abs(Math.log(other.pitchPx / pitchPx)) < sameRepeat),
  );

const weighed = (seen: Survey, axis: Axis): readonly Weighed[] =>
  weigh(candidatesAlong(seen, axis))
    .filter(({ weight }, index) => index === 0 || weight >= leastWeight)
    .slice(0, mostMeasured);

/**
 * Measures the heaviest candidates of an axis; those that measuring makes one are kept once.
 *
 * @param candidates - what to measure; what the judge finds likely when absent
 * @source none: this project's
 */
export function distinctMeasured(
  seen: Survey,
  axis: Axis,
  candidates: readonly Weighed[] = weighed(seen, axis),
): readonly MeasuredRepeat[] {
  // The other axis only sets how wide strips are, so its likeliest repeat will do.
  const [other] = weighed(seen, axis === 'weftwise' ? 'warpwise' : 'weftwise');
  if (other === undefined) return [];
  return distinct(candidates.flatMap((one) => measureRepeat(seen, axis, one, other.pitchPx) ?? []));
}

/** How much of a likelihood's log odds is stated. */
const temper = 0.75;

function scoreOf(signs: readonly number[]): number {
  const { mean, spread, direct, inner, innerBias, outer, bias } = trained;
  const x = signs.map((sign, index) => (sign - (mean[index] ?? 0)) / (spread[index] ?? 1));
  const sum = (weights: readonly number[]): number =>
    x.reduce((total, value, index) => total + value * (weights[index] ?? 0), 0);
  return inner.reduce(
    (score, weights, unit) => score + (outer[unit] ?? 0) * Math.tanh((innerBias[unit] ?? 0) + sum(weights)),
    bias + sum(direct),
  );
}

/**
 * Tells how likely each measured repeat of one axis is the visible one.
 *
 * @returns likeliest first; together at most 1, the rest being the chance that it is none of them
 * @source none: a small network fitted to rendered pictures (data/weave/confidence.json, bench/weaveJudge.ts)
 */
export function likelihoods(repeats: readonly MeasuredRepeat[]): readonly LikelyRepeat[] {
  const scores = repeats.map(({ signs }) => scoreOf(signs));
  const top = Math.max(0, ...scores);
  const shares = scores.map((score) => Math.exp(score - top));
  const sum = shares.reduce((total, share) => total + share, Math.exp(-top));
  return repeats
    .map((repeat, index) => ({ repeat, likelihood: (shares[index] ?? 0) / sum }))
    .sort((a, b) => b.likelihood - a.likelihood);
}

/**
 * The confidence that is stated for a likelihood: fitted likelihoods are a little too sure of themselves.
 *
 * @param likelihood - 0 … 1
 * @returns 0 … 1, nearer to a half
 * @source none: tempered so that of rendered pictures called 0.8 or surer under 2 % are wrong
 */
export const confidenceOf = (likelihood: number): number =>
  1 / (1 + ((1 - likelihood) / Math.max(1e-9, likelihood)) ** temper);
