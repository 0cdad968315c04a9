import { expect, test } from 'vitest';
import { inventedRoom } from '../../test/support/dryingRoomFacts.ts';
import type { RoomEntry, RoomFact } from './roomFacts.ts';
import { roomHeatOf, roomStandingOf } from './roomStanding.ts';

const told = (...facts: readonly RoomFact[]) =>
  roomStandingOf(
    facts.map(
      (fact, index): RoomEntry => ({
        ...{ id: `e${index + 1}`, stream: 'room/attic', revision: index + 1 },
        ...{ at: `2026-03-02T08:0${index}:00.000Z`, by: 'mirela', version: 1, fact, seal: '' },
      }),
    ),
  );

test('a room tells whether heat is on by the switches of its heaters, and nothing where it has none', () => {
  const heater = { kind: 'heater', machine: 'heat-1', name: 'Oil radiator', watts: 2000 } as const;
  const warm = { ...inventedRoom, machines: [...inventedRoom.machines, heater] };
  const switched = (on: boolean) => ({ type: 'MachineSwitched', machine: 'heat-1', on }) as const;
  expect(roomHeatOf(told(inventedRoom))).toEqual({ heat: 'unknown' });
  expect(roomHeatOf(told(warm))).toEqual({ heat: 'off', by: ['Oil radiator'] });
  expect(roomHeatOf(told(warm, switched(true)))).toEqual({ heat: 'on', by: ['Oil radiator'] });
  expect(roomHeatOf(told(warm, switched(true), switched(false))).heat).toBe('off');
});
