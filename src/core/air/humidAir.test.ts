import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, test } from 'vitest';
import { agreesWith } from '../../../test/support/agreesWith.ts';
import { airState } from './humidAir.ts';
import { vapourConcentration } from './saturation.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const pressurePa = 101_325;
const stateOf = (temperatureC: number, rh: number) => {
  const found = airState({ temperatureC, rh });
  if (!found.ok) throw new Error(found.problem.code);
  return found.value;
};
/** The humidity at which a wet bulb stands where it was read. */
const rhBy = (dry: number, wet: number): number => {
  let [low, high] = [0.001, 1];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (stateOf(dry, middle).wetBulbC < wet) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
};

const handbook = {
  source: 'ashrae-2017-f01',
  where: 'example 1: moist air at 40 °C dry bulb and 20 °C wet bulb',
  readFrom: 'memory of the source',
} as const;
agreesWith({ ...handbook, within: 0.01, because: 'read off a chart', rows: [{ expected: 0.14 }] }, () =>
  rhBy(40, 20),
);
agreesWith(
  { ...handbook, within: 0.000_15, because: 'read off a chart', rows: [{ expected: 0.0065 }] },
  () => stateOf(40, rhBy(40, 20)).humidityRatio,
);
agreesWith(
  { ...handbook, within: 0.5, because: 'read off a chart', rows: [{ expected: 7 }] },
  () => stateOf(40, rhBy(40, 20)).dewPointC,
);

describe('a second library agrees', () => {
  const cases = [-10, 0.5, 5, 15, 25, 32, 45].flatMap((t) =>
    [0.1, 0.4, 0.75, 1].map((rh) => [t, rh] as const),
  );
  test.each(cases)('on air of %s °C and humidity %s', (temperatureC, rh) => {
    const state = stateOf(temperatureC, rh);
    const ratio = psychrolib.GetHumRatioFromRelHum(temperatureC, rh, pressurePa);
    expect(Math.abs(state.humidityRatio / ratio - 1)).toBeLessThan(5e-4);
    expect(Math.abs(state.dewPointC - psychrolib.GetTDewPointFromRelHum(temperatureC, rh))).toBeLessThan(
      0.01,
    );
    expect(
      Math.abs(state.wetBulbC - psychrolib.GetTWetBulbFromRelHum(temperatureC, rh, pressurePa)),
    ).toBeLessThan(0.02);
  });
  test('on 30 °C and 40 %: 12.14 g of vapour in a cubic metre', () => {
    const ratio = psychrolib.GetHumRatioFromRelHum(30, 0.4, pressurePa);
    const pressure = (pressurePa * ratio) / (0.621945 + ratio);
    const { vapourPressurePa } = stateOf(30, 0.4);
    expect(vapourConcentration(vapourPressurePa, 30)).toBeCloseTo(pressure / (461.5 * 303.15), 5);
  });
});

test('dew point, wet bulb and dry bulb stand in this order', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -20, max: 60, noNaN: true }),
      fc.double({ min: 0.02, max: 1, noNaN: true }),
      (temperatureC, rh) => {
        const { dewPointC, wetBulbC } = stateOf(temperatureC, rh);
        // Below freezing the dew point is over ice and the three may touch.
        expect(dewPointC).toBeLessThanOrEqual(wetBulbC + 0.05);
        expect(wetBulbC).toBeLessThanOrEqual(temperatureC + 1e-6);
      },
    ),
  );
});

test('a humidity in per cent, air too hot and a pressure of no place are refused by name', () => {
  for (const [found, field] of [
    [airState({ temperatureC: 20, rh: 40 }), 'relative humidity'],
    [airState({ temperatureC: 140, rh: 0.4 }), 'air temperature'],
    [airState({ temperatureC: 20, rh: 0.4, pressurePa: 1 }), 'air pressure'],
  ] as const) {
    expect(found.ok).toBe(false);
    if (!found.ok) expect(found.problem.facts.field).toBe(field);
  }
});
