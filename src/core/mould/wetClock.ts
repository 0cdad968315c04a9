import settings from '../../../data/drying/settings.json' with { type: 'json' };

export type WetClock = 'in time' | 'amber' | 'red';

/** Hours from first wetting at which the clock turns. @source epa-mould-course (data/drying/settings.json) */
export const wetClockHours = settings.wetClock;

/**
 * How the clock of a wet rug stands: dried within 24 to 48 hours, mould will in most cases not grow.
 *
 * @param hoursWet - from the first wetting [h], or null for a rug that does not get dry in the time looked at
 * @returns in time up to 24 h, amber up to 48 h, red after
 * @source epa-mould-course, drying within 24 to 48 hours
 */
export function wetClock(hoursWet: number | null): WetClock {
  if (hoursWet === null || hoursWet > wetClockHours.redHours) return 'red';
  return hoursWet > wetClockHours.amberHours ? 'amber' : 'in time';
}
