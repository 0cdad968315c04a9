import { describe, expect, test } from 'vitest';
import { referenceRun } from '../../../test/support/dryingReference.ts';
import { dryingRug, dryingScenario } from '../../../test/support/dryingRoom.ts';
import { dryForecast } from './dryForecast.ts';
import type { DryScenario } from './scenario.ts';

const warmedRoom = (changed: Partial<DryScenario>) =>
  dryingScenario({
    room: { volumeM3: 90, startC: 20, startRh: 0.5, airSpeed: 1, airChangesPerHour: 0.6, wallsWPerK: 130 },
    outside: { airC: 6, rh: 0.75 },
    fans: [{ airSpeed: 1.4, kw: 0.2 }],
    rugs: [
      dryingRug({ targetRegain: 0.19, startRegain: 0.7 }),
      dryingRug({ id: 'b', areaM2: 3, dryMassKg: 7, hungAtHour: 2, targetRegain: 0.18 }),
    ],
    ...changed,
  });

const cases: readonly (readonly [string, DryScenario, number])[] = [
  ['one rug in a warm room', dryingScenario({ hours: 24, rugs: [dryingRug({ targetRegain: 0.16 })] }), 120],
  [
    'three rugs hung one after the other, of other fibres',
    dryingScenario({
      hours: 30,
      room: { volumeM3: 150, airC: 27, startRh: 0.5, airSpeed: 0.8, airChangesPerHour: 1.5 },
      outside: { airC: 8, rh: 0.8 },
      dehumidifiers: [{ litresPerDay: 60, ratedC: 27, ratedRh: 0.6, type: 'desiccant' }],
      rugs: [
        dryingRug({ targetRegain: 0.17, startRegain: 0.8 }),
        dryingRug({
          id: 'b',
          targetRegain: 0.15,
          fibres: { silk: 0.5, cotton: 0.5 },
          areaM2: 3,
          dryMassKg: 6,
          hungAtHour: 4,
        }),
        dryingRug({
          id: 'c',
          targetRegain: 0.16,
          areaM2: 2,
          dryMassKg: 3,
          faces: 1.5,
          criticalRegain: 0.5,
          resistance: 80,
          hungAtHour: 9,
        }),
      ],
    }),
    120,
  ],
  [
    'a damp cool room that hardly dries',
    dryingScenario({
      hours: 40,
      room: { volumeM3: 60, airC: 18, startRh: 0.6, airSpeed: 0.3, airChangesPerHour: 3 },
      dehumidifiers: [{ litresPerDay: 30, ratedC: 30, ratedRh: 0.8 }],
      outside: { airC: 10, rh: 0.7 },
      rugs: [dryingRug({ areaM2: 2, dryMassKg: 5, startRegain: 0.7, targetRegain: 0.25 })],
    }),
    120,
  ],
  [
    'a rug turned, taken down early, under fans, a machine and a window that run for a part of the time',
    dryingScenario({
      hours: 30,
      room: {
        ...{ volumeM3: 120, airC: 26, startRh: 0.45, airSpeed: 0.3, airChangesPerHour: 0.3 },
        openings: [{ fromHour: 6, untilHour: 9, airChangesPerHour: 6 }],
      },
      outside: {
        ...{ airC: 12, rh: 0.7 },
        series: [0, 6, 12, 24].map((hour, i) => ({ hour, airC: 18 - 4 * i, rh: 0.5 + 0.1 * i })),
      },
      fans: [{ airSpeed: 1.8, runs: [{ fromHour: 2, untilHour: 14 }, { fromHour: 16 }] }],
      dehumidifiers: [{ litresPerDay: 70, ratedC: 30, ratedRh: 0.8, runs: [{ fromHour: 3 }] }],
      rugs: [
        dryingRug({
          targetRegain: 0.17,
          startRegain: 0.8,
          turnings: [
            { hour: 4, posture: 'mesh' },
            { hour: 8, faces: 2 },
          ],
        }),
        dryingRug({ id: 'b', targetRegain: 0.16, hungAtHour: 1, takenAtHour: 5, startRegain: 1.2 }),
      ],
    }),
    60,
  ],
  [
    'a room whose temperature follows from its heat, a heater with a thermostat, a desiccant machine',
    warmedRoom({
      hours: 40,
      dehumidifiers: [{ litresPerDay: 40, ratedC: 20, ratedRh: 0.6, type: 'desiccant', kw: 2 }],
      heaters: [{ kw: 6, untilC: 29, runs: [{ fromHour: 1, untilHour: 20 }] }],
    }),
    30,
  ],
  [
    'a cold room in which a refrigerant machine warms what it dries, and fails below 15 °C',
    warmedRoom({
      hours: 30,
      outside: {
        airC: -2,
        rh: 0.8,
        series: [0, 12, 30].map((hour) => ({ hour, airC: -2 - hour / 6, rh: 0.8 })),
      },
      dehumidifiers: [1, 2].map(() => ({ litresPerDay: 70, ratedC: 30, ratedRh: 0.8 })),
    }),
    30,
  ],
];

describe('a reference integration by other means agrees to 0.5 %', () => {
  test.each(cases)('on %s', (_name, scenario, stepS) => {
    const other = referenceRun(scenario, stepS);
    const answer = dryForecast(scenario);
    expect(answer.ok).toBe(true);
    if (!answer.ok) return;
    for (const [i, { hoursToTarget, endRegain }] of answer.value.rugs.entries()) {
      const expected = other.reached[i] ?? Number.NaN;
      if (Number.isNaN(expected)) expect(hoursToTarget).toBeNull();
      else expect(Math.abs((hoursToTarget ?? Number.NaN) / expected - 1)).toBeLessThan(0.005);
      expect(Math.abs(endRegain / (other.endRegain[i] ?? Number.NaN) - 1)).toBeLessThan(0.005);
    }
    expect(Math.abs(answer.value.endRh / other.endRh - 1)).toBeLessThan(0.005);
    expect(Math.abs(answer.value.endC - other.endC)).toBeLessThan(0.05);
  });
});
