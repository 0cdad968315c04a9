import FFT from 'fft.js';
import type { Axis } from './candidate.ts';
import type { Directions } from './direction.ts';
import type { Flattened } from './flatten.ts';

/** Strips laid along an axis over a level. */
export interface Strips {
  /** Unit step along a strip and from strip to strip [level px]. */
  readonly main: readonly [number, number];
  readonly cross: readonly [number, number];
  readonly centre: readonly [number, number];
  /** Samples along a strip, one per level pixel. */
  readonly length: number;
  /** Distance of each strip from the centre [level px]. */
  readonly sides: readonly number[];
  readonly width: number;
}

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
}

const fftSize = 512;
const fft = new FFT(fftSize);
const repeatsPerBlock = 13;
const mostStrips = 26;
/** Beyond this from the plane [ln ratio] a block loses weight; less, and it would lose the weave's own unevenness. */
const tolerance = 0.1;

/**
 * Lays strips along an axis over the largest parallelogram that fits a level.
 *
 * @param pitch - repeat along the axis [level px]
 * @param other - repeat of the other axis, which sets the width [level px]
 * @returns null where fewer than four repeats fit
 * @source none: geometry
 */
export function layStrips(
  flat: Flattened,
  directions: Directions,
  axis: Axis,
  pitch: number,
  other: number,
): Strips | null {
  const { wide, high } = flat.relief;
  const width = Math.max(2.5, Math.min(2.2 * pitch, 1.1 * other));
  const { columns, rows } = directions;
  const alongWeft = [Math.cos(rows), Math.sin(rows)] as const;
  const alongWarp = [-Math.sin(columns), Math.cos(columns)] as const;
  const [main, cross] = axis === 'weftwise' ? [alongWeft, alongWarp] : [alongWarp, alongWeft];
  const [alongSide, crossSide] = axis === 'weftwise' ? [wide, high] : [high, wide];
  const tilt = Math.abs(axis === 'weftwise' ? main[1] : main[0]);
  const lean = Math.abs(axis === 'weftwise' ? cross[0] : cross[1]);
  const halfLong = (alongSide / 2 - 1.5 - lean * crossSide * 0.5) / (1 - tilt * lean);
  const halfWide = crossSide / 2 - 1.5 - tilt * halfLong;
  const length = Math.floor(2 * halfLong);
  if (!(length >= 4 * pitch) || !(halfWide >= width / 2)) return null;
  const count = Math.max(1, Math.min(mostStrips, Math.floor((2 * halfWide) / width)));
  const sides = Array.from({ length: count }, (_, index) =>
    count === 1 ? 0 : -halfWide + width / 2 + (index * (2 * halfWide - width)) / (count - 1),
  );
  return { main, cross, centre: [(wide - 1) / 2, (high - 1) / 2], length, sides, width };
}

/** Mean of the relief across a strip: one line for each colour, so that opposite contrasts cannot cancel, one of all, one with colour left in. */
export function linesOf(flat: Flattened, strips: Strips, side: number): readonly Float64Array[] {
  const { wide, high, at: relief } = flat.relief;
  const lines = Array.from({ length: flat.colours + 2 }, () => new Float64Array(strips.length));
  const shadeLine = lines[flat.colours];
  const whole = lines[flat.colours + 1];
  const rays = Math.max(2, Math.min(5, Math.round(strips.width / 2)));
  const half = strips.length / 2;
  for (let ray = 0; ray < rays; ray += 1) {
    const off = side + ((ray + 0.5) / rays - 0.5) * strips.width;
    const startX = strips.centre[0] + off * strips.cross[0] - half * strips.main[0];
    const startY = strips.centre[1] + off * strips.cross[1] - half * strips.main[1];
    for (let index = 0; index < strips.length; index += 1) {
      const x = startX + index * strips.main[0];
      const y = startY + index * strips.main[1];
      const left = Math.floor(x);
      const top = Math.floor(y);
      if (left < 0 || top < 0 || left + 1 >= wide || top + 1 >= high) continue;
      const fx = x - left;
      const fy = y - top;
      const first = top * wide + left;
      const blend = (plane: Float32Array): number =>
        ((plane[first] ?? 0) * (1 - fx) + (plane[first + 1] ?? 0) * fx) * (1 - fy) +
        ((plane[first + wide] ?? 0) * (1 - fx) + (plane[first + wide + 1] ?? 0) * fx) * fy;
      const colour = flat.colour[Math.round(y) * wide + Math.round(x)] ?? 0;
      const line = lines[colour];
      if (whole !== undefined) whole[index] = (whole[index] ?? 0) + 1.5 * blend(relief);
      if (line !== undefined) line[index] = (line[index] ?? 0) + blend(relief);
      if (shadeLine !== undefined) shadeLine[index] = (shadeLine[index] ?? 0) + 0.6 * blend(flat.shade.at);
    }
  }
  return lines;
}

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
  };
}
