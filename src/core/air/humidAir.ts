import moistAir from '../../../data/air/moistAir.json' with { type: 'json' };
import { done, type OutOfRange, type Result, refused } from '../../units/index.ts';
import { saturationPressure } from './saturation.ts';

/** Air of a temperature [°C], relative humidity [fraction 0 … 1] and pressure [Pa, the sea's unless given]. */
export interface HumidAir {
  readonly temperatureC: number;
  readonly rh: number;
  readonly pressurePa?: number;
}

/** What an air holds and how far it can cool. */
export interface AirState {
  readonly vapourPressurePa: number;
  /** [kg vapour per kg dry air]; the figure to compare rooms and outside by. */
  readonly humidityRatio: number;
  /** Temperature at which it would begin to wet what it touches [°C]. */
  readonly dewPointC: number;
  /** Temperature a wet, well-ventilated, unheated body takes [°C]. */
  readonly wetBulbC: number;
}

const halve = (low: number, high: number, isBelow: (middle: number) => boolean): number => {
  let [from, to] = [low, high];
  for (let i = 0; i < 60; i++) {
    const middle = (from + to) / 2;
    if (isBelow(middle)) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
};

const pressureAt = (temperatureC: number): number => {
  const found = saturationPressure(temperatureC);
  return found.ok ? found.value : Number.NaN;
};

/** @source ashrae-2017-f01, eq. 20 */
const ratioOf = (vapourPressurePa: number, pressurePa: number): number =>
  (moistAir.massRatioVapourToAir * vapourPressurePa) / (pressurePa - vapourPressurePa);

/** Humidity ratio of air whose wet-bulb thermometer stands at a temperature. @source ashrae-2017-f01, eqs. 33 and 35 */
function ratioByWetBulb(temperatureC: number, wetBulbC: number, pressurePa: number): number {
  const saturated = ratioOf(pressureAt(wetBulbC), pressurePa);
  const frozen = wetBulbC < 0;
  const latent = frozen
    ? moistAir.iceLatentHeatKJPerKg - moistAir.iceLatentHeatFallKJPerKgK * wetBulbC
    : moistAir.latentHeatAtZeroKJPerKg - 2.326 * wetBulbC;
  const atAir = frozen ? moistAir.iceLatentHeatKJPerKg : moistAir.latentHeatAtZeroKJPerKg;
  const held = frozen ? moistAir.iceHeatKJPerKgK : moistAir.waterHeatKJPerKgK;
  return (
    (latent * saturated - moistAir.dryAirHeatKJPerKgK * (temperatureC - wetBulbC)) /
    (atAir + moistAir.vapourHeatKJPerKgK * temperatureC - held * wetBulbC)
  );
}

/**
 * Vapour pressure, humidity ratio, dew point and wet bulb of an air.
 *
 * @param air - dry bulb [°C, -40 … 100], relative humidity [fraction above 0 … 1], pressure [Pa]
 * @returns what the air holds; over ice where it is below freezing
 * @refuses out-of-range - outside those bounds, or a humidity given in per cent
 * @source ashrae-2017-f01, eqs. 5, 6, 20, 33 and 35
 * @accuracy dew point and wet bulb within 0.01 °C of a second implementation, checked in humidAir.test.ts
 * @example airState({ temperatureC: 30, rh: 0.4 }) // dew point 14.9 °C, wet bulb 20.1 °C
 */
export function airState(air: HumidAir): Result<AirState, OutOfRange> {
  const { temperatureC, rh, pressurePa = moistAir.standardPressurePa } = air;
  const bounds = [
    { field: 'air temperature', value: temperatureC, least: -40, most: 100, symbol: '°C' },
    { field: 'relative humidity', value: rh, least: 0.001, most: 1, symbol: 'as a fraction of 1' },
    { field: 'air pressure', value: pressurePa, least: 50_000, most: 110_000, symbol: 'Pa' },
  ];
  const wrong = bounds.find(({ value, least, most }) => !(value >= least && value <= most));
  if (wrong !== undefined) return refused('out-of-range', wrong);
  const vapourPressurePa = rh * pressureAt(temperatureC);
  const humidityRatio = ratioOf(vapourPressurePa, pressurePa);
  return done({
    vapourPressurePa,
    humidityRatio,
    dewPointC: halve(-100, temperatureC, (middle) => pressureAt(middle) < vapourPressurePa),
    wetBulbC: halve(
      -60,
      temperatureC,
      (middle) => ratioByWetBulb(temperatureC, middle, pressurePa) < humidityRatio,
    ),
  });
}
