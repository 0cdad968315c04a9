import { describe, expect, test } from 'vitest';
import { inventedRoom } from '../../test/support/dryingRoomFacts.ts';
import { hungRug } from '../../test/support/hungRug.ts';
import { minutesLater } from '../../test/support/rugStory.ts';
import { dryForecast } from '../core/drying/index.ts';
import type { FibreShares } from '../core/wash/index.ts';
import type { DryingRug } from './dryingRug.ts';
import { roomAlarms } from './roomAlarms.ts';
import type { RoomEntry, RoomFact } from './roomFacts.ts';
import { roomScenario } from './roomScenario.ts';
import { roomStandingOf } from './roomStanding.ts';

const start = '2026-03-02T08:00:00.000Z';
const noon = '2026-03-02T12:00:00.000Z';

type Told = readonly (readonly [hours: number, fact: RoomFact])[];
/** A room whose facts happened at hours after the start. */
const roomWith = (...told: Told) =>
  roomStandingOf(
    [[-1, inventedRoom] as const, ...told].map(
      ([hours, fact], index): RoomEntry => ({
        ...{
          id: `e${index}`,
          stream: 'room/attic',
          revision: index + 1,
          by: 'tobin',
          version: 1,
          seal: `s${index}`,
        },
        at: minutesLater(start, hours * 60),
        fact,
      }),
    ),
  );
const air = (hours: number, airC: number, rh: number) =>
  [hours, { type: 'AirRead', where: 'room', airC, rh }] as const;
const dryer = (hours: number, on: boolean) =>
  [hours, { type: 'MachineSwitched', machine: 'dry-1', on }] as const;
const scenarioOf = (...of: Parameters<typeof roomScenario>) => {
  const built = roomScenario(...of);
  if (!built.ok) throw new Error(built.problem.code);
  return built.value;
};
const hoursOf = (scenario: ReturnType<typeof scenarioOf>['scenario']): number => {
  const answer = dryForecast({ ...scenario, uncertainty: false });
  if (!answer.ok) throw new Error(answer.problem.code);
  return answer.value.rugs[0]?.hoursToTarget ?? Number.POSITIVE_INFINITY;
};

