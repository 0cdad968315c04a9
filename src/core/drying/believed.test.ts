import { expect, test } from 'vitest';
import { dryingRug, dryingScenario } from '../../../test/support/dryingRoom.ts';
import { asBelieved } from './believed.ts';
import { dryForecast } from './dryForecast.ts';
import type { DryScenario } from './scenario.ts';

const answerTo = (scenario: DryScenario) => {
  const answer = dryForecast(scenario);
  if (!answer.ok) throw new Error(answer.problem.code);
  return answer.value;
};

const read = dryingScenario({
  uncertainty: true,
  draws: 60,
  seed: 3,
  rugs: [
    dryingRug({
      id: 'weighed',
      readings: [
        { hour: 2, massKg: 33.5 },
        { hour: 5, massKg: 29.4 },
      ],
    }),
    dryingRug({ id: 'felt', areaM2: 4, dryMassKg: 12, readings: [{ hour: 6, touch: 'damp' }] }),
    dryingRug({ id: 'unread', areaM2: 3, dryMassKg: 10, faces: 1 }),
  ],
});

test('one run with what the readings taught is the likely course of the forecast itself', () => {
  const forecast = answerTo(read);
  const believed = answerTo(asBelieved(read, forecast));
  expect(believed.hourly.map(({ rh }) => rh)).toHaveLength(forecast.hourly.length);
  for (const [at, hour] of forecast.hourly.entries()) {
    expect(believed.hourly[at]?.rh).toBeCloseTo(hour.rh, 6);
  }
  for (const rug of forecast.rugs) {
    const same = believed.rugs.find(({ id }) => id === rug.id);
    expect(same?.endRegain).toBeCloseTo(rug.endRegain, 6);
  }
});
