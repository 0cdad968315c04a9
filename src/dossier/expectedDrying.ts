import settings from '../../data/drying/room.json' with { type: 'json' };
import type { DryingHoursFrom } from '../core/wash/index.ts';
import type { Noted, VisitStanding } from './standing.ts';
import { hoursBetween } from './wetting.ts';

/** The hours until dry that a plan reckons with, and where they come from. */
export interface ExpectedDrying {
  readonly hours: number;
  readonly from: DryingHoursFrom;
}

/** The forecast that holds: the latest, unless the owner put hours of their own in its place later. */
export const forecastInForce = (visit: VisitStanding): Noted<'DryingForecast'> | null => {
  const { dryingForecast: made, dryingExpected: typed } = visit;
  return made !== null && (typed === null || typed.when < made.when) ? made : null;
};

/**
 * Hours from first wetting until dry, by the forecast in force or by hand; null when nobody said.
 *
 * @param visit - the visit under way
 * @returns a forecast without an end counts with the hours it looked at: long enough for every rule
 * @source none: rule of this project, docs/decisions/0010-the-forecast-is-a-fact.md
 */
export function expectedDrying(visit: VisitStanding): ExpectedDrying | null {
  const made = forecastInForce(visit);
  if (made !== null) {
    return made.hours === null
      ? { hours: made.lookedHours, from: 'forecast of the drying room, no end in sight by then' }
      : { hours: made.hours, from: 'forecast of the drying room, dry by then in nine of ten' };
  }
  return visit.dryingExpected === null
    ? null
    : { hours: visit.dryingExpected.hours, from: 'estimated by hand' };
}

/** Hours for which a forecast holds: what hangs in the room is another load the next day. */
export const forecastFreshHours = settings.forecast.freshHours;

/** Whether the forecast that the plan reckons with is too old to wet a rug by. */
export const isForecastStale = (visit: VisitStanding, now: string): boolean => {
  const made = forecastInForce(visit);
  return made !== null && hoursBetween(made.when, now) > forecastFreshHours;
};
