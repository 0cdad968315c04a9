import { describe, expect, test } from 'vitest';
import { dryingRug, dryingScenario } from '../../../test/support/dryingRoom.ts';
import { problemWords } from '../../text/problemWords.ts';
import { dryForecast } from './dryForecast.ts';
import type { DryReading, DryRug, DryScenario } from './scenario.ts';

const withRug = (changed: Partial<DryRug>) => dryingScenario({ rugs: [dryingRug(changed)] });
const withReadings = (...readings: readonly DryReading[]) => withRug({ readings });
const withRoom = (changed: Partial<DryScenario['room']>) => {
  const { airC: _airC, startRh: _startRh, ...rest } = dryingScenario().room;
  return dryingScenario({ room: { ...rest, ...changed } });
};
const measured = (...hours: readonly number[]) =>
  withRoom({ air: hours.map((hour) => ({ hour, airC: 30, rh: 0.4 })) });

describe('what cannot be right is refused, by name and with what to do', () => {
  const cases: readonly (readonly [string, DryScenario, string, string])[] = [
    ['a mass below bone dry', withReadings({ hour: 2, massKg: 17.9 }), 'mass-below-bone-dry', '17.9 kg'],
    [
      'readings out of order',
      withReadings({ hour: 3, massKg: 30 }, { hour: 2, massKg: 31 }),
      'readings-out-of-order',
      'hour 2',
    ],
    [
      'a reading entered twice',
      withReadings({ hour: 3, massKg: 30 }, { hour: 3, massKg: 30 }),
      'reading-doubled',
      'hour 3',
    ],
    [
      'a reading before the rug hung',
      withRug({ hungAtHour: 4, readings: [{ hour: 2, massKg: 30 }] }),
      'out-of-range',
      'hour of rug a',
    ],
    ['a humidity of 140', withRoom({ airC: 30, startRh: 140 }), 'out-of-range', 'room.startRh is 140'],
    [
      'a humidity that is not a number',
      withRoom({ airC: 30, startRh: Number.NaN }),
      'out-of-range',
      'not a number',
    ],
    [
      'a weighing no soaked rug has',
      withReadings({ hour: 1, massKg: 500 }),
      'out-of-range',
      'massKg of rug a',
    ],
    ['a pocket humidity in per cent', withReadings({ hour: 1, pocketRh: 62 }), 'out-of-range', 'pocketRh'],
    ['a logger silent for a day', measured(0, 1, 26), 'logger-gap', 'hour 1 to hour 26'],
    ['a logger whose clock was put back', measured(0, 1, 2, 1.5), 'logger-clock-back', 'hour 2 to hour 1.5'],
    ['a logger with one hour twice', measured(0, 1, 1), 'logger-clock-back', 'hour 1'],
    [
      'a machine rated at no stated condition',
      dryingScenario({ dehumidifiers: [{ litresPerDay: 70, ratedC: 30 }] }),
      'machine-rating-unstated',
      'ratedRh',
    ],
    ['an empty room', dryingScenario({ rugs: [] }), 'drying-room-empty', 'No rug'],
    ['two rugs of one name', dryingScenario({ rugs: [dryingRug(), dryingRug()] }), 'rug-named-twice', 'a'],
    ['fibres that do not add up', withRug({ fibres: { wool: 0.7 } }), 'fibre-shares-off', '0.700'],
    ['no fibres at all', withRug({ fibres: {} }), 'fibre-shares-off', '0.000'],
    ['a room without a temperature', withRoom({ startRh: 0.4 }), 'drying-air-missing', 'room.airC'],
    ['a room without a humidity', withRoom({ airC: 30 }), 'drying-air-missing', 'room.startRh'],
    [
      'a critical regain inside the fibre',
      withRug({ criticalRegain: 0.1 }),
      'critical-regain-too-low',
      '0.1',
    ],
    ['a rug without mass', withRug({ dryMassKg: 0 }), 'out-of-range', 'dryMassKg of rug a'],
    ['a time without end', dryingScenario({ hours: Number.POSITIVE_INFINITY }), 'out-of-range', 'hours'],
    ['a rug wetted after it was hung', withRug({ wettedAtHour: 3 }), 'out-of-range', 'wettedAtHour'],
  ];
  test.each(cases)('%s', (_name, scenario, code, said) => {
    const answer = dryForecast(scenario);
    expect(answer.ok).toBe(false);
    if (answer.ok) return;
    expect(answer.problem.code).toBe(code);
    const words = problemWords(answer.problem);
    expect(words.happened).toContain(said);
    expect(`${words.matters}${words.now}`).not.toMatch(/undefined|NaN/);
  });
});

test('a timer with rows a day apart is no silent logger', () => {
  const air = [0, 24, 48].map((hour) => ({ hour, airC: 30 }));
  expect(dryForecast(withRoom({ startRh: 0.4, air })).ok).toBe(true);
});
