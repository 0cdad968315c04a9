import settings from '../../../data/drying/settings.json' with { type: 'json' };
import { done, type Problem, type Result, refused } from '../../units/index.ts';
import { cellsOf, type Separator, writtenNumber } from './loggerTable.ts';
import { momentsOf, type OffsetAt, type TimeForm, type WrittenTime, writtenTime } from './loggerTime.ts';

/** Where a logger's file holds what; columns count from 0. */
export interface LoggerMapping {
  readonly separator: Separator;
  readonly decimal: '.' | ',';
  /** Lines before the first row of values. */
  readonly skipLines: number;
  readonly columns: {
    readonly time: number;
    /** Time of day, where the file keeps it in a column of its own. */
    readonly clock?: number | undefined;
    readonly temperature: number;
    readonly humidity: number;
  };
  readonly timeForm: TimeForm;
  readonly temperatureUnit: '°C' | '°F';
  readonly humidityUnit: '%' | 'of 1';
}

/** What has to be said of a logger's file; lines count from 1. */
export type LoggerNote =
  | {
      readonly code: 'row-unreadable';
      readonly line: number;
      readonly field: LoggerField;
      readonly text: string;
    }
  | {
      readonly code: 'value-impossible';
      readonly line: number;
      readonly field: 'temperature' | 'humidity';
      readonly value: number;
    }
  /** The same moment again; the first row is kept. `differs`: not with the same values. */
  | { readonly code: 'time-doubled'; readonly line: number; readonly differs: boolean }
  /** The clock went back. `hours` 1 is the autumn change where the place is not known: it was put right. */
  | { readonly code: 'clock-back'; readonly line: number; readonly hours: number; readonly putRight: boolean }
  /** An hour is missing just as the clocks of spring would take it. */
  | { readonly code: 'clock-forward'; readonly line: number }
  | { readonly code: 'gap'; readonly line: number; readonly hours: number };

export type LoggerField = 'time' | 'temperature' | 'humidity';

export interface LoggerRow {
  /** [ms since 1970, universal] */
  readonly at: number;
  readonly airC: number;
  readonly rh: number;
}

export interface LoggerAir {
  /** In rising time. */
  readonly rows: readonly LoggerRow[];
  readonly notes: readonly LoggerNote[];
  readonly leftOut: number;
}

export type LoggerProblem =
  | Problem<'logger-empty', Readonly<Record<string, never>>>
  | Problem<
      'logger-column-missing',
      { readonly field: LoggerField; readonly column: number; readonly columns: number }
    >
  | Problem<
      'logger-mostly-unreadable',
      {
        readonly line: number;
        readonly field: LoggerField;
        readonly text: string;
        readonly leftOut: number;
        readonly rows: number;
      }
    >;

const msPerMinute = 60_000;
const msPerHour = 3_600_000;
const msPerDay = 24 * msPerHour;
/** Clocks are changed at night everywhere. */
const nightUntilHour = 5;

type ReadRow =
  | { readonly ok: true; readonly time: WrittenTime; readonly airC: number; readonly rh: number }
  | { readonly ok: false; readonly field: LoggerField; readonly text: string; readonly value: number | null };

function readRow(cells: readonly string[], mapping: LoggerMapping): ReadRow {
  const { columns, decimal, timeForm, temperatureUnit, humidityUnit } = mapping;
  const cell = (column: number): string => cells[column] ?? '';
  const timeText =
    columns.clock === undefined ? cell(columns.time) : `${cell(columns.time)} ${cell(columns.clock)}`;
  const wrong = (field: LoggerField, text: string, value: number | null = null) =>
    ({ ok: false, field, text, value }) as const;
  const time = writtenTime(timeText, timeForm);
  if (time === null) return wrong('time', timeText);
  const temperature = writtenNumber(cell(columns.temperature), decimal);
  if (temperature === null) return wrong('temperature', cell(columns.temperature));
  const humidity = writtenNumber(cell(columns.humidity), decimal);
  if (humidity === null) return wrong('humidity', cell(columns.humidity));
  const airC = temperatureUnit === '°C' ? temperature : (temperature - 32) / 1.8;
  const rh = humidityUnit === '%' ? humidity / 100 : humidity;
  const { leastC, mostC } = settings.logger;
  if (airC < leastC || airC > mostC) return wrong('temperature', cell(columns.temperature), temperature);
  if (rh < 0 || rh > 1) return wrong('humidity', cell(columns.humidity), humidity);
  return { ok: true, time, airC, rh };
}

/** The middle of the time between neighbouring rows [ms]; 0 for fewer than two. */
function usualInterval(times: readonly number[]): number {
  const apart = times
    .slice(1)
    .map((time, i) => time - (times[i] ?? time))
    .filter((ms) => ms > 0)
    .sort((a, b) => a - b);
  return apart[Math.floor(apart.length / 2)] ?? 0;
}

