import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loggerNoteWords } from '../../text/loggerWords.ts';
import { guessLogger } from './guessLogger.ts';
import { writtenTime } from './loggerTime.ts';
import { type LoggerMapping, readLogger } from './readLogger.ts';

const plain: LoggerMapping = {
  separator: ',',
  decimal: '.',
  skipLines: 1,
  columns: { time: 0, temperature: 1, humidity: 2 },
  timeForm: 'iso',
  temperatureUnit: '°C',
  humidityUnit: '%',
};
const fileOf = (...rows: readonly string[]) => ['time,temperature,humidity', ...rows].join('\r\n');
const readOf = (text: string, mapping = plain, offsetAt?: (utcMs: number) => number) => {
  const found = readLogger(text, mapping, offsetAt);
  if (!found.ok) throw new Error(found.problem.code);
  return found.value;
};
const utc = (text: string) => Date.parse(`${text}Z`);

/** Central European time: summer time from the last Sunday of March to that of October, at 1 h universal time. */
const centralEurope = (utcMs: number) =>
  utcMs >= utc('2026-03-29T01:00:00') && utcMs < utc('2026-10-25T01:00:00') ? 120 : 60;

test('a plain file gives moments, degrees and fractions', () => {
  const { rows, notes } = readOf(fileOf('2026-11-02T08:00:00,24.5,51', '2026-11-02 08:10,24.6,50.5'));
  expect(rows).toEqual([
    { at: utc('2026-11-02T08:00:00'), airC: 24.5, rh: 0.51 },
    { at: utc('2026-11-02T08:10:00'), airC: 24.6, rh: 0.505 },
  ]);
  expect(notes).toEqual([]);
});

describe('what is wrong in a file is said by line, and never mended', () => {
  const good = ['00', '10', '20', '30', '40', '50'].map((minute) => `2026-11-02T08:${minute}:00,24,50`);
  const noteOf = (...rows: readonly string[]) => readOf(fileOf(...good, ...rows)).notes;

  test.each([
    ['a humidity of 140', '2026-11-02T09:00:00,24,140', 'value-impossible', 'humidity of 140'],
    ['a temperature of 450', '2026-11-02T09:00:00,450,40', 'value-impossible', 'temperature of 450'],
    ['a word for a number', '2026-11-02T09:00:00,24,err', 'row-unreadable', '“err”'],
    ['a day that is none', '2026-11-31T09:00:00,24,40', 'row-unreadable', '2026-11-31'],
    ['the same row again', good[5] ?? '', 'time-doubled', 'counts once'],
    ['the same time with other values', '2026-11-02T08:50:00,28,50', 'time-doubled', 'other values'],
    ['a clock put back by days', '2026-10-20T08:00:00,24,50', 'clock-back', 'left out'],
    ['silence for a day', '2026-11-03T08:50:00,24,50', 'gap', 'nothing for 24 h'],
  ])('%s', (_name, row, code, said) => {
    const [note] = noteOf(row);
    expect(note?.code).toBe(code);
    expect(note?.line).toBe(8);
    expect(note === undefined ? '' : loggerNoteWords(note)).toContain(said);
  });
  test('what is left out is counted, what is kept stays in rising time', () => {
    const { rows, leftOut } = readOf(fileOf(...good, 'x,1,2', good[0] ?? ''));
    expect(leftOut).toBe(2);
    expect(rows.map(({ at }) => at)).toEqual(rows.map(({ at }) => at).sort((a, b) => a - b));
  });
});

describe('when the clocks change (Directive 2000/84/EC: last Sundays of March and October, at 1 h universal time)', () => {
  const local = (day: string, from: number, count: number, skip: (hour: number) => readonly number[]) =>
    Array.from({ length: count }, (_, i) => from + i).flatMap((hour) =>
      skip(hour).map(
        (minute) => `${day} ${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')},24,50`,
      ),
    );
  const half = () => [0, 30];
  const apart = (text: string, offsetAt?: (utcMs: number) => number) => {
    const { rows } = readOf(text, plain, offsetAt);
    return new Set(rows.slice(1).map(({ at }, i) => (at - (rows[i]?.at ?? 0)) / 60_000));
  };
  const autumn = fileOf(...local('2026-10-25', 0, 3, half), ...local('2026-10-25', 2, 4, half));
  const spring = fileOf(...local('2026-03-29', 0, 2, half), ...local('2026-03-29', 3, 3, half));

  test('the hour that comes twice is two hours, with the place known or guessed', () => {
    expect([...apart(autumn, centralEurope)]).toEqual([30]);
    expect([...apart(autumn)]).toEqual([30]);
    expect(readOf(autumn, plain, centralEurope).notes).toEqual([]);
    expect(readOf(autumn).notes).toEqual([{ code: 'clock-back', line: 8, hours: 1, putRight: true }]);
  });
  test('the hour that spring leaves out is none where the place is known, and a question where not', () => {
    expect([...apart(spring, centralEurope)]).toEqual([30]);
    expect(readOf(spring).notes.map(({ code }) => code)).toContain('clock-forward');
  });
  test('a time in the hour that does not exist is said', () => {
    const text = fileOf('2026-03-29 01:30,24,50', '2026-03-29 02:30,24,50', '2026-03-29 03:45,24,50');
    expect(readOf(text, plain, centralEurope).notes[0]).toEqual({ code: 'clock-forward', line: 3 });
  });
});

