import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { expect, test } from 'vitest';
import { agreesWith } from '../../../test/support/agreesWith.ts';
import { latentHeat, saturationPressure, vapourConcentration, vapourPressure } from './saturation.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const pressureOf = (celsius: number): number => {
  const found = saturationPressure(celsius);
  return found.ok ? found.value : Number.NaN;
};

agreesWith(
  {
    source: 'ashrae-2017-f01',
    where: 'table 3: Thermodynamic properties of water at saturation',
    readFrom: 'memory of the source',
    within: (expected) => expected * 3e-4,
    because: 'the fit holds to 300 ppm, the table is rounded',
    rows: [
      { celsius: 0.01, expected: 611.7 },
      { celsius: 20, expected: 2338.8 },
      { celsius: 30, expected: 4245.5 },
      { celsius: 40, expected: 7381.4 },
    ],
  },
  ({ celsius }) => pressureOf(celsius),
);

test('a second library finds the same saturation pressure, over ice and over water', () => {
  for (let celsius = -40; celsius <= 120; celsius += 2.5) {
    const other = psychrolib.GetSatVapPres(celsius);
    expect(Math.abs(pressureOf(celsius) / other - 1), `${celsius} °C`).toBeLessThan(3e-4);
  }
});

test('warmer air can hold more', () => {
  const celsius = fc.double({ min: -99, max: 199, noNaN: true });
  fc.assert(
    fc.property(celsius, celsius, (a, b) => {
      expect(pressureOf(Math.max(a, b))).toBeGreaterThanOrEqual(pressureOf(Math.min(a, b)));
    }),
  );
});

test('vapour by volume and by pressure are two words for one thing', () => {
  expect(vapourPressure(vapourConcentration(1699, 30), 30)).toBeCloseTo(1699, 9);
});

agreesWith(
  {
    source: 'ashrae-2017-f01',
    where: 'table 3: enthalpy of evaporation at 0 and 30 °C',
    readFrom: 'memory of the source',
    within: 2500,
    because: 'a straight line stands for the table, good to a part in a thousand',
    rows: [
      { celsius: 0, expected: 2_500_900 },
      { celsius: 30, expected: 2_429_800 },
    ],
  },
  ({ celsius }) => latentHeat(celsius),
);

test('a temperature the fits were not made for is refused', () => {
  for (const celsius of [-101, 201, Number.NaN]) {
    const found = saturationPressure(celsius);
    expect(found.ok).toBe(false);
    if (!found.ok) expect(found.problem.code).toBe('out-of-range');
  }
});
