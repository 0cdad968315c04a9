import type { FibreShares } from '../wash/index.ts';
import { equilibriumRegain } from './regain.ts';

/** Values and slopes at even steps, read between by cubic pieces; fast enough for the innermost loop. */
export interface EvenTable {
  readonly from: number;
  readonly perUnit: number;
  readonly values: Float64Array;
  readonly slopes: Float64Array;
}

/** How a fibre blend that dries holds its water. */
export interface Desorption {
  /** Regain at rest in saturated air [kg/kg]; above it water is free. */
  readonly saturation: number;
  /** Regain at rest by relative humidity 0 … 1. */
  readonly regain: EvenTable;
  /** Relative humidity of the surface by regain, 0 … saturation. */
  readonly activity: EvenTable;
}

const pieces = 400;

/** A share of water that even a fibre that takes none keeps as a film; without it the last drop would leave at once. */
const filmRegain = 0.004;

/**
 * A table of a function; slopes come from differences, so that a kink is rounded over one step only.
 *
 * @param from - first argument
 * @param to - last argument
 * @param steps - pieces between them
 * @param valueAt - the function
 * @source none: cubic Hermite pieces with the harmonic mean of neighbouring slopes
 */
function tableOf(from: number, to: number, steps: number, valueAt: (x: number) => number): EvenTable {
  const width = (to - from) / steps;
  const values = Float64Array.from({ length: steps + 1 }, (_, i) => valueAt(from + i * width));
  const at = (i: number) => values[i] ?? Number.NaN;
  const slopes = Float64Array.from({ length: steps + 1 }, (_, i) => {
    const [before, after] = [at(i) - at(i - 1), at(i + 1) - at(i)];
    if (i === 0) return after / width;
    if (i === steps) return before / width;
    // The harmonic mean keeps a rising table rising between its points.
    return before * after <= 0 ? 0 : (2 * before * after) / (before + after) / width;
  });
  return { from, perUnit: 1 / width, values, slopes };
}

/**
 * The desorption branch of a blend as tables, forwards and backwards.
 *
 * @param shares - shares of dry mass by fibre, adding up to 1
 * @returns regain by humidity and surface humidity by regain
 * @source ashrae-hvac-regain, table: Regain of Hygroscopic Materials; offsets morton-hearle (data/air/regain.json)
 * @accuracy the tables follow the isotherm to 1e-5 of regain
 */
export function desorptionOf(shares: FibreShares): Desorption {
  const at = (rh: number) =>
    Math.max(equilibriumRegain(shares, rh, 'from the wet side').likely, filmRegain * rh);
  const saturation = at(1);
  const held = tableOf(0, 1, pieces, at);
  const humidityAt = (regain: number): number => {
    if (regain >= saturation) return 1;
    let [low, high] = [0, 1];
    for (let i = 0; i < 44; i++) {
      const middle = (low + high) / 2;
      if (readTable(held, middle) < regain) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
  return { saturation, regain: held, activity: tableOf(0, saturation, pieces, humidityAt) };
}

/**
 * Reads a table; outside it the end's value holds.
 *
 * @source none: cubic Hermite pieces
 */
export function readTable({ from, perUnit, values, slopes }: EvenTable, x: number): number {
  const place = (x - from) * perUnit;
  const last = values.length - 1;
  if (!(place > 0)) return values[0] ?? Number.NaN;
  if (place >= last) return values[last] ?? Number.NaN;
  const i = Math.floor(place);
  const t = place - i;
  const v0 = values[i] ?? 0;
  const rise = (values[i + 1] ?? 0) - v0;
  const s0 = (slopes[i] ?? 0) / perUnit;
  const s1 = (slopes[i + 1] ?? 0) / perUnit;
  return v0 + t * (s0 + t * (3 * rise - 2 * s0 - s1 + t * (s0 + s1 - 2 * rise)));
}

/**
 * Slope of a table; zero outside it.
 *
 * @source none: derivative of the cubic Hermite pieces
 */
export function slopeOfTable({ from, perUnit, values, slopes }: EvenTable, x: number): number {
  const place = (x - from) * perUnit;
  const last = values.length - 1;
  if (!(place > 0) || place >= last) return 0;
  const i = Math.floor(place);
  const t = place - i;
  const rise = (values[i + 1] ?? 0) - (values[i] ?? 0);
  const s0 = (slopes[i] ?? 0) / perUnit;
  const s1 = (slopes[i + 1] ?? 0) / perUnit;
  return (s0 + t * (2 * (3 * rise - 2 * s0 - s1) + 3 * t * (s0 + s1 - 2 * rise))) * perUnit;
}
