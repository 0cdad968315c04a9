import FFT from 'fft.js';

/** How far one square of a picture lies from the same square of another, and how alike they are. */
export interface Shift {
  readonly dx: number;
  readonly dy: number;
}

/** Transforms a square of complex numbers, rows then columns, in place. */
function transform(side: number, data: Float64Array, inverse: boolean): void {
  const fft = new FFT(side);
  const line = new Float64Array(2 * side);
  const out = new Float64Array(2 * side);
  const pass = (start: number, step: number): void => {
    for (let at = 0; at < side; at += 1) {
      line[2 * at] = data[start + at * step] ?? 0;
      line[2 * at + 1] = data[start + at * step + 1] ?? 0;
    }
    if (inverse) fft.inverseTransform(out, line);
    else fft.transform(out, line);
    for (let at = 0; at < side; at += 1) {
      data[start + at * step] = out[2 * at] ?? 0;
      data[start + at * step + 1] = out[2 * at + 1] ?? 0;
    }
  };
  for (let row = 0; row < side; row += 1) pass(2 * row * side, 2);
  for (let column = 0; column < side; column += 1) pass(2 * column, 2 * side);
}

/**
 * The shift between two squares, from the phases of their spectra.
 *
 * @param before - values of a square, row by row, already free of slow change
 * @param after - the same of the other picture
 * @param side - pixels, a power of two
 * @returns where the content of `before` lies in `after`, to a tenth of a pixel
 * @source none: phase correlation (Kuglin and Hines 1975), the peak refined by a parabola
 */
export function phaseShift(before: Float32Array, after: Float32Array, side: number): Shift {
  // Both squares in one transform: one as the real, the other as the imaginary part.
  const data = new Float64Array(2 * side * side);
  const bell = Float64Array.from({ length: side }, (_, at) => Math.sin((Math.PI * (at + 0.5)) / side) ** 2);
  // Fine detail is pile and noise, which no two pictures share.
  const coarse = Float64Array.from({ length: side }, (_, at) =>
    Math.exp(-((Math.min(at, side - at) / (0.22 * side)) ** 2)),
  );
  for (let y = 0; y < side; y += 1)
    for (let x = 0; x < side; x += 1) {
      const window = (bell[x] ?? 0) * (bell[y] ?? 0);
      const at = y * side + x;
      data[2 * at] = (before[at] ?? 0) * window;
      data[2 * at + 1] = (after[at] ?? 0) * window;
    }
  transform(side, data, false);
  const cross = new Float64Array(2 * side * side);
  for (let v = 0; v < side; v += 1)
    for (let u = 0; u < side; u += 1) {
      const at = 2 * (v * side + u);
      const mirror = 2 * (((side - v) % side) * side + ((side - u) % side));
      const [zr, zi, wr, wi] = [data[at] ?? 0, data[at + 1] ?? 0, data[mirror] ?? 0, data[mirror + 1] ?? 0];
      const [ar, ai, br, bi] = [(zr + wr) / 2, (zi - wi) / 2, (zi + wi) / 2, (wr - zr) / 2];
      const [re, im] = [ar * br + ai * bi, ar * bi - ai * br];
      const size = Math.sqrt(re * re + im * im);
      const keep = (coarse[u] ?? 0) * (coarse[v] ?? 0);
      if (size > 0) {
        cross[at] = (keep * re) / size;
        cross[at + 1] = (keep * im) / size;
      }
    }
  transform(side, cross, true);
  let [best, top] = [0, Number.NEGATIVE_INFINITY];
  for (let at = 0; at < side * side; at += 1) {
    const value = cross[2 * at] ?? 0;
    if (value > top) [best, top] = [at, value];
  }
  const [px, py] = [best % side, Math.floor(best / side)];
  const value = (x: number, y: number): number =>
    cross[2 * (((y + side) % side) * side + ((x + side) % side))] ?? 0;
  const vertex = (less: number, more: number): number => {
    const bend = less - 2 * top + more;
    return bend < 0 ? (less - more) / (2 * bend) : 0;
  };
  const signed = (at: number): number => (at > side / 2 ? at - side : at);
  return {
    dx: signed(px) + vertex(value(px - 1, py), value(px + 1, py)),
    dy: signed(py) + vertex(value(px, py - 1), value(px, py + 1)),
  };
}

/**
 * Correlation of two sets of values.
 *
 * @returns −1 … 1; 0 where one of them does not vary
 * @source none: Pearson's coefficient
 */
export function likenessOf(one: Float32Array, other: Float32Array): number {
  let [sx, sy, sxx, syy, sxy] = [0, 0, 0, 0, 0];
  for (let at = 0; at < one.length; at += 1) {
    const [x, y] = [one[at] ?? 0, other[at] ?? 0];
    sx += x;
    sy += y;
    sxx += x * x;
    syy += y * y;
    sxy += x * y;
  }
  const n = one.length;
  const [vx, vy] = [sxx - (sx * sx) / n, syy - (sy * sy) / n];
  return vx > 0 && vy > 0 ? (sxy - (sx * sy) / n) / Math.sqrt(vx * vy) : 0;
}
