import { expect, test } from 'vitest';
import { agreesWith } from '../../../test/support/agreesWith.ts';
import { dryingRug, dryingScenario, heldAir } from '../../../test/support/dryingRoom.ts';
import { dryForecast } from './dryForecast.ts';
import type { DryRug } from './scenario.ts';

const held = heldAir(25, 0.4, 1);
const mouldOf = (rug: Partial<DryRug>): number => {
  const answer = dryForecast(dryingScenario({ room: held, rugs: [dryingRug(rug)] }));
  return answer.ok ? (answer.value.rugs[0]?.mouldIndex ?? Number.NaN) : Number.NaN;
};

test('a rug that is wetted and hung later has grown no mould before (law: the clock’s beginning changes nothing)', () => {
  const now = mouldOf({});
  expect(now).toBeGreaterThan(0.01);
  for (const hungAtHour of [7, 30.4, 48]) expect(mouldOf({ hungAtHour })).toBeCloseTo(now, 2);
});

agreesWith(
  {
    source: 'hukka-viitanen-1999',
    where: 'equations 1 to 6, most sensitive class, 25 °C and 100 %: index 1 at 5.9 days',
    readFrom: 'memory of the source',
    within: (expected) => expected * 0.015,
    because: 'days given to a tenth',
    rows: [
      { wetted: { wettedAtHour: -24 }, expected: 1 / 5.9 },
      { wetted: { wettedAtHour: 6, hungAtHour: 30 }, expected: 1 / 5.9 },
    ],
  },
  ({ wetted }) => mouldOf(wetted) - mouldOf({ hungAtHour: wetted.hungAtHour }),
);
