import { describe, expect, test } from 'vitest';
import { dryingRug, dryingScenario, heldAir } from '../../../test/support/dryingRoom.ts';
import { dryForecast } from './dryForecast.ts';
import { prepareRoom } from './preparedRoom.ts';
import { lean } from './rugBelief.ts';
import { makeRoomRunner } from './runRoom.ts';
import type { DryReading, DryScenario } from './scenario.ts';
import { emptyUnknowns } from './unknowns.ts';

const answerOf = (scenario: DryScenario) => {
  const answer = dryForecast({ ...scenario, uncertainty: true });
  if (!answer.ok) throw new Error(answer.problem.code);
  return answer.value;
};
const spreadOf = (scenario: DryScenario, at = 0) => {
  const rug = answerOf(scenario).rugs[at];
  if (rug?.spread === undefined) throw new Error('no spread');
  return { ...rug, ...rug.spread };
};
const width = ([from, to]: readonly [number | null, number | null]): number => (to ?? 72) - (from ?? 0);

/** A rug whose hidden unknowns lean so far, and what it would weigh. */
const truthOf = (
  leaning: readonly number[],
  hours: readonly number[],
  scenario: DryScenario = dryingScenario(),
) => {
  const room = prepareRoom(scenario);
  const unknowns = emptyUnknowns(room.rugs.length);
  for (const [i, rug] of room.rugs.entries()) lean(unknowns, i, rug, room, leaning);
  const course = makeRoomRunner(room)(unknowns, hours);
  const massAt = (rug: number, k: number) =>
    (room.rugs[rug]?.dryMassKg ?? 0) * (unknowns.dryMass[rug] ?? 1) * (1 + (course.regains[rug]?.[k] ?? 0));
  return { hoursToTarget: course.targetAtHour[0] ?? Number.NaN, massAt };
};
const weighings = (leaning: readonly number[], hours: readonly number[]): readonly DryReading[] => {
  const { massAt } = truthOf(leaning, hours);
  return hours.map((hour, k) => ({ hour, massKg: Math.round(massAt(0, k) * 100) / 100 }));
};
const slow = [-1.5, 0.8, 0.5, -0.5, 0.3];

test('the 95 % bounds hold the 80 % bounds, and they the median', () => {
  const { hoursToTarget, interval80, interval95, bands } = spreadOf(dryingScenario());
  const [least95, least80, median, most80, most95] = [
    interval95[0],
    interval80[0],
    hoursToTarget,
    interval80[1],
    interval95[1],
  ].map((value) => value ?? Number.NaN);
  expect(least95).toBeLessThan(least80 ?? 0);
  expect(least80).toBeLessThan(median ?? 0);
  expect(median).toBeLessThan(most80 ?? 0);
  expect(most80).toBeLessThan(most95 ?? 0);
  for (const { median: middle, interval80: of } of bands) {
    expect(of[0]).toBeLessThanOrEqual(middle);
    expect(of[1]).toBeGreaterThanOrEqual(middle);
  }
});

test('the same seed gives the same answer, another nearly the same', () => {
  const at = (seed: number) => spreadOf(dryingScenario({ seed })).hoursToTarget ?? Number.NaN;
  expect(at(3)).toBe(at(3));
  expect(Math.abs(at(3) / at(4) - 1)).toBeLessThan(0.05);
});

test('every weighing narrows the forecast and brings it to where the rug truly ends', () => {
  const { hoursToTarget: truth } = truthOf(slow, []);
  const after = (count: number) =>
    spreadOf(
      dryingScenario({ rugs: [dryingRug({ readings: weighings(slow, [1, 2, 3, 4].slice(0, count)) })] }),
    );
  const [none, one, four] = [after(0), after(1), after(4)];
  expect(width(one.interval80)).toBeLessThan(width(none.interval80) / 2);
  expect(width(four.interval80)).toBeLessThan(width(one.interval80));
  expect(Math.abs((none.hoursToTarget ?? 0) / truth - 1)).toBeGreaterThan(0.1);
  expect(Math.abs((four.hoursToTarget ?? 0) / truth - 1)).toBeLessThan(0.05);
  expect(four.readings.some(({ outlier }) => outlier)).toBe(false);
});

test('pocket humidity, meter and touch narrow it too, touch the least', () => {
  const of = (reading: DryReading) =>
    width(spreadOf(dryingScenario({ rugs: [dryingRug({ readings: [reading] })] })).interval80);
  const none = width(spreadOf(dryingScenario()).interval80);
  const [pocket, meter, touch] = [
    of({ hour: 6, pocketRh: 0.83 }),
    of({ hour: 5, meterRegain: 0.37 }),
    of({ hour: 5, touch: 'damp' }),
  ];
  for (const found of [pocket, meter, touch]) expect(found).toBeLessThan(none);
  expect(meter).toBeLessThan(touch);
});

describe('a reading that fits nothing else', () => {
  const good = weighings(slow, [1, 2, 4]);
  const typo: DryReading = { hour: 3, massKg: 52 };
  const readings = [...good.slice(0, 2), typo, ...good.slice(2)];

  test('is marked, told, and left out of the forecast', () => {
    const scenario = dryingScenario({ rugs: [dryingRug({ readings })] });
    const { readings: judged, contradicted, hoursToTarget } = spreadOf(scenario);
    expect(judged.map(({ outlier }) => outlier)).toEqual([false, false, true, false]);
    expect(judged).toHaveLength(4);
    expect(contradicted).toBe(false);
    expect(answerOf(scenario).alarms).toContainEqual(
      expect.objectContaining({ code: 'reading-stands-alone', rug: 'a', hour: 3 }),
    );
    expect(Math.abs((hoursToTarget ?? 0) / truthOf(slow, []).hoursToTarget - 1)).toBeLessThan(0.06);
  });
  test('readings that all defy the model are said to contradict it', () => {
    const rising = [1, 2, 3, 4].map((hour) => ({ hour, massKg: 28 + 3 * hour }));
    const scenario = dryingScenario({ rugs: [dryingRug({ readings: rising })] });
    expect(answerOf(scenario).alarms).toContainEqual({ code: 'readings-contradict-model', rug: 'a' });
  });
});

test('what one rug shows of the room is learnt for its neighbour', () => {
  const pair = dryingScenario({
    room: heldAir(30, 0.4, 1),
    rugs: [dryingRug({ startRegain: 1.2 }), dryingRug({ id: 'b' })],
  });
  const leaning = [-1.5, 0, 0, 0, 0];
  const hours = [1, 2, 3, 4, 5];
  const { massAt } = truthOf(leaning, hours, pair);
  const readings = hours.map((hour, k) => ({ hour, massKg: massAt(0, k) }));
  const [first, second] = pair.rugs;
  if (first === undefined || second === undefined) throw new Error('two rugs');
  const read = { ...pair, rugs: [{ ...first, readings }, second] };
  const g = answerOf(read).g;
  expect(g?.likely).toBeLessThan(0.92);
  expect(spreadOf(read, 1).hoursToTarget).toBeGreaterThan((spreadOf(pair, 1).hoursToTarget ?? 0) * 1.03);
});
