import FFT from 'fft.js';
import type { Plane } from './picture.ts';

/** Mean power over tiles of a level, frequency 0 at index 0, `size × size`, wrapped. */
export interface Spectrum {
  readonly size: number;
  /** Geometric mean of the tiles' power, each tile first divided by its own total. */
  readonly power: Float32Array;
  /** ln of power over the power usual at that distance from zero; 0 is background. */
  readonly prominence: Float32Array;
  /** Each tile's own power, for agreement between tiles. */
  readonly tiles: readonly Float32Array[];
}

const transforms = new Map<number, FFT>();
const transformOf = (size: number): FFT => {
  const known = transforms.get(size);
  if (known !== undefined) return known;
  const made = new FFT(size);
  transforms.set(size, made);
  return made;
};

/** Two-dimensional transform in place of interleaved complex numbers. */
export function transform2d(data: Float64Array, size: number): void {
  const fft = transformOf(size);
  const line = new Float64Array(2 * size);
  const out = new Float64Array(2 * size);
  for (let y = 0; y < size; y += 1) {
    line.set(data.subarray(2 * y * size, 2 * (y + 1) * size));
    fft.transform(out, line);
    data.set(out, 2 * y * size);
  }
  for (let x = 0; x < size; x += 1) {
    for (let y = 0; y < size; y += 1) {
      line[2 * y] = data[2 * (y * size + x)] ?? 0;
      line[2 * y + 1] = data[2 * (y * size + x) + 1] ?? 0;
    }
    fft.transform(out, line);
    for (let y = 0; y < size; y += 1) {
      data[2 * (y * size + x)] = out[2 * y] ?? 0;
      data[2 * (y * size + x) + 1] = out[2 * y + 1] ?? 0;
    }
  }
}

const hann = (size: number): Float64Array =>
  Float64Array.from({ length: size }, (_, at) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (at + 0.5)) / size));

/** Corners of up to `most × most` tiles spread evenly over a plane. */
function tileCorners(
  wide: number,
  high: number,
  size: number,
  most: number,
): readonly (readonly [number, number])[] {
  const along = (length: number): readonly number[] => {
    const count = Math.max(1, Math.min(most, Math.ceil((length - size) / (0.6 * size)) + 1));
    return Array.from({ length: count }, (_, index) =>
      count === 1 ? Math.floor((length - size) / 2) : Math.floor((index * (length - size)) / (count - 1)),
    );
  };
  return along(high).flatMap((y) => along(wide).map((x) => [x, y] as const));
}

/** Power of two real tiles by one complex transform: their spectra are its even and odd parts. */
function powerOfPair(
  plane: Plane,
  size: number,
  window: Float64Array,
  first: readonly [number, number],
  second: readonly [number, number],
): readonly [Float32Array, Float32Array] {
  const data = new Float64Array(2 * size * size);
  for (let y = 0; y < size; y += 1)
    for (let x = 0; x < size; x += 1) {
      const weight = (window[x] ?? 0) * (window[y] ?? 0);
      const at = 2 * (y * size + x);
      data[at] = weight * (plane.at[(first[1] + y) * plane.wide + first[0] + x] ?? 0);
      data[at + 1] = weight * (plane.at[(second[1] + y) * plane.wide + second[0] + x] ?? 0);
    }
  transform2d(data, size);
  const a = new Float32Array(size * size);
  const b = new Float32Array(size * size);
  for (let y = 0; y < size; y += 1)
    for (let x = 0; x < size; x += 1) {
      const at = y * size + x;
      const mirror = ((size - y) % size) * size + ((size - x) % size);
      const re = data[2 * at] ?? 0;
      const im = data[2 * at + 1] ?? 0;
      const reMirror = data[2 * mirror] ?? 0;
      const imMirror = data[2 * mirror + 1] ?? 0;
      a[at] = ((re + reMirror) ** 2 + (im - imMirror) ** 2) / 4;
      b[at] = ((im + imMirror) ** 2 + (re - reMirror) ** 2) / 4;
    }
  return [a, b];
}

/** Median ln power at each distance from zero, smoothed over neighbouring rings. */
function ringBackground(logPower: Float32Array, size: number): Float32Array {
  const rings: number[][] = Array.from({ length: size }, () => []);
  for (let y = 0; y <= size / 2; y += 1)
    for (let x = 0; x < size; x += 1) {
      const u = x > size / 2 ? x - size : x;
      rings[Math.round(Math.hypot(u, y))]?.push(logPower[y * size + x] ?? 0);
    }
  const medians = rings.map((ring) => {
    if (ring.length === 0) return Number.NaN;
    ring.sort((a, b) => a - b);
    return ring[ring.length >> 1] ?? 0;
  });
  return Float32Array.from(medians, (_, ring) => {
    let sum = 0;
    let held = 0;
    for (let near = Math.max(1, ring - 3); near <= Math.min(size - 1, ring + 3); near += 1) {
      const value = medians[near] ?? Number.NaN;
      if (Number.isNaN(value)) continue;
      sum += value;
      held += 1;
    }
    return held === 0 ? 0 : sum / held;
  });
}

/**
 * Power spectrum of a relief, averaged over tiles so that one motif or stain cannot rule it.
 *
 * @param plane - relief, mean about 0
 * @param size - tile side [px], 64, 128 or 256, not above the plane's shorter side
 * @param most - tiles along a side at most
 * @source none: averaged periodograms after Welch 1967, log-averaged
 */
export function spectrumOf(plane: Plane, size: number, most: number): Spectrum {
  const corners = tileCorners(plane.wide, plane.high, size, most);
  const window = hann(size);
  const tiles: Float32Array[] = [];
  for (let index = 0; index < corners.length; index += 2) {
    const first = corners[index] ?? [0, 0];
    const second = corners[index + 1] ?? first;
    const [a, b] = powerOfPair(plane, size, window, first, second);
    tiles.push(a);
    if (index + 1 < corners.length) tiles.push(b);
  }
  const logPower = new Float32Array(size * size);
  let held = 0;
  for (const tile of tiles) {
    let total = 0;
    for (let at = 0; at < tile.length; at += 1) total += tile[at] ?? 0;
    if (total < 1e-9) continue;
    held += 1;
    const scale = tile.length / total;
    for (let at = 0; at < tile.length; at += 1) {
      const value = (tile[at] ?? 0) * scale;
      tile[at] = value;
      logPower[at] = (logPower[at] ?? 0) + Math.log(value + 1e-4);
    }
  }
  for (let at = 0; at < logPower.length; at += 1) logPower[at] = (logPower[at] ?? 0) / Math.max(1, held);
  const background = ringBackground(logPower, size);
  const power = new Float32Array(size * size);
  const prominence = new Float32Array(size * size);
  for (let y = 0; y < size; y += 1)
    for (let x = 0; x < size; x += 1) {
      const at = y * size + x;
      const u = x > size / 2 ? x - size : x;
      const v = y > size / 2 ? y - size : y;
      const value = logPower[at] ?? 0;
      power[at] = Math.exp(value);
      prominence[at] = value - (background[Math.round(Math.hypot(u, v))] ?? 0);
    }
  return { size, power, prominence, tiles };
}