describe('the scenario of a room', () => {
  test('begins when the first rug was hung, and knows the air measured since', () => {
    const room = roomWith(air(-0.5, 27, 0.5), air(2, 28, 0.46), air(4, 29, 0.44));
    const { scenario, zero } = scenarioOf(room, [hungRug()], noon, 72);
    expect(zero).toBe(start);
    expect(scenario.hours).toBe(76);
    expect(scenario.room.measured).toEqual([
      { hour: 0, airC: 27, rh: 0.5 },
      { hour: 2, airC: 28, rh: 0.46 },
      { hour: 4, airC: 29, rh: 0.44 },
    ]);
    expect(scenario.rugs[0]).toMatchObject({ hungAtHour: 0, wettedAtHour: -1, posture: 'hung' });
  });

  test('lets a machine work only while it was switched on', () => {
    const runs = (...told: Told) =>
      scenarioOf(roomWith(air(0, 28, 0.5), ...told), [hungRug()], noon, 72).scenario.dehumidifiers;
    expect(runs()).toEqual([]);
    expect(runs(dryer(1, true), dryer(3, false), dryer(3.5, true))[0]?.runs).toEqual([
      { fromHour: 1, untilHour: 3 },
      { fromHour: 3.5 },
    ]);
  });

  test('without any reading of the air, or with yesterday’s, there is no forecast', () => {
    const refusal = (...told: Told) => roomScenario(roomWith(...told), [hungRug()], noon, 72);
    expect(refusal()).toMatchObject({
      ok: false,
      problem: { code: 'room-air-unknown', facts: { lastReadAt: null } },
    });
    expect(refusal(air(-30, 28, 0.5))).toMatchObject({ ok: false, problem: { code: 'room-air-unknown' } });
    expect(roomScenario(roomStandingOf([]), [], noon, 72)).toMatchObject({
      problem: { code: 'room-not-set-up' },
    });
  });

  test('a weighing below the bone-dry rug is left out and told, and does not cost the others their forecast', () => {
    const looks = [
      { when: minutesLater(start, 60), massKg: 9 },
      { when: minutesLater(start, 120), massKg: 17 },
    ];
    const { scenario, assumptions } = scenarioOf(roomWith(air(0, 28, 0.5)), [hungRug({ looks })], noon, 72);
    expect(scenario.rugs[0]?.readings).toEqual([{ hour: 2, massKg: 17 }]);
    expect(assumptions.map(({ code }) => code)).toContain('mass-below-bone-dry');
    expect(dryForecast(scenario).ok).toBe(true);
  });

  test.each([
    ['before its wash', { room: null }],
    ['that hangs', {}],
    ['that hangs and was weighed', { looks: [{ when: '2026-03-02T11:00:00.000Z', massKg: 18.4 }] }],
  ])('a rug %s, of unknown fibre, is forecast no sooner than one of any natural fibre', (_, how) => {
    const room = roomWith(air(0, 28, 0.45), dryer(0, true));
    const planned = (fibres: FibreShares) =>
      hoursOf(scenarioOf(room, [hungRug({ ...how, fibres })], noon, 90).scenario);
    const unknown = planned({ unknown: 0.5, wool: 0.5 });
    expect(unknown).toBeLessThan(90);
    for (const fibre of ['wool', 'silk', 'cotton', 'linen', 'jute', 'sisal', 'viscose'] as const)
      expect(unknown).toBeGreaterThanOrEqual(planned({ wool: 0.5, [fibre]: fibre === 'wool' ? 1 : 0.5 }));
  });

  test('a weighing written down twice counts once, as it was written last', () => {
    const look = { when: '2026-03-02T10:00:00.000Z', massKg: 15 };
    const { scenario } = scenarioOf(
      roomWith(air(0, 28, 0.5)),
      [hungRug({ looks: [look, { ...look, massKg: 15.2 }] })],
      noon,
      72,
    );
    expect(scenario.rugs[0]?.readings).toEqual([{ hour: 2, massKg: 15.2 }]);
    expect(dryForecast(scenario).ok).toBe(true);
  });

  test.each([
    [
      'forgotten for eight weeks',
      { wettedAt: '2026-01-05T08:00:00.000Z', hungAt: '2026-01-05T09:00:00.000Z' },
    ],
    ['wetted on its pole', { wettedAt: '2026-03-02T09:00:00.000Z' }],
  ])('a rug %s does not cost the others their forecast', (_how, old) => {
    const { scenario } = scenarioOf(
      roomWith(air(0, 28, 0.5)),
      [hungRug(), hungRug({ rug: 'r2', ...old })],
      noon,
      72,
    );
    expect(dryForecast({ ...scenario, uncertainty: false }).ok).toBe(true);
  });

  test('a meter that reads below its dry reference says dry, and is not left out', () => {
    const looks = [{ when: minutesLater(start, 240), meterAboveDry: -3 }];
    const room = roomWith(air(0, 28, 0.5), dryer(0, true));
    const lateOf = (how: Partial<DryingRug>) => {
      const { scenario } = scenarioOf(room, [hungRug(how)], noon, 90);
      const answer = dryForecast(scenario);
      return { scenario, late: answer.ok ? (answer.value.rugs[0]?.spread?.interval80[1] ?? 90) : 90 };
    };
    const read = lateOf({ looks });
    expect(read.scenario.rugs[0]?.readings).toEqual([{ hour: 4, meterAboveDry: -3 }]);
    expect(read.late).toBeLessThan(lateOf({}).late);
  });

  describe('a rug nobody weighed before the water', () => {
    const room = roomWith(air(0, 28, 0.5), dryer(0, true));
    const ovenDry = { likely: 10, least: 7, most: 14 };
    const guessed = { ovenDry, ovenDryFrom: 'mass band' } as const;
    const forecastOf = (how: Partial<DryingRug>) => {
      const answer = dryForecast(scenarioOf(room, [hungRug(how)], noon, 140).scenario);
      const spread = answer.ok ? answer.value.rugs[0]?.spread : undefined;
      if (!answer.ok || spread === undefined) throw new Error('no forecast');
      const [from, to] = spread.interval80;
      const median = answer.value.rugs[0]?.hoursToTarget ?? 140;
      return { alarms: answer.value.alarms, median, late: to ?? 140, width: (to ?? 140) - (from ?? 0) };
    };

    test('is forecast as wide as its kind: its late end comes no sooner than the heaviest most likely dries', () => {
      const heaviest = forecastOf({ ovenDry: { likely: 14, least: 14, most: 14 } });
      const { late } = forecastOf(guessed);
      expect(late).toBeGreaterThan(forecastOf({ ovenDry: { likely: 10, least: 9.8, most: 10.2 } }).late);
      expect(late).toBeGreaterThan(heaviest.median);
    });

    test('and its weighings, water and all, tell of it: each narrows the forecast', () => {
      const look = (hours: number, massKg: number) => ({ when: minutesLater(start, hours * 60), massKg });
      const [none, one, two] = [[], [look(1, 19)], [look(1, 19), look(3.5, 16.9)]].map(
        (looks) => forecastOf({ ...guessed, looks }).width,
      );
      expect(one).toBeLessThan((none ?? 0) * 0.9);
      expect(two).toBeLessThan(one ?? 0);
    });

    test('is alarmed of by the late end, where one that was weighed is not yet', () => {
      const wetFor = (hours: number) => ({ wettedAt: minutesLater(start, -hours * 60) });
      const red = (how: Partial<DryingRug>) =>
        forecastOf(how).alarms.some(({ code }) => code === 'wet-past-red');
      const { late } = forecastOf(guessed);
      const before = 48 - late + 0.5;
      expect(red({ ...guessed, ...wetFor(before) })).toBe(true);
      expect(red({ ovenDry: { likely: 10, least: 9.8, most: 10.2 }, ...wetFor(before) })).toBe(false);
    });
  });

  test('a machine switched on never makes a rug dry later', () => {
    const still = scenarioOf(roomWith(air(0, 28, 0.5)), [hungRug()], noon, 200).scenario;
    const running = scenarioOf(roomWith(air(0, 28, 0.5), dryer(4, true)), [hungRug()], noon, 200).scenario;
    expect(hoursOf(running)).toBeLessThan(hoursOf(still));
  });
});

