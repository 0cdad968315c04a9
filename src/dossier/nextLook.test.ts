import { expect, test } from 'vitest';
import { hungRug } from '../../test/support/hungRug.ts';
import { minutesLater } from '../../test/support/rugStory.ts';
import { nextLook } from './nextLook.ts';

const hungAt = '2026-03-02T08:00:00.000Z';
const at = (hours: number) => minutesLater(hungAt, hours * 60);
const weighedAt = (...hours: readonly number[]) =>
  hungRug({ looks: hours.map((hour) => ({ when: at(hour), massKg: 18 - hour })) });
const spread = { interval80: [10, 14] } as const;

test('a rug nobody read since it was hung is looked at now, and then every four hours', () => {
  expect(nextLook(hungRug(), spread, at(1))).toEqual({ what: 'look', dueAt: at(1) });
  expect(nextLook(weighedAt(1), spread, at(2))).toEqual({ what: 'look', dueAt: at(5) });
  expect(nextLook(weighedAt(1, 6), null, at(7))).toEqual({ what: 'look', dueAt: at(10) });
});

test('once the forecast calls it dry, its late end too, it is to be proved by the dry standard', () => {
  expect(nextLook(weighedAt(1, 5, 9), spread, at(13))).toMatchObject({ what: 'look' });
  expect(nextLook(weighedAt(1, 5, 9), spread, at(15))).toEqual({ what: 'prove', dueAt: at(15) });
});
