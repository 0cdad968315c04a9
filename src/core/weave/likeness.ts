import { type Spectrum, transform2d } from './spectrum.ts';

/** How alike a relief is to itself shifted by so many pixels: 1 unshifted, 0 unrelated. */
export interface Likeness {
  readonly size: number;
  /** Wrapped, shift (0, 0) at index 0. */
  readonly at: Float32Array;
}

/** Lowest frequency that still counts, in turns per tile; below it lie shading and motifs. */
const lowestTurns = 4;

/**
 * Autocorrelation of what stands out in a spectrum.
 *
 * Noise and the general fall of power with frequency are taken off first, so that only what repeats is
 * left to be compared.
 *
 * @source none: Wiener and Khinchin's theorem on a whitened spectrum
 */
export function likenessOf({ size, power, prominence }: Spectrum): Likeness {
  const data = new Float64Array(2 * size * size);
  for (let y = 0; y < size; y += 1)
    for (let x = 0; x < size; x += 1) {
      const at = y * size + x;
      const u = x > size / 2 ? x - size : x;
      const v = y > size / 2 ? y - size : y;
      if (u * u + v * v < lowestTurns * lowestTurns) continue;
      const lift = Math.exp(prominence[at] ?? 0);
      if (lift <= Math.E) continue;
      const usual = (power[at] ?? 0) / lift;
      data[2 * at] = (lift - Math.E) * usual ** 0.5;
    }
  transform2d(data, size);
  const peak = data[0] ?? 0;
  const at = new Float32Array(size * size);
  if (peak > 0) for (let index = 0; index < at.length; index += 1) at[index] = (data[2 * index] ?? 0) / peak;
  return { size, at };
}

/** Likeness at a shift between whole pixels, by four neighbours. */
export function likenessAt({ size, at }: Likeness, dx: number, dy: number): number {
  const left = Math.floor(dx);
  const top = Math.floor(dy);
  const fx = dx - left;
  const fy = dy - top;
  const column = ((left % size) + size) % size;
  const row = ((top % size) + size) % size;
  const right = (column + 1) % size;
  const below = (row + 1) % size;
  const upper = (at[row * size + column] ?? 0) * (1 - fx) + (at[row * size + right] ?? 0) * fx;
  const lower = (at[below * size + column] ?? 0) * (1 - fx) + (at[below * size + right] ?? 0) * fx;
  return upper * (1 - fy) + lower * fy;
}
