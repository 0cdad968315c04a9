import { expect, test } from 'vitest';
import { agreesWith } from '../../../test/support/agreesWith.ts';
import { bathPh } from './bathPh.ts';
import type { Solution } from './chargeBalance.ts';

const acetate = (molPerL: number): Solution => ({
  acidsMolPerL: { acetic: molPerL },
  strongChargeMolPerL: molPerL / 2,
  spectatorStrengthMolPerL: molPerL / 4,
  ...{ temperatureC: 25, activity: 'ideal', openToAir: false },
});

const capacity = (solution: Solution): number => {
  const found = bathPh(solution);
  return found.ok ? found.value.bufferCapacityMolPerLPerPh : Number.NaN;
};

agreesWith(
  {
    source: 'stumm-morgan-1996',
    where: 'buffer intensity: 2.303·(C·K·[H]/(K+[H])² + [H] + [OH]); a half-neutralised acid gives 2.303·C/4',
    readFrom: 'computed by hand from the formula; memory of the source',
    within: 0.0001,
    because: 'the half-neutralised pH lies within a thousandth of pKa 4.756',
    rows: [
      { molPerL: 0.1, expected: Math.LN10 * (0.025 + 1.754e-5) },
      { molPerL: 0.02, expected: Math.LN10 * (0.005 + 1.752e-5) },
    ],
  },
  ({ molPerL }) => {
    return capacity(acetate(molPerL));
  },
);

test('more of the same buffer holds the pH more firmly', () => {
  expect(capacity(acetate(0.1))).toBeGreaterThan(capacity(acetate(0.01)));
});
