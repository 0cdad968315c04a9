import { describe, expect, test } from 'vitest';
import { type DryAnswer, type DryScenario, dryForecast } from '../core/drying/index.ts';
import {
  changedScenario,
  newAlarms,
  openingCompared,
  type RoomChange,
  rugsMoved,
  whatIfOf,
} from './roomChange.ts';

const rug = (id: string, posture: 'hung' | 'floor') => ({
  ...{ id, areaM2: 5, dryMassKg: 18, fibres: { wool: 1 }, startRegain: 1.2, posture },
});
const scenario: DryScenario = {
  hours: 120,
  uncertainty: false,
  room: { volumeM3: 60, airC: 27, startRh: 0.5, airSpeed: 0.8, airChangesPerHour: 0.3 },
  outside: { airC: 6, rh: 0.85 },
  dehumidifiers: [{ litresPerDay: 30, ratedC: 30, ratedRh: 0.8 }],
  rugs: [rug('a', 'floor'), rug('b', 'hung')],
};
const answerTo = (of: DryScenario): DryAnswer => {
  const answer = dryForecast(of);
  if (!answer.ok) throw new Error(answer.problem.code);
  return answer.value;
};
const before = answerTo(scenario);
const moved = (change: RoomChange) =>
  Object.fromEntries(
    rugsMoved(before, before, answerTo(changedScenario(scenario, change))).map(({ id, movedHours }) => [
      id,
      movedHours ?? 0,
    ]),
  );

describe('what if', () => {
  test('a rug more in the room delays the others: its water goes into the same air', () => {
    const more = moved({ kind: 'add-rug', rug: { ...rug('c', 'hung'), areaM2: 8, dryMassKg: 30 } });
    expect(more['b']).toBeGreaterThan(0);
    expect(more['a']).toBeGreaterThan(0);
  });

  test('turned so that both faces dry, a rug is dry sooner', () => {
    expect(moved({ kind: 'turn', rug: 'a', hour: 4, posture: 'hung' })['a']).toBeLessThan(-1);
  });

  test('another machine, or a rug taken out, delays nobody', () => {
    const machine = moved({ kind: 'add-machine', machine: { litresPerDay: 60, ratedC: 30, ratedRh: 0.8 } });
    expect(Math.max(...Object.values(machine))).toBeLessThan(0);
    expect(moved({ kind: 'take-down', rug: 'b', hour: 2 })['a']).toBeLessThan(0);
  });

  test('only alarms that the change brings are told', () => {
    expect(newAlarms(before, before)).toEqual([]);
    const flood = {
      kind: 'add-rug',
      rug: { ...rug('c', 'floor'), areaM2: 3, dryMassKg: 60, startRegain: 2.4 },
    } as const;
    expect(newAlarms(before, answerTo(changedScenario(scenario, flood))).length).toBeGreaterThan(0);
  });
});

// ASHRAE Fundamentals 2017, chapter 1, table 2: saturated air holds 3.8 g/kg at 0 °C and 14.8 g/kg at 20 °C.
test('winter air at 95 % is drier than the room at 40 %, and warm rain is not: water by kilogram of air decides', () => {
  const of = (airC: number, rh: number) => openingCompared(before, { airC, rh }, 0);
  const winter = of(0, 0.95);
  expect(winter?.outside).toBeLessThan(0.0038);
  expect(winter?.outside).toBeLessThan(winter?.room ?? 0);
  const rain = of(28, 0.9);
  expect(rain?.outside).toBeGreaterThan(rain?.room ?? 1);
});

describe('windows opened in a room whose walls nobody described', () => {
  const opening = { fromHour: 4, untilHour: 12, airChangesPerHour: 6 };
  const drawn = { ...scenario, uncertainty: true, draws: 40, seed: 1 };
  const forecast = answerTo(drawn);
  const opened = (wallsWPerK?: number) => {
    const asked = whatIfOf(drawn, forecast, { kind: 'open', opening, wallsWPerK }, null);
    return { ...asked, was: answerTo(asked.before), is: answerTo(asked.after) };
  };
  const airAt = ({ hourly }: DryAnswer, hour: number) => hourly.find((one) => one.hour === hour)?.airC ?? 0;

  test('its warmth is reckoned by its size: shut it stays about as warm, open to winter air it cools', () => {
    const { was, is } = opened();
    expect(Math.abs(airAt(was, 12) - 27)).toBeLessThan(4);
    expect(airAt(is, 12)).toBeLessThan(airAt(was, 12) - 2);
    // Nothing before the windows are opened is moved.
    expect(airAt(is, 3)).toBeCloseTo(airAt(was, 3), 2);
  });

  test('hours are told for every rug, wider than where the walls are known', () => {
    const { was, is } = opened();
    const moved = rugsMoved(forecast, was, is);
    expect(moved.map(({ movedHours }) => movedHours !== null)).toEqual([true, true]);
    const widthOf = (of: DryScenario) => {
      const [low, high] = answerTo(of).rugs.find(({ id }) => id === 'b')?.spread?.interval80 ?? [0, 0];
      return (high ?? 0) - (low ?? 0);
    };
    expect(widthOf(opened().drawn)).toBeGreaterThan(widthOf(opened(72).drawn));
  });
});
