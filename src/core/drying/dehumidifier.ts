import settings from '../../../data/drying/dehumidifier.json' with { type: 'json' };
import { saturationPressure } from '../air/index.ts';
import type { Dehumidifier } from './scenario.ts';

const pressureOf = (celsius: number): number => {
  const found = saturationPressure(celsius);
  return found.ok ? found.value : Number.NaN;
};

/**
 * A machine by its rating.
 *
 * @param machine - litres a day at the rated temperature and humidity
 * @returns what it takes out per vapour pressure [kg/s per Pa] and its kind
 * @source none: workshop setting (data/drying/dehumidifier.json)
 */
export function machineOf(machine: Dehumidifier & { readonly ratedC: number; readonly ratedRh: number }) {
  const kgPerS = machine.litresPerDay / 86_400;
  return {
    perPascal: kgPerS / (machine.ratedRh * pressureOf(machine.ratedC)),
    refrigerant: machine.type !== 'desiccant',
  };
}

/**
 * Share of its vapour-proportional removal that a refrigerant machine keeps.
 *
 * @param airC - [°C]
 * @param rh - relative humidity [fraction]
 * @returns share 0 … 1
 * @source none: workshop setting (data/drying/dehumidifier.json)
 */
export function refrigerantShare(airC: number, rh: number): number {
  const { fullFromRh, nothingBelowRh, nothingBelowC } = settings.refrigerant;
  if (airC < nothingBelowC) return 0;
  return Math.min(1, Math.max(0, (rh - nothingBelowRh) / (fullFromRh - nothingBelowRh)));
}

/** Rise of that share per humidity. @source none: workshop setting (data/drying/dehumidifier.json) */
export function refrigerantShareByRh(airC: number, rh: number): number {
  const { fullFromRh, nothingBelowRh, nothingBelowC } = settings.refrigerant;
  if (airC < nothingBelowC || rh <= nothingBelowRh || rh >= fullFromRh) return 0;
  return 1 / (fullFromRh - nothingBelowRh);
}

/**
 * Water a machine takes out of the air.
 *
 * @param machine - a machine with its rating's conditions
 * @param airC - [°C]
 * @param rh - relative humidity [fraction]
 * @returns [L/day]
 * @source none: workshop setting (data/drying/dehumidifier.json)
 * @example litresPerDayAt({ litresPerDay: 70, ratedC: 30, ratedRh: 0.8 }, 20, 0.5) // about 24
 */
export function litresPerDayAt(
  machine: Dehumidifier & { readonly ratedC: number; readonly ratedRh: number },
  airC: number,
  rh: number,
): number {
  const { perPascal, refrigerant } = machineOf(machine);
  return 86_400 * perPascal * rh * pressureOf(airC) * (refrigerant ? refrigerantShare(airC, rh) : 1);
}
