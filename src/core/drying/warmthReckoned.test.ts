import { describe, expect, test } from 'vitest';
import { dryingRug, dryingScenario } from '../../../test/support/dryingRoom.ts';
import { dryForecast } from './dryForecast.ts';
import { wallsByVolume, warmthReckoned } from './warmthReckoned.ts';

// A rug all but dry: next to no water takes heat along.
const dryRoom = dryingScenario({
  hours: 48,
  room: { volumeM3: 100, airC: 26, startRh: 0.3, airSpeed: 0.3, airChangesPerHour: 0.5 },
  outside: { airC: 6, rh: 0.5 },
  dehumidifiers: [],
  rugs: [dryingRug({ areaM2: 1, dryMassKg: 1, startRegain: 0.1 })],
});
const endOf = (scenario: typeof dryRoom): number => {
  const answer = dryForecast(scenario);
  if (!answer.ok) throw new Error(answer.problem.code);
  return answer.value.endC;
};

describe('a room whose walls nobody described', () => {
  test('is given a loss by its size, so wide that both ends are far apart', () => {
    const { likely, least, most } = wallsByVolume(100);
    expect(likely).toBeCloseTo(120, 9);
    expect(most / least).toBeGreaterThan(3);
    expect(Math.sqrt(most * least)).toBeCloseTo(likely, 9);
  });

  test('stays as warm as it was while nothing is changed', () => {
    expect(endOf(warmthReckoned(dryRoom, 0).scenario)).toBeCloseTo(26, 0);
    const machined = { ...dryRoom, fans: [{ airSpeed: 1, kw: 0.4 }], heaters: [{ kw: 1 }] };
    expect(endOf(warmthReckoned(machined, 0).scenario)).toBeCloseTo(26, 0);
  });

  // By hand: what keeps it warm is (120 + 0.5 × 100 × c) × 20 K with c = ρ·cp/3600 ≈ 0.33 Wh/(m³·K), that is
  // 136.5 × 20 = 2730 W; with 6 air changes the loss is 120 + 198 = 318 W/K, so it ends 8.6 K above outside.
  test('cools to where its heat meets the loss through open windows', () => {
    const { scenario, unrecordedW } = warmthReckoned(dryRoom, 0);
    expect(unrecordedW).toBeGreaterThan(2650);
    expect(unrecordedW).toBeLessThan(2850);
    const open = {
      ...scenario,
      room: { ...scenario.room, openings: [{ fromHour: 0, airChangesPerHour: 6 }] },
    };
    expect(Math.abs(endOf(open) - (6 + 8.6))).toBeLessThan(0.7);
  });

  test('with known walls keeps them, and a room with a heat balance stays as it is', () => {
    expect(warmthReckoned(dryRoom, 0, 80).scenario.room.wallsWPerK).toBe(80);
    const balanced = warmthReckoned(dryRoom, 0).scenario;
    expect(warmthReckoned(balanced, 0)).toEqual({ scenario: balanced, unrecordedW: 0 });
  });
});
