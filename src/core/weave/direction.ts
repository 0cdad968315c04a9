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

/** Strength of the three strongest frequencies on a line through zero. */
function onLine(spectrum: Spectrum, cos: number, sin: number, least: number, most: number): number {
  let [first, second, third] = [0, 0, 0];
  let [before, now] = [0, 0];
  for (let radius = least; radius <= most; radius += 0.5) {
    const next = prominenceAt(spectrum, radius * cos, radius * sin);
    if (now > before && now >= next) {
      if (now > first) [first, second, third] = [now, first, second];
      else if (now > second) [second, third] = [now, second];
      else if (now > third) third = now;
    }
    [before, now] = [now, next];
  }
  return first + 0.5 * second + 0.25 * third;
}

/**
 * Finds how columns and rows lie, both within so many degrees of the picture's axes.
 *
 * @param mostDeg - largest angle to either axis [°]
 * @source none: this project's; nearly square families share most of their angle
 */
export function findDirections(spectrum: Spectrum, mostDeg: number): Directions {
  const { size } = spectrum;
  const steps = Math.round(mostDeg / stepDeg);
  const least = Math.max(5, size / 40);
  const most = size / 3.2;
  const columns: number[] = [];
  const rows: number[] = [];
  for (let step = -steps; step <= steps; step += 1) {
    const angle = step * stepDeg * degree;
    columns.push(onLine(spectrum, Math.cos(angle), Math.sin(angle), least, most));
    rows.push(onLine(spectrum, -Math.sin(angle), Math.cos(angle), least, most));
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
  const closer = (angle: number, along: (at: number) => number): number => {
    let [most, found] = [Number.NEGATIVE_INFINITY, angle];
    for (let step = -4; step <= 4; step += 1) {
      const at = angle + step * 0.12 * degree;
      const value = along(at);
      if (value > most) [most, found] = [value, at];
    }
    return found;
  };
  return {
    columns: closer(best.columns, (angle) => onLine(spectrum, Math.cos(angle), Math.sin(angle), least, most)),
    rows: closer(best.rows, (angle) => onLine(spectrum, -Math.sin(angle), Math.cos(angle), least, most)),
    strength: best.strength,
  };
}
