import { cellsOf, type Separator, separators, writtenNumber } from './loggerTable.ts';
import { type TimeForm, timeForms, writtenTime } from './loggerTime.ts';
import type { LoggerMapping } from './readLogger.ts';

/** What a logger's file seems to hold, to be looked at by a person. */
export interface LoggerGuess {
  readonly mapping: LoggerMapping;
  readonly headers: readonly string[];
  readonly firstRows: readonly (readonly string[])[];
  /** False where the day could be the month, or which column is which was taken by its place. */
  readonly sure: boolean;
}

const linesLookedAt = 200;
const rowsShown = 3;

interface TimeFound {
  readonly time: number;
  readonly clock?: number;
  readonly form: TimeForm;
}

/** Column and form of the time in a row of cells: whole, or day and time of day side by side. */
function timeIn(cells: readonly string[]): TimeFound | null {
  for (const form of timeForms) {
    const whole = cells.findIndex((cell) => writtenTime(cell, form) !== null);
    if (whole !== -1) return { time: whole, form };
    const parted = cells.findIndex((cell, i) => writtenTime(`${cell} ${cells[i + 1] ?? ''}`, form) !== null);
    if (parted !== -1) return { time: parted, clock: parted + 1, form };
  }
  return null;
}

const numbersIn = (cells: readonly string[], decimal: '.' | ',', time: TimeFound): readonly number[] =>
  cells.flatMap((cell, i) =>
    i !== time.time && i !== time.clock && writtenNumber(cell, decimal) !== null ? [i] : [],
  );

/** A day written with slashes can be read two ways; a number above 12 tells which. */
function slashForm(dates: readonly string[]): { readonly form: TimeForm; readonly sure: boolean } {
  const parts = dates.map((date) => date.split('/').map(Number.parseFloat));
  if (parts.some(([, second = 0]) => second > 12)) return { form: 'm/d/y', sure: true };
  return { form: 'd/m/y', sure: parts.some(([first = 0]) => first > 12) };
}

interface Reading {
  readonly separator: Separator;
  readonly decimal: '.' | ',';
  readonly lines: readonly (readonly string[])[];
  readonly first: number;
  readonly found: TimeFound;
  readonly numbers: readonly number[];
}

function readingBy(text: string, separator: Separator, decimal: '.' | ','): Reading | null {
  const lines = cellsOf(text, separator).slice(0, linesLookedAt);
  for (const [first, cells] of lines.entries()) {
    const found = timeIn(cells);
    const numbers = found === null ? [] : numbersIn(cells, decimal, found);
    if (found !== null && numbers.length >= 2) return { separator, decimal, lines, first, found, numbers };
  }
  return null;
}

const readings = (text: string): readonly Reading[] =>
  separators.flatMap((separator) =>
    (['.', ','] as const).flatMap((decimal) =>
      decimal === separator ? [] : [readingBy(text, separator, decimal) ?? []].flat(),
    ),
  );

/**
 * A proposal which column of a logger's file holds what.
 *
 * @param text - of the file
 * @returns mapping, headers and first rows to show, or null where no row holds a time and two numbers
 * @source none: the first row that can be read, its header, and the values themselves
 */
export function guessLogger(text: string): LoggerGuess | null {
  const [best] = [...readings(text)].sort((a, b) => a.first - b.first);
  if (best === undefined) return null;
  const { separator, decimal, lines, first, found, numbers } = best;
  const rows = lines.slice(first).filter((cells) => cells.length > 1);
  const headers = first > 0 ? (lines[first - 1] ?? []) : [];
  const named = (pattern: RegExp) => numbers.find((i) => pattern.test(headers[i] ?? ''));
  const byName = {
    temperature: named(/temp|°\s*[cf]\b|celsius|fahrenheit/i),
    humidity: named(/hum|feucht|\brh\b|%/i),
  };
  const temperature = byName.temperature ?? numbers.find((i) => i !== byName.humidity) ?? 0;
  const humidity = byName.humidity ?? numbers.find((i) => i !== temperature) ?? 0;
  const values = (column: number) =>
    rows.flatMap((cells) => writtenNumber(cells[column] ?? '', decimal) ?? []);
  const slash = found.form.includes('/') ? slashForm(rows.map((cells) => cells[found.time] ?? '')) : null;
  const unitSaid = `${headers[temperature] ?? ''} ${rows[0]?.[temperature] ?? ''}`;
  return {
    mapping: {
      ...{ separator, decimal, skipLines: first },
      columns: {
        time: found.time,
        ...(found.clock === undefined ? {} : { clock: found.clock }),
        ...{ temperature, humidity },
      },
      timeForm: slash?.form ?? found.form,
      temperatureUnit: /°?\s*F\b|fahrenheit/i.test(unitSaid) ? '°F' : '°C',
      humidityUnit: values(humidity).every((value) => value <= 1) ? 'of 1' : '%',
    },
    headers,
    firstRows: rows.slice(0, rowsShown),
    sure: (slash?.sure ?? true) && byName.temperature !== undefined && byName.humidity !== undefined,
  };
}