/** Puts wall-clock times into moments, one row after the other, and says where the clock was changed. */
function makeClock(offsetAt: OffsetAt | null, interval: number) {
  let shift = 0;
  return (time: WrittenTime, before: number | null): { at: number; said: 'back' | 'forward' | null } => {
    if (time.kind === 'moment') return { at: time.utcMs, said: null };
    if (offsetAt !== null) {
      const moments = momentsOf(time.localMs, offsetAt);
      const later = moments.find((moment) => before === null || moment > before);
      const at = later ?? moments[0];
      if (at !== undefined) return { at, said: null };
      return { at: time.localMs - offsetAt(time.localMs - msPerHour) * msPerMinute, said: 'forward' };
    }
    const at = time.localMs + shift;
    const inNight = time.localMs % msPerDay < nightUntilHour * msPerHour;
    const back = before === null ? 0 : before - at;
    if (before !== null && inNight && back > 0 && Math.abs(back + interval - msPerHour) <= 0.5 * interval) {
      shift += msPerHour;
      return { at: at + msPerHour, said: 'back' };
    }
    const lost = before === null ? 0 : at - before - interval;
    const isForward = inNight && interval <= msPerHour / 2 && Math.abs(lost - msPerHour) <= 0.2 * interval;
    return { at, said: isForward ? 'forward' : null };
  };
}

function columnProblem(lines: readonly (readonly string[])[], mapping: LoggerMapping) {
  const columns = Math.max(0, ...lines.map((cells) => cells.length));
  const { time, temperature, humidity } = mapping.columns;
  const wanted = [
    ['time', time],
    ['temperature', temperature],
    ['humidity', humidity],
  ] as const;
  const missing = wanted.find(([, column]) => column >= columns || column < 0);
  if (missing === undefined) return null;
  return refused('logger-column-missing', { field: missing[0], column: missing[1] + 1, columns });
}

/**
 * The air a logger wrote down, in moments and fractions, with what is wrong in its file said line by line.
 * Rows that cannot be right are left out and told, never mended.
 *
 * @param text - of the file
 * @param mapping - which column holds what, in which form and unit
 * @param offsetAt - minutes of local time ahead of universal time; when absent, wall-clock times count as universal
 * @returns rows in rising time
 * @refuses logger-empty, logger-column-missing, logger-mostly-unreadable (more than a fifth of the rows)
 * @source workshop-setting, what a logger may be (data/drying/settings.json)
 */
export function readLogger(
  text: string,
  mapping: LoggerMapping,
  offsetAt?: OffsetAt,
): Result<LoggerAir, LoggerProblem> {
  const lines = cellsOf(text, mapping.separator);
  const filled = lines
    .map((cells, i) => ({ cells, line: i + 1 }))
    .slice(mapping.skipLines)
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  if (filled.length === 0) return refused('logger-empty', {});
  const missing = columnProblem(
    filled.map(({ cells }) => cells),
    mapping,
  );
  if (missing !== null) return missing;
  const read = filled.map(({ cells, line }) => ({ line, row: readRow(cells, mapping) }));
  const wrong = read.flatMap(({ line, row }) => (row.ok ? [] : [{ line, ...row }]));
  const [first] = wrong;
  if (first !== undefined && wrong.length > settings.logger.mostWrong * read.length) {
    const { line, field, text: found } = first;
    const facts = { line, field, text: found, leftOut: wrong.length, rows: read.length };
    return refused('logger-mostly-unreadable', facts);
  }
  const notes: LoggerNote[] = wrong.map(({ line, field, text: found, value }) =>
    value !== null && field !== 'time'
      ? { code: 'value-impossible', line, field, value }
      : { code: 'row-unreadable', line, field, text: found },
  );
  const rows: LoggerRow[] = [];
  const interval = usualInterval(
    read.flatMap(({ row }) =>
      row.ok ? [row.time.kind === 'moment' ? row.time.utcMs : row.time.localMs] : [],
    ),
  );
  const momentOf = makeClock(offsetAt ?? null, interval);
  for (const { line, row } of read) {
    if (!row.ok) continue;
    const before = rows[rows.length - 1];
    const { at, said } = momentOf(row.time, before?.at ?? null);
    const { airC, rh } = row;
    if (said === 'back') notes.push({ code: 'clock-back', line, hours: 1, putRight: true });
    if (said === 'forward') notes.push({ code: 'clock-forward', line });
    const apart = before === undefined ? 1 : at - before.at;
    if (before !== undefined && apart === 0) {
      notes.push({ code: 'time-doubled', line, differs: airC !== before.airC || rh !== before.rh });
    } else if (apart < 0) {
      notes.push({ code: 'clock-back', line, hours: -apart / msPerHour, putRight: false });
    } else {
      if (apart > Math.max(settings.logger.gapIntervals * interval, settings.logger.gapHours * msPerHour)) {
        notes.push({ code: 'gap', line, hours: apart / msPerHour });
      }
      rows.push({ at, airC, rh });
    }
  }
  return done({
    rows,
    notes: notes.sort((a, b) => a.line - b.line),
    leftOut: filled.length - rows.length,
  });
}
