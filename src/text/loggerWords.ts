import type { LoggerNote, LoggerProblem } from '../core/drying/index.ts';
import type { WordsFor } from './words.ts';

const hours = (value: number): string => `${value < 10 ? value.toFixed(1) : value.toFixed(0)} h`;

export const loggerWords = {
  'logger-empty': () => ({
    happened: 'The logger’s file holds no rows of values.',
    matters: 'Without readings the room’s air is only guessed.',
    now: 'Read the logger out again, or set fewer lines to skip.',
  }),
  'logger-column-missing': ({ field, column, columns }) => ({
    happened: `The ${field} should stand in column ${column}, but the rows have ${columns} columns.`,
    matters: 'A value taken from the wrong column looks like a reading and is none.',
    now: 'Choose the separator and the columns again by the rows shown.',
  }),
  'logger-mostly-unreadable': ({ line, field, text, leftOut, rows }) => ({
    happened: `${leftOut} of ${rows} rows cannot be right; the first is line ${line}, whose ${field} is “${text}”.`,
    matters: 'So many wrong rows mean a wrong column, unit or form of date, or a failed sensor.',
    now: 'Choose columns, units and the form of the date again by the rows shown.',
  }),
} satisfies WordsFor<LoggerProblem>;

/** What has to be said of one line of a logger's file. */
export function loggerNoteWords(note: LoggerNote): string {
  switch (note.code) {
    case 'row-unreadable':
      return `Line ${note.line}: the ${note.field} “${note.text}” cannot be read; the row was left out.`;
    case 'value-impossible':
      return `Line ${note.line}: a ${note.field} of ${note.value} cannot be; the row was left out. Look at the sensor if it comes often.`;
    case 'time-doubled':
      return note.differs
        ? `Line ${note.line}: the same time again with other values; the first was kept.`
        : `Line ${note.line}: the same row again; it counts once.`;
    case 'clock-back':
      return note.putRight
        ? `Line ${note.line}: the clock went back an hour, taken for the change in autumn; the rows after it were put an hour later.`
        : `Line ${note.line}: the clock went back ${hours(note.hours)}; the row was left out.`;
    case 'clock-forward':
      return `Line ${note.line}: an hour is missing, as when clocks change in spring; if the logger was silent instead, it is a gap.`;
    case 'gap':
      return `Line ${note.line}: nothing for ${hours(note.hours)} before it; what the air did then is not known.`;
  }
}
