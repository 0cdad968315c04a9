import { wetClockHours } from '../core/mould/index.ts';
import type { VisitStanding } from './standing.ts';

export { wetClockHours };

/**
 * When the rug was first wetted in this visit, or null.
 *
 * @source epa-mould-course: materials dried within 24 to 48 hours will in most cases not grow mould
 */
export const wetSince = (visit: VisitStanding): string | null => visit.firstWettedAt;

/** When the present wetness began: the first wetting, or the first after it was accepted as dry. */
export const wetNowSince = (visit: VisitStanding): string | null => visit.wettedAgainAt ?? wetSince(visit);

/** Wetted in this visit and not yet accepted as dry. */
export const isWet = (visit: VisitStanding): boolean =>
  wetSince(visit) !== null && visit.dryAccepted === null;

/** Hours from one instant to another. */
export const hoursBetween = (from: string, until: string): number =>
  (Date.parse(until) - Date.parse(from)) / 3_600_000;

/** The wet clock as it reads at an instant; null for a rug that is not wet. */
export function wetClock(
  visit: VisitStanding,
  now: string,
): { readonly since: string; readonly hours: number; readonly colour: 'green' | 'amber' | 'red' } | null {
  const since = wetNowSince(visit);
  if (since === null || visit.dryAccepted !== null) return null;
  const hours = hoursBetween(since, now);
  const colour =
    hours >= wetClockHours.redHours ? 'red' : hours >= wetClockHours.amberHours ? 'amber' : 'green';
  return { since, hours, colour };
}
