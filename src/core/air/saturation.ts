import moistAir from '../../../data/air/moistAir.json' with { type: 'json' };
import table from '../../../data/air/saturation.json' with { type: 'json' };
import { done, type OutOfRange, type Result, refused } from '../../units/index.ts';

const kelvin = (celsius: number): number => celsius + 273.15;

type Fit = (typeof table)['overWater'];

const pressureByFit = ({ inverse, powers, logarithm }: Fit, temperatureC: number): number => {
  const T = kelvin(temperatureC);
  const sum = powers.reduceRight((total, power) => total * T + power, 0);
  return Math.exp(inverse / T + sum + logarithm * Math.log(T));
};

/**
 * Pressure of vapour that stands over liquid water and neither gains nor loses. Below freezing the fit is
 * carried on over water that has not frozen, as a wet surface that cools by evaporation asks for it.
 *
 * @param temperatureC - [°C, -40 … 200]
 * @returns pressure [Pa]
 * @source ashrae-2017-f01, eq. 6 (data/air/saturation.json)
 * @accuracy 300 ppm above freezing, checked in saturation.test.ts
 */
export const pressureOverWater = (temperatureC: number): number =>
  pressureByFit(table.overWater, temperatureC);

/**
 * Pressure of vapour in saturated air: over ice below freezing, over water above.
 *
 * @param temperatureC - dry-bulb temperature [°C, -100 … 200]
 * @returns pressure [Pa]
 * @refuses out-of-range - outside the range of the fits
 * @source ashrae-2017-f01, eqs. 5 and 6 (data/air/saturation.json)
 * @accuracy 300 ppm of a second implementation, checked in saturation.test.ts
 * @example saturationPressure(30) // about 4247 Pa
 */
export function saturationPressure(temperatureC: number): Result<number, OutOfRange> {
  const { leastC: least } = table.overIce;
  const { mostC: most } = table.overWater;
  if (!(temperatureC >= least && temperatureC <= most)) {
    return refused('out-of-range', {
      ...{ field: 'air temperature', value: temperatureC, least, most, symbol: '°C' },
    });
  }
  return done(
    temperatureC < 0 ? pressureByFit(table.overIce, temperatureC) : pressureOverWater(temperatureC),
  );
}

/**
 * Mass of vapour in a volume of air, by the gas law.
 *
 * @param vapourPressurePa - [Pa]
 * @param temperatureC - of that air [°C]
 * @returns concentration [kg/m³]
 * @source ashrae-2017-f01, section Perfect gas relationships (data/air/moistAir.json)
 * @example vapourConcentration(1699, 30) // about 0.01214: air of 30 °C and 40 %
 */
export const vapourConcentration = (vapourPressurePa: number, temperatureC: number): number =>
  vapourPressurePa / (moistAir.vapourGasConstantJPerKgK * kelvin(temperatureC));

/**
 * Pressure of the vapour in a volume of air; the way back of vapourConcentration.
 *
 * @param concentrationKgPerM3 - [kg/m³]
 * @param temperatureC - [°C]
 * @returns pressure [Pa]
 * @source ashrae-2017-f01, section Perfect gas relationships (data/air/moistAir.json)
 */
export const vapourPressure = (concentrationKgPerM3: number, temperatureC: number): number =>
  concentrationKgPerM3 * moistAir.vapourGasConstantJPerKgK * kelvin(temperatureC);

/**
 * Heat that a kilogram of water takes with it when it evaporates.
 *
 * @param temperatureC - of the water [°C, 0 … 100]
 * @returns heat [J/kg]
 * @source ashrae-2017-f01, eqs. 30 and 33 (data/air/moistAir.json)
 */
export const latentHeat = (temperatureC: number): number =>
  1000 * (moistAir.latentHeatAtZeroKJPerKg - moistAir.latentHeatFallKJPerKgK * temperatureC);
