import { normal, seeded } from '../loom/index.ts';

/** Candidates among which some are right; where none is and `none` is allowed, that is the right answer. */
export interface Group {
  readonly rows: readonly ArrayLike<number>[];
  readonly right: readonly boolean[];
}

export interface FitOptions {
  readonly units: number;
  /** Networks whose scores are averaged: chance in one then matters less. */
  readonly networks: number;
  /** Weight decay: larger is plainer. */
  readonly restraint: number;
  readonly rounds: number;
  /** Whether it may be none of the candidates; such an answer scores 0. */
  readonly none: boolean;
}

const rounded = (values: ArrayLike<number>, scale = 1): number[] =>
  Array.from(values, (value) => Number((value * scale).toFixed(4)));

interface Layout {
  readonly width: number;
  readonly units: number;
  readonly bias: number;
  readonly inner: number;
  readonly innerBias: number;
  readonly outer: number;
  readonly size: number;
}

const layoutOf = (width: number, units: number): Layout => {
  const bias = width;
  const inner = bias + 1;
  const innerBias = inner + units * width;
  const outer = innerBias + units;
  return { width, units, bias, inner, innerBias, outer, size: outer + units };
};

interface Scaled {
  readonly rows: readonly Float64Array[];
  readonly right: readonly boolean[];
}

/** Adds one group's slope of the negative log likelihood. */
function addSlope(
  { rows, right }: Scaled,
  { width, units, bias, inner, innerBias, outer }: Layout,
  weights: Float64Array,
  none: boolean,
  slope: Float64Array,
): void {
  const hidden = rows.map(() => new Float64Array(units));
  const scores = rows.map((row, index) => {
    let score = none ? (weights[bias] ?? 0) : 0;
    for (let at = 0; at < width; at += 1) score += (weights[at] ?? 0) * (row[at] ?? 0);
    for (let unit = 0; unit < units; unit += 1) {
      let sum = weights[innerBias + unit] ?? 0;
      const first = inner + unit * width;
      for (let at = 0; at < width; at += 1) sum += (weights[first + at] ?? 0) * (row[at] ?? 0);
      const value = Math.tanh(sum);
      const here = hidden[index];
      if (here !== undefined) here[unit] = value;
      score += (weights[outer + unit] ?? 0) * value;
    }
    return score;
  });
  const top = Math.max(...scores, none ? 0 : Number.NEGATIVE_INFINITY);
  const shares = scores.map((score) => Math.exp(score - top));
  const nothing = none ? Math.exp(-top) : 0;
  const sum = shares.reduce((total, share) => total + share, nothing);
  const good = right.includes(true)
    ? shares.reduce((total, share, index) => total + (right[index] === true ? share : 0), 0)
    : nothing;
  for (const [index, row] of rows.entries()) {
    const share = shares[index] ?? 0;
    const pull = share / sum - (right[index] === true ? share / good : 0);
    if (none) slope[bias] = (slope[bias] ?? 0) + pull;
    for (let at = 0; at < width; at += 1) slope[at] = (slope[at] ?? 0) + pull * (row[at] ?? 0);
    for (let unit = 0; unit < units; unit += 1) {
      const value = hidden[index]?.[unit] ?? 0;
      slope[outer + unit] = (slope[outer + unit] ?? 0) + pull * value;
      const within = pull * (weights[outer + unit] ?? 0) * (1 - value * value);
      slope[innerBias + unit] = (slope[innerBias + unit] ?? 0) + within;
      const first = inner + unit * width;
      for (let at = 0; at < width; at += 1)
        slope[first + at] = (slope[first + at] ?? 0) + within * (row[at] ?? 0);
    }
  }
}

/** Fits one network by steepest descent with momentum and scaled steps (Kingma and Ba 2015). */
function fitOne(
  groups: readonly Scaled[],
  layout: Layout,
  { restraint, rounds, none }: FitOptions,
  seed: number,
): Float64Array {
  const chance = seeded(seed);
  const weights = Float64Array.from({ length: layout.size }, (_, at) =>
    at >= layout.inner && (at < layout.innerBias || at >= layout.outer) ? 0.1 * normal(chance) : 0,
  );
  const [first, second] = [new Float64Array(layout.size), new Float64Array(layout.size)];
  for (let round = 1; round <= rounds; round += 1) {
    const slope = weights.map((weight) => restraint * weight);
    for (const group of groups) addSlope(group, layout, weights, none, slope);
    const pace = round > 0.7 * rounds ? 0.006 : 0.02;
    for (let at = 0; at < layout.size; at += 1) {
      first[at] = 0.9 * (first[at] ?? 0) + 0.1 * (slope[at] ?? 0);
      second[at] = 0.99 * (second[at] ?? 0) + 0.01 * (slope[at] ?? 0) ** 2;
      const step =
        (first[at] ?? 0) / (1 - 0.9 ** round) / (Math.sqrt((second[at] ?? 0) / (1 - 0.99 ** round)) + 1e-9);
      weights[at] = (weights[at] ?? 0) - pace * step;
    }
  }
  return weights;
}

/**
 * Fits scores to candidates so that the right one of each group is the likeliest.
 *
 * @returns weights in the form in which the counter reads them; averaged networks lie side by side in one
 */
export function fitNetwork(groups: readonly Group[], options: FitOptions) {
  const width = groups[0]?.rows[0]?.length ?? 0;
  const all = groups.flatMap(({ rows }) => rows);
  const mean = Array.from(
    { length: width },
    (_, at) => all.reduce((sum, row) => sum + (row[at] ?? 0), 0) / all.length,
  );
  const spread = mean.map(
    (middle, at) =>
      Math.sqrt(all.reduce((sum, row) => sum + ((row[at] ?? 0) - middle) ** 2, 0) / all.length) + 1e-3,
  );
  const scaled = groups.map(({ rows, right }) => ({
    right,
    rows: rows.map((row) =>
      Float64Array.from({ length: width }, (_, at) => ((row[at] ?? 0) - (mean[at] ?? 0)) / (spread[at] ?? 1)),
    ),
  }));
  const layout = layoutOf(width, options.units);
  const fitted = Array.from({ length: options.networks }, (_, index) =>
    fitOne(scaled, layout, options, index + 1),
  );
  const part = 1 / fitted.length;
  const average = (at: number): number => fitted.reduce((sum, weights) => sum + part * (weights[at] ?? 0), 0);
  return {
    mean: rounded(mean),
    spread: rounded(spread),
    bias: Number(average(layout.bias).toFixed(4)),
    direct: rounded(mean.map((_, at) => average(at))),
    inner: fitted.flatMap((weights) =>
      Array.from({ length: layout.units }, (_, unit) =>
        rounded(weights.subarray(layout.inner + unit * width, layout.inner + (unit + 1) * width)),
      ),
    ),
    innerBias: fitted.flatMap((weights) => rounded(weights.subarray(layout.innerBias, layout.outer))),
    outer: fitted.flatMap((weights) => rounded(weights.subarray(layout.outer), part)),
  };
}
