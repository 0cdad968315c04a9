import settings from '../../../data/drying/settings.json' with { type: 'json' };
import type { AirRow, DryRoom } from './scenario.ts';
import { saturatedConcentration } from './surfaceFlux.ts';

export const secondsPerHour = 3600;

/** What is known of the room's air beforehand: what was measured, then what is scheduled; null where it follows from the model. */
export interface AirCourse {
  readonly measured: readonly AirRow[];
  /** [s]; the model takes over from here. */
  readonly measuredUntil: number;
  readonly scheduled: readonly AirRow[] | null;
}

/** Temperature and vapour of the given air at a time; null where they are not given. */
export interface GivenAir {
  readonly airC: number | null;
  /** [K/s] */
  readonly airCPerS: number;
  /** [kg/m³] */
  readonly vapour: number | null;
  /** [kg/m³s] */
  readonly vapourPerS: number;
}

const nothingGiven: GivenAir = { airC: null, airCPerS: 0, vapour: null, vapourPerS: 0 };

/** How far a row lies off the straight line between two others, in what counts as seen. */
function farness(row: AirRow, from: AirRow, to: AirRow): number {
  const share = (row.hour - from.hour) / (to.hour - from.hour);
  const off = (of: 'airC' | 'rh', least: number) => {
    const [a, b, at] = [from[of], to[of], row[of]];
    if (a === undefined || b === undefined || at === undefined) return 0;
    return Math.abs(at - a - share * (b - a)) / least;
  };
  return Math.max(off('airC', settings.logger.seenC), off('rh', settings.logger.seenRh));
}

/**
 * The rows that say something: those on the straight line between others are left out, since a logger
 * that writes every minute would slow every run.
 *
 * @param rows - in rising hours
 * @returns some of the rows, first and last among them
 * @source none: subdivision at the farthest row (data/drying/settings.json: what counts as seen)
 */
export function tellingRows(rows: readonly AirRow[]): readonly AirRow[] {
  const [first, last] = [rows[0], rows[rows.length - 1]];
  if (first === undefined || last === undefined || rows.length < 3) return rows;
  let far = 1;
  let split = 0;
  for (const [i, row] of rows.entries()) {
    const off = i === 0 || i === rows.length - 1 ? 0 : farness(row, first, last);
    if (off > far) [far, split] = [off, i];
  }
  if (split === 0) return [first, last];
  return [...tellingRows(rows.slice(0, split + 1)), ...tellingRows(rows.slice(split)).slice(1)];
}

/** What a room's data say of its air beforehand. */
export function airCourseOf({ air, airC, measured = [] }: DryRoom): AirCourse {
  const scheduled = air ?? (airC === undefined ? null : [{ hour: 0, airC }]);
  return {
    measured: tellingRows(measured),
    measuredUntil: (measured[measured.length - 1]?.hour ?? Number.NEGATIVE_INFINITY) * secondsPerHour,
    scheduled: scheduled === null ? null : tellingRows(scheduled),
  };
}

const rowVapour = ({ airC, rh }: AirRow): number | null =>
  rh === undefined ? null : rh * saturatedConcentration(airC);

function airOfRows(rows: readonly AirRow[], time: number): GivenAir {
  const hour = time / secondsPerHour;
  const after = rows.findIndex((row) => row.hour > hour);
  const before = rows[after === -1 ? rows.length - 1 : Math.max(0, after - 1)];
  const next = after <= 0 ? undefined : rows[after];
  if (before === undefined) return nothingGiven;
  const [from, to] = [rowVapour(before), next === undefined ? null : rowVapour(next)];
  if (next === undefined) return { ...nothingGiven, airC: before.airC, vapour: from };
  const length = (next.hour - before.hour) * secondsPerHour;
  const past = time - before.hour * secondsPerHour;
  const airCPerS = (next.airC - before.airC) / length;
  const vapourPerS = from === null || to === null ? 0 : (to - from) / length;
  return {
    airC: before.airC + past * airCPerS,
    airCPerS,
    vapour: from === null || (next.rh === undefined && past > 0) ? null : from + past * vapourPerS,
    vapourPerS,
  };
}

/**
 * The given air from a time on: measured while there are readings, scheduled after; straight between the
 * rows and held outside them.
 *
 * @param course - of the room
 * @param time - [s]
 * @source none: linear interpolation
 */
export function airAt({ measured, measuredUntil, scheduled }: AirCourse, time: number): GivenAir {
  if (time < measuredUntil) return airOfRows(measured, time);
  return scheduled === null ? nothingGiven : airOfRows(scheduled, time);
}

/** Times at which the given air bends [s]. */
export const bendsOf = ({ measured, scheduled }: AirCourse): readonly number[] => [
  ...(measured.length > 0 ? measured : []).map(({ hour }) => hour * secondsPerHour),
  ...(scheduled !== null && scheduled.length > 1 ? scheduled : []).map(({ hour }) => hour * secondsPerHour),
];

/** Whether the vapour of the air is measured at every time before this [s]. */
export const vapourIsGivenUntil = ({ measuredUntil, scheduled }: AirCourse, time: number): boolean =>
  measuredUntil >= time || (scheduled?.every(({ rh }) => rh !== undefined) ?? false);
