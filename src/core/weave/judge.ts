import trained from '../../../data/weave/judge.json' with { type: 'json' };
import { type Candidate, type Evidence, evidenceNames } from './candidate.ts';

/** A repeat with the weight of all the evidence for it, from whatever size of the picture it came. */
export interface Weighed {
  readonly pitchPx: number;
  /** 0 … 1; all repeats of an axis together make 1. */
  readonly weight: number;
  /** The size of the picture that shows it best. */
  readonly scale: number;
}

/** Two repeats closer than this are one [ln ratio]: measuring looks that far round a candidate anyway. */
const sameRepeat = 0.09;

/**
 * The evidence of each candidate of one axis as numbers, with what can only be told by comparing.
 *
 * @param all - every candidate of the axis
 * @returns one row per candidate, in a fixed order of columns
 * @source none: this project's
 */
export function evidenceRows(all: readonly Evidence[]): readonly Float64Array[] {
  const most = (name: keyof Evidence): number => Math.max(...all.map((evidence) => evidence[name]));
  const [line, once, shadeLine] = [most('line'), most('once'), most('shadeLine')];
  return all.map((e) =>
    Float64Array.of(
      ...evidenceNames.map((name) => e[name]),
      e.line - line,
      e.once / Math.max(1e-6, once),
      e.shadeLine - shadeLine,
      e.levelPitch ** 2,
      Math.min(e.line, 3),
      e.once ** 2,
      e.half * e.once,
      e.coarse ** 2,
      Math.max(e.half, 0),
      Math.max(e.dip, 0),
      e.line - e.halfLine,
      e.line - e.doubleLine,
      Math.min(0, e.line - e.halfLine),
      Math.min(0, e.line - e.doubleLine),
      Math.max(0, e.twice - 1),
      Math.max(0, 0.7 - e.twice),
      Math.max(0, e.half - 0.6),
      e.shadeLine - e.shadeHalfLine,
      Math.min(0, e.shadeLine - e.shadeHalfLine),
      Math.max(0, e.shadeTwice - 1),
      e.shadeOnce ** 2,
      Math.max(0, e.shadeHalf - 0.6),
      Math.max(0, e.shadeDip),
    ),
  );
}

const scoreOf = (row: Float64Array): number => {
  const { mean, spread, inner, innerBias, outer, direct } = trained;
  const x = row.map((value, index) => (value - (mean[index] ?? 0)) / (spread[index] ?? 1));
  let score = 0;
  for (const [unit, weights] of inner.entries()) {
    let sum = innerBias[unit] ?? 0;
    for (const [index, weight] of weights.entries()) sum += weight * (x[index] ?? 0);
    score += (outer[unit] ?? 0) * Math.tanh(sum);
  }
  for (const [index, weight] of direct.entries()) score += weight * (x[index] ?? 0);
  return score;
};

/**
 * Weighs the candidates of one axis against each other.
 *
 * @param candidates - of one axis, from all sizes of the picture
 * @returns repeats with weights that sum to 1, heaviest first
 * @source none: a small network fitted to loom pictures (data/weave/judge.json, bench/weaveJudge.ts)
 */
export function weigh(candidates: readonly Candidate[]): readonly Weighed[] {
  if (candidates.length === 0) return [];
  const scores = evidenceRows(candidates.map(({ evidence }) => evidence)).map(scoreOf);
  const top = Math.max(...scores);
  const shares = scores.map((score) => Math.exp(score - top));
  const sum = shares.reduce((total, share) => total + share, 0);
  const left = candidates
    .map(({ pitchPx, scale }, index) => ({ pitchPx, scale, weight: (shares[index] ?? 0) / sum }))
    .sort((a, b) => b.weight - a.weight);
  const weighed: Weighed[] = [];
  for (;;) {
    const first = left.shift();
    if (first === undefined) break;
    let weight = first.weight;
    for (let index = left.length - 1; index >= 0; index -= 1) {
      const other = left[index];
      if (other === undefined || Math.abs(Math.log(other.pitchPx / first.pitchPx)) > sameRepeat) continue;
      weight += other.weight;
      left.splice(index, 1);
    }
    weighed.push({ ...first, weight });
  }
  return weighed.sort((a, b) => b.weight - a.weight);
}
