import FFT from 'fft.js';
import type { Flattened } from './flatten.ts';
import { linesOf, type Strips } from './strips.ts';

/** How the pitch runs over the window: ln pitch = ln centre + along · s + across · t, s and t in level px from the centre. */
export interface PitchField {
  /** Pitch at the window's centre [level px]. */
  readonly pitch: number;
  readonly along: number;
  readonly across: number;
  /** Standard error of ln pitch at the centre. */
  readonly error: number;
  /** Share of blocks whose own pitch lies within 5 % of the field. */
  readonly within: number;
  /** Mean ln ratio of the blocks' peak to the power around it. */
  readonly height: number;
  readonly blocks: number;
  /** Mean ln power at a half, three halves, twice and three times the repeat's frequency over that at its own. */
  readonly overtones: readonly number[];
  /** Mean ln of the power at those frequencies, and at its own, over the power beside them. */
  readonly standOut: readonly number[];
}

const fftSize = 512;
const fft = new FFT(fftSize);
const repeatsPerBlock = 13;
/** Beyond this from the plane [ln ratio] a block loses weight; less, and it would lose the weave's own unevenness. */
const tolerance = 0.1;

/** Adds the power of a stretch of lines to `power`; two lines share one complex transform. */
function addPower(lines: readonly Float64Array[], from: number, length: number, power: Float64Array): void {
  const data = new Float64Array(2 * fftSize);
  const out = new Float64Array(2 * fftSize);
  for (let index = 0; index < lines.length; index += 2) {
    const [a, b] = [lines[index], lines[index + 1]];
    if (a === undefined) continue;
    data.fill(0);
    let [sumA, sumB] = [0, 0];
    for (let at = 0; at < length; at += 1) {
      sumA += a[from + at] ?? 0;
      sumB += b?.[from + at] ?? 0;
    }
    for (let at = 0; at < length; at += 1) {
      const weight = 0.5 - 0.5 * Math.cos((2 * Math.PI * (at + 0.5)) / length);
      data[2 * at] = weight * ((a[from + at] ?? 0) - sumA / length);
      data[2 * at + 1] = weight * ((b?.[from + at] ?? 0) - sumB / length);
    }
    fft.transform(out, data);
    for (let bin = 0; bin <= fftSize / 2; bin += 1) {
      const mirror = (fftSize - bin) % fftSize;
      // |A|² + |B|² of two real lines packed into one transform.
      power[bin] =
        (power[bin] ?? 0) +
        ((out[2 * bin] ?? 0) ** 2 +
          (out[2 * bin + 1] ?? 0) ** 2 +
          (out[2 * mirror] ?? 0) ** 2 +
          (out[2 * mirror + 1] ?? 0) ** 2) /
          2;
    }
  }
}

interface Block {
  readonly s: number;
  readonly t: number;
  readonly logPitch: number;
  readonly weight: number;
  readonly height: number;
}

/** The strongest frequency within ±`reach` of a pitch, by a parabola through three bins. */
function peakIn(
  power: Float64Array,
  pitch: number,
  reach: number,
): { readonly pitch: number; readonly height: number } | null {
  const middle = fftSize / pitch;
  const from = Math.max(2, Math.floor(middle / (1 + reach)));
  const until = Math.min(fftSize / 2 - 2, Math.ceil(middle * (1 + reach)));
  let best = -1;
  let most = 0;
  for (let bin = from; bin <= until; bin += 1)
    if (
      (power[bin] ?? 0) > most &&
      (power[bin] ?? 0) >= (power[bin - 1] ?? 0) &&
      (power[bin] ?? 0) >= (power[bin + 1] ?? 0)
    ) {
      most = power[bin] ?? 0;
      best = bin;
    }
  if (best < 0) return null;
  const [a, b, c] = [power[best - 1] ?? 0, most, power[best + 1] ?? 0].map((value) =>
    Math.log(value + 1e-12),
  ) as [number, number, number];
  const bend = a - 2 * b + c;
  const shift = bend < 0 ? (0.5 * (a - c)) / bend : 0;
  let sum = 0;
  let count = 0;
  for (
    let bin = Math.max(2, Math.floor(middle * 0.6));
    bin <= Math.min(fftSize / 2, Math.ceil(middle * 1.6));
    bin += 1
  ) {
    sum += power[bin] ?? 0;
    count += 1;
  }
  return { pitch: fftSize / (best + shift), height: Math.log(most / Math.max(1e-12, sum / count)) };
}

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
};

/** Weighted plane through ln pitch, outliers losing weight round by round (iteratively reweighted). */
function planeThrough(blocks: readonly Block[], withSlopes: boolean): readonly [number, number, number] {
  let [c, a, b] = [median(blocks.map(({ logPitch }) => logPitch)), 0, 0];
  const scale = (values: readonly number[]): number => Math.max(1, ...values.map(Math.abs));
  const [sMost, tMost] = [scale(blocks.map(({ s }) => s)), scale(blocks.map(({ t }) => t))];
  for (let round = 0; round < 6; round += 1) {
    const m = new Float64Array(9);
    const r = new Float64Array(3);
    for (const { s, t, logPitch, weight } of blocks) {
      const [x, y] = withSlopes ? [s / sMost, t / tMost] : [0, 0];
      const off = (logPitch - c - a * x - b * y) / tolerance;
      const w = weight / (1 + off * off) ** 2;
      const v = [1, x, y];
      for (let i = 0; i < 3; i += 1) {
        r[i] = (r[i] ?? 0) + w * (v[i] ?? 0) * logPitch;
        for (let j = 0; j < 3; j += 1) m[3 * i + j] = (m[3 * i + j] ?? 0) + w * (v[i] ?? 0) * (v[j] ?? 0);
      }
    }
    // A little weight on no slope keeps a row of blocks from turning the plane.
    const trust = 0.02 * (m[0] ?? 1);
    m[4] = (m[4] ?? 0) + trust;
    m[8] = (m[8] ?? 0) + trust;
    const solved = solve3(m, r);
    if (solved === null) break;
    [c, a, b] = solved;
  }
  return withSlopes ? [c, a / sMost, b / tMost] : [c, 0, 0];
}

