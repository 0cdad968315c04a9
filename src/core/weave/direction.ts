import type { Spectrum } from './spectrum.ts';

/** How the two families of yarn lie: direction of the frequency of columns and of rows [rad, clockwise]. */
export interface Directions {
  /** Normal of the columns, from the picture's horizontal. */
  readonly columns: number;
  /** Normal of the rows, from the picture's vertical. */
  readonly rows: number;
  /** Prominence gathered along both [nats]. */
  readonly strength: number;
}

const degree = Math.PI / 180;
const stepDeg = 0.5;
/** Columns and rows of a rug on the loom are square within this. */
const mostSkewDeg = 6;
/** Lowest peak that is looked at [nats], and how far off a line it may lie [turns per tile]. */
const leastPeak = 1;
const lineWidth = 0.8;

/** Prominence between whole frequencies. */
export function prominenceAt({ size, prominence }: Spectrum, u: number, v: number): number {
  const left = Math.floor(u);
  const top = Math.floor(v);
  const fx = u - left;
  const fy = v - top;
  const column = ((left % size) + size) % size;
  const row = ((top % size) + size) % size;
  const right = (column + 1) % size;
  const below = (row + 1) % size;
  const upper =
    (prominence[row * size + column] ?? 0) * (1 - fx) + (prominence[row * size + right] ?? 0) * fx;
  const lower =
    (prominence[below * size + column] ?? 0) * (1 - fx) + (prominence[below * size + right] ?? 0) * fx;
  return upper * (1 - fy) + lower * fy;
}

interface Peak {
  readonly u: number;
  readonly v: number;
  readonly height: number;
}

/** Local maxima of the prominence, placed between bins by parabolas; one of each mirrored pair. */
function peaksOf({ size, prominence }: Spectrum, least: number, most: number): readonly Peak[] {
  const at = (u: number, v: number): number =>
    prominence[((v + size) % size) * size + ((u + size) % size)] ?? 0;
  const shift = (before: number, here: number, after: number): number => {
    const bend = before - 2 * here + after;
    return bend < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (before - after)) / bend)) : 0;
  };
  const peaks: Peak[] = [];
  const reach = Math.floor(most);
  for (let v = -reach; v <= reach; v += 1)
    for (let u = v > 0 ? -reach : 0; u <= reach; u += 1) {
      const radius = Math.hypot(u, v);
      if (radius < least || radius > most) continue;
      const here = at(u, v);
      if (here < leastPeak) continue;
      const [left, right, above, below] = [at(u - 1, v), at(u + 1, v), at(u, v - 1), at(u, v + 1)];
      if (here < left || here <= right || here < above || here <= below) continue;
      peaks.push({ u: u + shift(left, here, right), v: v + shift(above, here, below), height: here });
    }
  return peaks;
}

/** Strength of the three strongest peaks on a line through zero. */
function onLine(peaks: readonly Peak[], cos: number, sin: number): number {
  let [first, second, third] = [0, 0, 0];
  for (const { u, v, height } of peaks) {
    const off = (u * sin - v * cos) / lineWidth;
    if (Math.abs(off) > 3 || Math.abs(u * cos + v * sin) < Math.abs(u * sin - v * cos)) continue;
    const value = height * Math.exp(-0.5 * off * off);
    if (value > first) [first, second, third] = [value, first, second];
    else if (value > second) [second, third] = [value, second];
    else if (value > third) third = value;
  }
  return first + 0.5 * second + 0.25 * third;
}

/**
 * Finds how columns and rows lie, both within so many degrees of the picture's axes.
 *
 * @param mostDeg - largest angle to either axis [°]
 * @source none: this project's; nearly square families share most of their angle
 */
export function findDirections(spectra: readonly Spectrum[], mostDeg: number): Directions {
  const size = spectra[0]?.size ?? 0;
  const steps = Math.round(mostDeg / stepDeg);
  const least = Math.max(5, size / 40);
  const most = size / 3.2;
  const peaks = spectra.map((spectrum) => peaksOf(spectrum, least, most));
  const along = (cos: number, sin: number): number =>
    peaks.reduce((sum, those) => sum + onLine(those, cos, sin), 0) / peaks.length;
  const columns: number[] = [];
  const rows: number[] = [];
  for (let step = -steps; step <= steps; step += 1) {
    const angle = step * stepDeg * degree;
    columns.push(along(Math.cos(angle), Math.sin(angle)));
    rows.push(along(-Math.sin(angle), Math.cos(angle)));
  }
  let best = { columns: 0, rows: 0, strength: Number.NEGATIVE_INFINITY };
  const reach = Math.round(mostSkewDeg / stepDeg);
  for (let a = 0; a <= 2 * steps; a += 1)
    for (let b = Math.max(0, a - reach); b <= Math.min(2 * steps, a + reach); b += 1) {
      const skew = (a - b) * stepDeg;
      const tilt = (a + b - 2 * steps) * 0.5 * stepDeg;
      const strength = (columns[a] ?? 0) + (rows[b] ?? 0) - 0.012 * skew * skew - 0.02 * Math.abs(tilt);
      if (strength <= best.strength) continue;
      best = { columns: (a - steps) * stepDeg * degree, rows: (b - steps) * stepDeg * degree, strength };
    }
  const closer = (angle: number, strengthAt: (at: number) => number): number => {
    let [most, found] = [Number.NEGATIVE_INFINITY, angle];
    for (let step = -4; step <= 4; step += 1) {
      const at = angle + step * 0.12 * degree;
      const value = strengthAt(at);
      if (value > most) [most, found] = [value, at];
    }
    return found;
  };
  return {
    columns: closer(best.columns, (angle) => along(Math.cos(angle), Math.sin(angle))),
    rows: closer(best.rows, (angle) => along(-Math.sin(angle), Math.cos(angle))),
    strength: best.strength,
  };
}
