import type { NextKind, NextReading, Telling } from '../core/drying/index.ts';

const kindWords: { readonly [Kind in NextKind]: string } = {
  massKg: 'Weigh it',
  pocketRh: 'Take a pocket humidity',
  meterRegain: 'Read the meter',
  touch: 'Feel it',
};

const tellingWords: { readonly [Told in Telling]: string } = {
  'starting-water': 'it tells how much water the rug began with',
  pace: 'it tells how fast this room dries it',
  pile: 'it tells how long the pile holds back the last water',
  'dry-mass': 'it tells what the rug weighs without water',
};

/** What to read next on a rug, why, and what it is expected to bring; `when` in the reader's own time. */
export const nextReadingWords = (
  { kind, hour, widthNow, widthAfter, tells }: NextReading,
  when = `at hour ${hour}`,
): string =>
  `${kindWords[kind]} ${when}: ${tellingWords[tells]}; the 80 % interval would narrow from ${widthNow.toFixed(1)} h to about ${widthAfter.toFixed(1)} h.`;