function solve3(m: Float64Array, r: Float64Array): [number, number, number] | null {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = m;
  const [x = 0, y = 0, z = 0] = r;
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (Math.abs(determinant) < 1e-12) return null;
  return [
    (x * (e * i - f * h) - b * (y * i - f * z) + c * (y * h - e * z)) / determinant,
    (a * (y * i - f * z) - x * (d * i - f * g) + c * (d * z - y * g)) / determinant,
    (a * (e * z - y * h) - b * (d * z - y * g) + x * (d * h - e * g)) / determinant,
  ];
}

const multiples = [1, 0.5, 1.5, 2, 3] as const;

/** How strongly multiples of the repeat's frequency are seen where the plane puts them. */
function partsOf(
  powers: readonly { readonly s: number; readonly t: number; readonly power: Float64Array }[],
  [c, a, b]: readonly [number, number, number],
): Pick<PitchField, 'overtones' | 'standOut'> {
  const peaks = new Float64Array(multiples.length);
  const besides = new Float64Array(multiples.length);
  for (const { s, t, power } of powers) {
    const own = fftSize / Math.exp(c + a * s + b * t);
    for (const [index, multiple] of multiples.entries()) {
      const bin = own * multiple;
      let [peak, sum, count] = [0, 0, 0];
      for (let at = Math.max(1, Math.floor(bin - 0.25 * own)); at <= bin + 0.25 * own; at += 1) {
        const here = power[at] ?? 0;
        const off = Math.abs(at - bin);
        if (off <= 0.05 * own + 0.5) peak = Math.max(peak, here);
        else if (off > 0.13 * own) {
          sum += here;
          count += 1;
        }
      }
      peaks[index] = (peaks[index] ?? 0) + Math.log(peak + 1e-9) / powers.length;
      besides[index] = (besides[index] ?? 0) + Math.log(sum / Math.max(1, count) + 1e-9) / powers.length;
    }
  }
  return {
    overtones: Array.from(peaks.subarray(1), (peak) => peak - (peaks[0] ?? 0)),
    standOut: Array.from(peaks, (peak, index) => peak - (besides[index] ?? 0)),
  };
}

/**
 * Measures a repeat in blocks all over the window and lays a plane through its logarithm.
 *
 * @param flat - the level on which the repeat is 4 to 14 px
 * @param pitch - rough repeat, within 10 % [level px]
 * @param other - repeat of the other axis [level px]
 * @returns null where no block shows the repeat
 * @source none: periodograms of strips, powers summed colour by colour
 */
export function pitchField(flat: Flattened, strips: Strips, pitch: number): PitchField | null {
  const blockLength = Math.min(strips.length, fftSize, Math.round(repeatsPerBlock * pitch));
  const blocksAlong = Math.max(1, Math.round((1.7 * strips.length) / blockLength));
  const bands = Math.max(1, Math.min(5, Math.round(strips.sides.length / 4)));
  const lines = strips.sides.map((side) => linesOf(flat, strips, side));
  const powers: { readonly s: number; readonly t: number; readonly power: Float64Array }[] = [];
  for (let band = 0; band < bands; band += 1) {
    const first = Math.floor((band * strips.sides.length) / bands);
    const last = Math.floor(((band + 1) * strips.sides.length) / bands);
    const t =
      strips.sides.slice(first, last).reduce((sum, side) => sum + side, 0) / Math.max(1, last - first);
    for (let along = 0; along < blocksAlong; along += 1) {
      const from =
        blocksAlong === 1 ? 0 : Math.floor((along * (strips.length - blockLength)) / (blocksAlong - 1));
      const power = new Float64Array(fftSize / 2 + 1);
      for (let strip = first; strip < last; strip += 1) {
        const here = lines[strip];
        if (here !== undefined) addPower(here, from, blockLength, power);
      }
      powers.push({ s: from + blockLength / 2 - strips.length / 2, t, power });
    }
  }
  let field: readonly [number, number, number] = [Math.log(pitch), 0, 0];
  let blocks: readonly Block[] = [];
  // Each round looks closer round the plane found before: a tilted camera stretches the pitch by a fifth.
  for (const reach of [0.2, 0.16, 0.1]) {
    const [c, a, b] = field;
    blocks = powers.flatMap(({ s, t, power }) => {
      const peak = peakIn(power, Math.exp(c + a * s + b * t), reach);
      if (peak === null) return [];
      return [
        {
          s,
          t,
          logPitch: Math.log(peak.pitch),
          weight: Math.max(0.05, Math.min(2, peak.height - 0.3)),
          height: peak.height,
        },
      ];
    });
    if (blocks.length === 0) return null;
    field = planeThrough(blocks, blocks.length >= 6);
  }
  const [c, a, b] = field;
  const offs = blocks.map(({ s, t, logPitch }) => Math.abs(logPitch - c - a * s - b * t));
  const scatter = 1.48 * median(offs);
  return {
    pitch: Math.exp(c),
    along: a,
    across: b,
    error: scatter / Math.sqrt(Math.max(1, blocks.length / 2)),
    within: offs.filter((off) => off < 0.05).length / blocks.length,
    height: blocks.reduce((sum, { height }) => sum + height, 0) / blocks.length,
    blocks: blocks.length,
    ...partsOf(powers, field),
  };
}
