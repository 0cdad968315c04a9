import { writeFile } from 'node:fs/promises';
import sharp from 'sharp';
import { evidenceRows } from '../src/core/weave/judge.ts';
import { candidatesAlong, survey } from '../src/core/weave/survey.ts';
import { betweenLog, drawLoomPicture, normal, seeded } from './loom/index.ts';

/** Seeds the judge is fitted to; the accuracy bench uses others. */
const firstSeed = 1000;
const units = 6;
/** Weight decay: larger is plainer. */
const restraint = 5;

interface Group {
  readonly rows: readonly Float64Array[];
  readonly right: readonly boolean[];
}

async function drawGroups(seed: number): Promise<readonly Group[]> {
  const chance = seeded(seed);
  const loom = drawLoomPicture(chance, betweenLog(chance, 4, 60));
  const { width, height, truth } = loom;
  const jpeg = await sharp(loom.rgb, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: loom.shot.jpegQuality })
    .toBuffer();
  const data = await sharp(jpeg).raw().toBuffer();
  const seen = survey({ width, height, channels: 3, data }, { x: 0, y: 0, width, height }, 18);
  return (['weftwise', 'warpwise'] as const).flatMap((axis) => {
    const knots =
      truth.nodesPerKnot === 'either'
        ? [truth.knotPx, truth.knotPx / 2]
        : [truth.knotPx / truth.nodesPerKnot];
    const fair = axis === 'warpwise' ? [truth.rowPx] : knots;
    const candidates = candidatesAlong(seen, axis);
    const right = candidates.map(({ pitchPx }) =>
      fair.some((pitch) => Math.abs(Math.log(pitchPx / pitch)) < 0.06),
    );
    return right.includes(true)
      ? [{ rows: evidenceRows(candidates.map(({ evidence }) => evidence)), right }]
      : [];
  });
}

const rounded = (values: ArrayLike<number>): number[] =>
  Array.from(values, (value) => Number(value.toFixed(4)));

/** Fits by steepest descent with momentum and scaled steps (Kingma and Ba 2015): likelihood of a right candidate among all. */
function fitWeights(groups: readonly Group[], rounds: number) {
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
    rows: rows.map((row) => row.map((value, at) => (value - (mean[at] ?? 0)) / (spread[at] ?? 1))),
  }));
  const chance = seeded(1);
  const size = units * width + 2 * units + width;
  const weights = Float64Array.from({ length: size }, (_, at) =>
    at < units * width || (at >= units * (width + 1) && at < units * (width + 2)) ? 0.1 * normal(chance) : 0,
  );
  const [bias, outer, direct] = [units * width, units * (width + 1), units * (width + 2)];
  const [first, second] = [new Float64Array(size), new Float64Array(size)];
  for (let round = 1; round <= rounds; round += 1) {
    const slope = weights.map((weight) => restraint * weight);
    for (const { rows, right } of scaled) {
      const hidden = rows.map((row) =>
        Float64Array.from({ length: units }, (_, unit) => {
          let sum = weights[bias + unit] ?? 0;
          for (let at = 0; at < width; at += 1) sum += (weights[unit * width + at] ?? 0) * (row[at] ?? 0);
          return Math.tanh(sum);
        }),
      );
      const scores = rows.map((row, index) => {
        let score = 0;
        for (let at = 0; at < width; at += 1) score += (weights[direct + at] ?? 0) * (row[at] ?? 0);
        for (let unit = 0; unit < units; unit += 1)
          score += (weights[outer + unit] ?? 0) * (hidden[index]?.[unit] ?? 0);
        return score;
      });
      const top = Math.max(...scores);
      const shares = scores.map((score) => Math.exp(score - top));
      const sum = shares.reduce((total, share) => total + share, 0);
      const good = shares.reduce((total, share, index) => total + (right[index] === true ? share : 0), 0);
      for (const [index, row] of rows.entries()) {
        const share = shares[index] ?? 0;
        const pull = share / sum - (right[index] === true ? share / good : 0);
        for (let at = 0; at < width; at += 1)
          slope[direct + at] = (slope[direct + at] ?? 0) + pull * (row[at] ?? 0);
        for (let unit = 0; unit < units; unit += 1) {
          const value = hidden[index]?.[unit] ?? 0;
          slope[outer + unit] = (slope[outer + unit] ?? 0) + pull * value;
          const inner = pull * (weights[outer + unit] ?? 0) * (1 - value * value);
          slope[bias + unit] = (slope[bias + unit] ?? 0) + inner;
          for (let at = 0; at < width; at += 1)
            slope[unit * width + at] = (slope[unit * width + at] ?? 0) + inner * (row[at] ?? 0);
        }
      }
    }
    for (let at = 0; at < size; at += 1) {
      first[at] = 0.9 * (first[at] ?? 0) + 0.1 * (slope[at] ?? 0);
      second[at] = 0.999 * (second[at] ?? 0) + 0.001 * (slope[at] ?? 0) ** 2;
      const step =
        (first[at] ?? 0) / (1 - 0.9 ** round) / (Math.sqrt((second[at] ?? 0) / (1 - 0.999 ** round)) + 1e-9);
      weights[at] = (weights[at] ?? 0) - 0.02 * step;
    }
  }
  return {
    mean: rounded(mean),
    spread: rounded(spread),
    inner: Array.from({ length: units }, (_, unit) =>
      rounded(weights.subarray(unit * width, (unit + 1) * width)),
    ),
    innerBias: rounded(weights.subarray(bias, outer)),
    outer: rounded(weights.subarray(outer, direct)),
    direct: rounded(weights.subarray(direct)),
  };
}

/** Fits the judge of candidates anew to loom pictures: `weaveJudge [OUT.json] [pictures] [rounds]`; without a file only to try. */
export async function run(args: readonly string[]): Promise<void> {
  const [out, pictures = out === undefined ? '20' : '800', rounds = out === undefined ? '30' : '300'] = args;
  const groups: Group[] = [];
  for (let seed = firstSeed; seed < firstSeed + Number(pictures); seed += 1)
    groups.push(...(await drawGroups(seed)));
  const fitted = {
    title: 'Weights of the judge that tells the visible repeat from its multiples and parts',
    source: 'workshop-setting',
    where: `fitted to ${pictures} loom pictures by bench/weaveJudge.ts`,
    readFrom: 'our own fit',
    unit: 'none',
    ...fitWeights(groups, Number(rounds)),
  };
  if (out !== undefined) await writeFile(out, `${JSON.stringify(fitted)}\n`);
  console.log(`${groups.length} axes, weights ${out === undefined ? 'not kept' : `in ${out}`}`);
}