test('a file that is mostly wrong is refused with its first wrong line', () => {
  const text = fileOf(
    '2026-11-02T08:00:00,51,24.5',
    '2026-11-02T08:10:00,400,24',
    '2026-11-02T08:20:00,x,24',
  );
  const found = readLogger(text, plain);
  expect(found.ok ? '' : found.problem).toMatchObject({
    code: 'logger-mostly-unreadable',
    facts: { line: 3, field: 'temperature', leftOut: 2, rows: 3 },
  });
});

test('an empty file and a column that is not there are refused', () => {
  expect(readLogger('', plain)).toMatchObject({ ok: false, problem: { code: 'logger-empty' } });
  expect(
    readLogger(fileOf('2026-11-02T08:00:00,24'), {
      ...plain,
      columns: { time: 0, temperature: 1, humidity: 2 },
    }),
  ).toMatchObject({
    ok: false,
    problem: { code: 'logger-column-missing', facts: { field: 'humidity', column: 3 } },
  });
});

describe('a proposal of what a file holds', () => {
  test.each([
    [
      'a plain file',
      fileOf('2026-11-02T08:00:00,24.5,51'),
      { separator: ',', skipLines: 1, humidityUnit: '%' },
    ],
    [
      'semicolons, decimal commas, a preamble, day and clock apart, humidity first',
      'Serial;0417\n\nDatum;Uhrzeit;rel. Feuchte %;Temp °C\n02.11.2026;08:00:00;51,5;24,5\n02.11.2026;08:10:00;51,0;24,6',
      {
        ...{ separator: ';', decimal: ',', skipLines: 3, timeForm: 'd.m.y' },
        columns: { time: 0, clock: 1, temperature: 3, humidity: 2 },
      },
    ],
    [
      'days after months, degrees Fahrenheit, quotes, half days',
      '"Time","Temp (°F)","RH (%)"\n"11/22/2026 08:00 PM","76.1","51"',
      { timeForm: 'm/d/y', temperatureUnit: '°F' },
    ],
    [
      'seconds since 1970 and fractions',
      'ts\thumidity\ttemp\n1793606400\t0.51\t24.5',
      {
        separator: '\t',
        timeForm: 'unix s',
        humidityUnit: 'of 1',
        columns: { time: 0, temperature: 2, humidity: 1 },
      },
    ],
  ])('%s', (_name, text, expected) => {
    const guess = guessLogger(text);
    expect(guess?.mapping).toMatchObject(expected);
    if (guess === null) return;
    expect(guess.sure).toBe(true);
    const [row] = readOf(text, guess.mapping).rows;
    expect(row?.airC).toBeCloseTo(24.5, 6);
    expect(row?.rh).toBeCloseTo(0.51, 1);
  });
  test('a day that could be a month is not sure, and a letter is no file', () => {
    expect(guessLogger('time,temp,rh\n02/03/2026 08:00,24,50')?.sure).toBe(false);
    expect(guessLogger('Dear workshop,\nthe rug, as agreed, is ready.')).toBeNull();
  });
});

test('a written moment is the same in every zone it is written in', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 4_000_000_000 }),
      fc.integer({ min: -12 * 4, max: 14 * 4 }),
      (s, quarters) => {
        const [ms, minutes] = [s * 1000, quarters * 15];
        const local = new Date(ms + minutes * 60_000).toISOString().slice(0, 19);
        const [hour, minute] = [Math.floor(Math.abs(minutes) / 60), Math.abs(minutes) % 60];
        const zone = `${minutes < 0 ? '-' : '+'}${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
        expect(writtenTime(`${local}${zone}`, 'iso')).toEqual({ kind: 'moment', utcMs: ms });
      },
    ),
    { numRuns: 200 },
  );
});