describe('alarms', () => {
  const codes = (room: ReturnType<typeof roomWith>, now: string, how = {}) =>
    roomAlarms(room, { rugs: [hungRug(how)], unmeasured: [] }, null, now).map(({ code }) => code);

  test('a rug not turned for six hours, not read for four, beside a machine that stands still', () => {
    expect(codes(roomWith(air(6, 28, 0.5)), minutesLater(start, 6.5 * 60))).toEqual([
      'turning-due',
      'machine-off',
      'machine-off',
      'reading-overdue',
      'room-damp',
    ]);
  });

  test('a room warmer than the plan of a rug allows', () => {
    const room = roomWith(air(0, 33, 0.4), dryer(0, true), [
      0,
      { type: 'MachineSwitched', machine: 'fan-1', on: true },
    ]);
    expect(codes(room, start)).toEqual(['too-warm-for-plan']);
  });

  test('a heater that runs where a rug was put to dry as without heat', () => {
    const heater = { kind: 'heater', machine: 'heat-1', name: 'Oil radiator', watts: 2000 } as const;
    const warm = roomWith([0, { ...inventedRoom, machines: [heater] }], air(0, 26, 0.4), [
      0,
      { type: 'MachineSwitched', machine: 'heat-1', on: true },
    ]);
    expect(codes(warm, start, { heated: false })).toEqual(['heat-not-told']);
    // Told as heated, or not told at all, which counts as heated: nothing new.
    expect(codes(warm, start, { heated: true })).toEqual([]);
    expect(codes(warm, start, { heated: null })).toEqual([]);
  });

  test('nothing hangs: nothing is due', () => {
    expect(roomAlarms(roomWith(), { rugs: [], unmeasured: [] }, null, noon)).toEqual([]);
  });
});
