/** How a logger writes its time. */
export const timeForms = ['iso', 'd.m.y', 'd/m/y', 'm/d/y', 'unix s'] as const;
export type TimeForm = (typeof timeForms)[number];

/** Minutes that local time is ahead of universal time at a moment [ms since 1970]. */
export type OffsetAt = (utcMs: number) => number;

const msPerMinute = 60_000;
const msPerDay = 86_400_000;

/** A moment as it was written: with its zone, or by a clock on the wall. */
export type WrittenTime =
  | { readonly kind: 'moment'; readonly utcMs: number }
  | { readonly kind: 'wall clock'; readonly localMs: number };

const daysIn = (year: number, month: number): number =>
  month === 2
    ? year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
      ? 29
      : 28
    : [4, 6, 9, 11].includes(month)
      ? 30
      : 31;

const clockForm = /^(\d{1,2})[:.](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?\s*([ap]m)?$/i;

/** Time of day [ms], or null where it is none. */
function clockMs(text: string): number | null {
  const found = clockForm.exec(text.trim());
  if (found === null) return null;
  const [, hourText, minuteText, secondText = '0', half] = found;
  const [written, minute, second] = [hourText, minuteText, secondText].map(Number);
  if (written === undefined || minute === undefined || second === undefined) return null;
  if (half !== undefined && (written < 1 || written > 12)) return null;
  const hour = half === undefined ? written : (written % 12) + (half.toLowerCase() === 'pm' ? 12 : 0);
  return hour > 23 || minute > 59 || second > 59 ? null : ((hour * 60 + minute) * 60 + second) * 1000;
}

const dateForms: Readonly<Record<Exclude<TimeForm, 'unix s'>, readonly [RegExp, 'ymd' | 'dmy' | 'mdy']>> = {
  iso: [/^(\d{4})-(\d{2})-(\d{2})$/, 'ymd'],
  'd.m.y': [/^(\d{1,2})\.(\d{1,2})\.(\d{2}|\d{4})$/, 'dmy'],
  'd/m/y': [/^(\d{1,2})\/(\d{1,2})\/(\d{2}|\d{4})$/, 'dmy'],
  'm/d/y': [/^(\d{1,2})\/(\d{1,2})\/(\d{2}|\d{4})$/, 'mdy'],
};

/** First moment of a written day, as if it were universal [ms], or null where there is no such day. */
function dayMs(text: string, form: Exclude<TimeForm, 'unix s'>): number | null {
  const [pattern, order] = dateForms[form];
  const found = pattern.exec(text);
  if (found === null) return null;
  const [a = 0, b = 0, c = 0] = found.slice(1).map(Number);
  const [writtenYear, month, day] = order === 'ymd' ? [a, b, c] : order === 'dmy' ? [c, b, a] : [c, a, b];
  const year = writtenYear < 100 ? 2000 + writtenYear : writtenYear;
  if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month)) return null;
  return Date.UTC(year, month - 1, day);
}

/**
 * A time as a logger wrote it.
 *
 * @param text - date and time of day, parted by a space or T; with its zone (Z, +02:00) where the form is iso
 * @param form - of the date
 * @returns a moment, or a wall clock's time, or null where it is neither
 * @source none: forms of dates in use, ISO 8601 among them
 */
export function writtenTime(text: string, form: TimeForm): WrittenTime | null {
  const trimmed = text.trim();
  if (form === 'unix s') {
    return /^\d{9,11}(\.\d+)?$/.test(trimmed) ? { kind: 'moment', utcMs: Number(trimmed) * 1000 } : null;
  }
  const zone = /(?:(Z)|([+-])(\d{2}):?(\d{2}))$/i.exec(trimmed.slice(10));
  const withoutZone = zone === null ? trimmed : trimmed.slice(0, trimmed.length - zone[0].length).trim();
  const parts = /^(\S+?)(?:[T\s]+(.+))?$/i.exec(withoutZone);
  const day = dayMs(parts?.[1] ?? '', form);
  const clock = parts?.[2] === undefined ? null : clockMs(parts[2]);
  if (day === null || clock === null) return null;
  const localMs = day + clock;
  if (zone === null) return { kind: 'wall clock', localMs };
  const minutes = Number(zone[3] ?? 0) * 60 + Number(zone[4] ?? 0);
  return { kind: 'moment', utcMs: localMs - (zone[2] === '-' ? -1 : 1) * minutes * msPerMinute };
}

/**
 * The moments a wall clock may have meant: two in the hour that comes twice in autumn, none in the one
 * that spring leaves out.
 *
 * @param localMs - as written [ms, as if universal]
 * @param offsetAt - of the place
 * @source none: search among the offsets of the day before and after
 */
export function momentsOf(localMs: number, offsetAt: OffsetAt): readonly number[] {
  const offsets = new Set([offsetAt(localMs - msPerDay), offsetAt(localMs + msPerDay)]);
  return [...offsets]
    .map((offset) => localMs - offset * msPerMinute)
    .filter((utcMs) => utcMs + offsetAt(utcMs) * msPerMinute === localMs)
    .sort((a, b) => a - b);
}
