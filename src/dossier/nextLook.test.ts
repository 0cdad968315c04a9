import { expect, test } from 'vitest';
import { hungRug } from '../../test/support/hungRug.ts';
import { minutesLater } from '../../test/support/rugStory.ts';
import { nextLook } from './nextLook.ts';

const hungAt = '2026-03-02T08:00:00.000Z';
const at = (hours: number) => minutesLater(hungAt, hours * 60);
const weighedAt = (...hours: readonly number[]) =>
  hungRug({ looks: hours.map((hour) => ({ when: at(hour), massKg: 18 - hour })) });
const spread = { interval80: [10, 14] } as const;

test('a rug nobody weighed since it was hung is weighed at once: its water is the widest unknown', () => {
  expect(nextLook(hungRug(), spread, at(1))).toEqual({
    what: 'weigh',
    why: 'starting-water-unknown',
    dueAt: at(1),
  });
});

test('then its pace, four hours on, and then shortly before the band begins', () => {
  expect(nextLook(weighedAt(1), spread, at(2))).toMatchObject({ why: 'pace-unknown', dueAt: at(5) });
  expect(nextLook(weighedAt(1, 6), spread, at(7))).toMatchObject({
    why: 'narrows-most-near-the-end',
    dueAt: at(9),
  });
});

test('a rug of unknown dry mass is not weighed but read by pocket', () => {
  expect(nextLook({ ...weighedAt(1), ovenDryFrom: 'mass band' }, spread, at(2))).toMatchObject({
    what: 'pocket',
  });
});

test('once the forecast calls it dry it is to be proved, by the dry standard and not by the forecast', () => {
  expect(nextLook(weighedAt(1, 5, 9), spread, at(15))).toMatchObject({
    what: 'prove',
    why: 'dry-by-forecast',
  });
});
