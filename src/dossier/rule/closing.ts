import type { ReturnObstacle, RugProblem } from '../rugProblem.ts';
import { latestVisit, type RugStanding } from '../standing.ts';
import { isWet, wetNowSince } from '../wetting.ts';
import type { Asked, Rules } from './rule.ts';

/** What still stands between the rug and its way home. */
export function returnObstacles(standing: RugStanding): readonly ReturnObstacle[] {
  const visit = latestVisit(standing);
  if (visit === null) return [];
  const declined = visit.declined !== null;
  return [
    ...(visit.inspected === null && !declined ? (['not-inspected'] as const) : []),
    ...(isWet(visit) ? (['not-dry'] as const) : []),
    ...(standing.quarantine === null || declined ? [] : (['quarantined'] as const)),
    ...(standing.out === null ? [] : (['is-out'] as const)),
    ...(visit.stops.some(({ cleared }) => cleared === null) ? (['stop-not-cleared'] as const) : []),
  ];
}

const receivedDay = (standing: RugStanding, { now }: Asked): string =>
  (latestVisit(standing)?.received.when ?? now).slice(0, 10);

/** A day too early or too late to be meant; a day of grace, since the workshop's midnight is not the server's. */
export function dayProblem(
  what: 'back by' | 'storage' | 'unclaimed',
  day: string,
  from: string,
  until: string | null,
): RugProblem | null {
  const dayMs = 86_400_000;
  const isEarly = Date.parse(day) < Date.parse(from) - dayMs;
  const isLate = until !== null && Date.parse(day) > Date.parse(until) + dayMs;
  return isEarly || isLate ? { code: 'day-not-possible', facts: { what, day, from, until } } : null;
}

export const closingRules: Rules = {
  RugInspected: (standing, { marks }) => {
    const looked = new Set(marks.map(({ mark }) => mark));
    const missed = standing.marks.filter(({ mark }) => !looked.has(mark)).map(({ mark }) => mark);
    return missed.length === 0 ? null : { code: 'marks-not-inspected', facts: { marks: missed } };
  },
  RugReturned: (standing, { identity, difference, inQuarantine }) => {
    const obstacles = returnObstacles(standing);
    if (obstacles.length > 0) return { code: 'not-ready-to-return', facts: { obstacles } };
    const quarantine = standing.quarantine?.why;
    if (quarantine !== undefined && inQuarantine === undefined) {
      return { code: 'quarantined-goes-home', facts: { why: quarantine } };
    }
    const which = [
      ...(identity.tag ? [] : ['tag']),
      ...(identity.size ? [] : ['size']),
      ...(identity.mass === 'differs' ? ['mass'] : []),
      ...(identity.picture ? [] : ['picture']),
    ];
    return which.length > 0 && difference === undefined
      ? { code: 'identity-differs', facts: { which } }
      : null;
  },
  VisitDeclined: (standing) => {
    const visit = latestVisit(standing);
    const since = visit === null ? null : wetNowSince(visit);
    if (visit !== null && since !== null && isWet(visit)) return { code: 'wet-rug-stays', facts: { since } };
    return standing.out === null ? null : { code: 'rug-is-out', facts: { to: standing.out.to } };
  },
  StorageDue: (standing, { from }, asked) => dayProblem('storage', from, receivedDay(standing, asked), null),
  Unclaimed: (standing, { since }, asked) =>
    dayProblem('unclaimed', since, receivedDay(standing, asked), asked.now.slice(0, 10)),
  IncidentTold: (standing, { incident }) =>
    latestVisit(standing)?.incidents.some(({ entry, clientTold }) => entry === incident && !clientTold)
      ? null
      : { code: 'incident-unknown', facts: { incident } },
  PaymentTaken: (standing, { amount }, { settings }) =>
    amount.currency === settings.currency || latestVisit(standing) === null
      ? null
      : { code: 'currency-differs', facts: { given: amount.currency, expected: settings.currency } },
  DepositTaken: (_standing, { amount }, { settings }) =>
    amount.currency === settings.currency
      ? null
      : { code: 'currency-differs', facts: { given: amount.currency, expected: settings.currency } },
};
