import table from '../../../data/mould/hukka1999.json' with { type: 'json' };

/** State of a surface from one hour to the next. */
export interface SurfaceState {
  readonly hour: number;
  readonly temperatureC: number;
  /** Relative humidity at the surface [fraction]. */
  readonly rh: number;
}

export type MouldClass = 'very sensitive' | 'sensitive';

const classNamed = (name: MouldClass) => {
  const row = table.classes.rows.find((one) => one.class === name);
  if (row === undefined) throw new Error(`no mould class ${name}`);
  return row;
};

/**
 * Surface humidity below which mould does not grow.
 *
 * @param temperatureC - of the surface [°C]
 * @param mouldClass - sensitivity of the material
 * @returns relative humidity [per cent]
 * @source hukka-viitanen-1999, eq. 1 (data/mould/hukka1999.json)
 */
export function criticalHumidityPercent(temperatureC: number, mouldClass: MouldClass): number {
  const { cubic, square, linear, constant, flatAboveC } = table.criticalHumidity;
  const { leastHumidity } = classNamed(mouldClass);
  if (temperatureC > flatAboveC) return leastHumidity;
  const T = temperatureC;
  return Math.max(cubic * T ** 3 + square * T ** 2 + linear * T + constant, leastHumidity);
}

/** Growth [index per day], or null where the surface is too dry, too cold or too hot for any. */
function growthPerDay(
  index: number,
  temperatureC: number,
  rhPercent: number,
  mouldClass: MouldClass,
): number | null {
  const [coldest = 0, hottest = 0] = table.growthC;
  const critical = criticalHumidityPercent(temperatureC, mouldClass);
  // At the freezing point it would take saturated air and forever.
  if (temperatureC <= coldest || temperatureC > hottest || rhPercent < critical || critical >= 100)
    return null;
  const { speedBelow1, speedFrom1, most } = classNamed(mouldClass);
  const [a = 0, b = 0, c = 0] = most;
  const x = (critical - rhPercent) / (critical - 100);
  const brake = Math.max(1 - Math.exp(table.nearMost * (index - (a + b * x - c * x * x))), 0);
  const { byLogTemperature, byLogHumidity, constant } = table.weeksToFirst;
  const weeks = Math.exp(
    byLogTemperature * Math.log(temperatureC) + byLogHumidity * Math.log(rhPercent) + constant,
  );
  return ((index < 1 ? speedBelow1 : speedFrom1) * brake) / (7 * weeks);
}

const declinePerDay = (dryHours: number): number => {
  const { firstHours, firstPerDay, restUntilHours, thenPerDay } = table.decline;
  if (dryHours <= firstHours) return firstPerDay;
  return dryHours <= restUntilHours ? 0 : thenPerDay;
};

const longestStepHours = 0.25;

/**
 * Mould index along the states of a surface: 0 nothing, 1 first traces under a microscope, 3 seen by eye.
 * No class is published for soiled wool, so it ranks rugs and does not clear them; the clock of 24 and
 * 48 hours rules.
 *
 * @param states - surface temperature and humidity in rising hours; each holds until the next
 * @param mouldClass - sensitivity of the material; the most sensitive unless known
 * @returns index at each state's hour, the first being 0
 * @source hukka-viitanen-1999, eqs. 1 to 6; classes ojanen-2010 (data/mould/hukka1999.json)
 * @accuracy published curves within 1 %, checked in mouldIndexHukka1999.test.ts
 */
export function mouldIndexHukka1999(
  states: readonly SurfaceState[],
  mouldClass: MouldClass = 'very sensitive',
): readonly number[] {
  let index = 0;
  let dryHours = 0;
  return states.map((state, i) => {
    const before = states[i - 1];
    if (before === undefined) return index;
    const hours = state.hour - before.hour;
    const steps = Math.max(1, Math.ceil(hours / longestStepHours));
    for (let s = 0; s < steps; s++) {
      const growth = growthPerDay(index, before.temperatureC, before.rh * 100, mouldClass);
      dryHours = growth === null ? dryHours + hours / steps : 0;
      index = Math.max(0, index + ((growth ?? -declinePerDay(dryHours)) * hours) / steps / 24);
    }
    return index;
  });
}
