import { expect, test } from 'vitest';
import { dryingRug, dryingScenario } from '../../../test/support/dryingRoom.ts';
import type { FibreShares } from '../wash/index.ts';
import { dryForecast } from './dryForecast.ts';

const natural = ['wool', 'silk', 'cotton', 'linen', 'jute', 'sisal', 'viscose'] as const;

// ashrae-hvac-regain, table: Regain of Hygroscopic Materials: cotton and linen rest at the least of these up to 65 % RH.
test.each([
  ['its own dry standard', undefined],
  ['a regain of 0.10', 0.1],
  ['a regain of 0.16', 0.16],
])('a rug of unknown fibre is forecast to %s no sooner than one of any natural fibre', (_, targetRegain) => {
  const hoursOf = (fibres: FibreShares): number => {
    const rugs = [dryingRug({ fibres, targetRegain })];
    const answer = dryForecast(dryingScenario({ hours: 200, rugs }));
    return (answer.ok ? answer.value.rugs[0]?.hoursToTarget : null) ?? Number.NaN;
  };
  const unknown = hoursOf({ unknown: 1 });
  for (const fibre of natural) expect(unknown, fibre).toBeGreaterThanOrEqual(hoursOf({ [fibre]: 1 }) - 1e-9);
  expect(unknown).toBeGreaterThan(hoursOf({ silk: 1 }));
});

test('a forecast says what an unknown fibre was taken for, and nothing where each is named', () => {
  const answer = dryForecast(
    dryingScenario({
      rugs: [
        dryingRug({ id: 'a', fibres: { wool: 0.5, unknown: 0.5 } }),
        dryingRug({ id: 'b', fibres: { unknown: 1 }, targetRegain: 0.16 }),
        dryingRug({ id: 'c' }),
      ],
    }),
  );
  const taken = answer.ok ? answer.value.rugs.map(({ unknownFibreAs }) => unknownFibreAs) : [];
  expect(taken).toEqual(['cotton', 'wool', null]);
});
