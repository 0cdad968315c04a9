import type { ReturnObstacle } from '../rugProblem.ts';
import { latestVisit, type RugStanding } from '../standing.ts';
import { isWet, wetNowSince } from '../wetting.ts';
import type { Rules } from './rule.ts';

/** What still stands between the rug and its way home. */
export function returnObstacles(standing: RugStanding): readonly ReturnObstacle[] {
  const visit = latestVisit(standing);
  if (visit === null) return [];
  return [
    ...(visit.inspected === null ? (['not-inspected'] as const) : []),
    ...(isWet(visit) ? (['not-dry'] as const) : []),
    ...(standing.quarantine === null ? [] : (['quarantined'] as const)),
    ...(standing.out === null ? [] : (['is-out'] as const)),
    ...(visit.stops.some(({ cleared }) => cleared === null) ? (['stop-not-cleared'] as const) : []),
  ];
}

export const closingRules: Rules = {
  RugInspected: (standing, { marks }) => {
    const looked = new Set(marks.map(({ mark }) => mark));
    const missed = standing.marks.filter(({ mark }) => !looked.has(mark)).map(({ mark }) => mark);
    return missed.length === 0 ? null : { code: 'marks-not-inspected', facts: { marks: missed } };
  },
  RugReturned: (standing, { identity, difference }) => {
    const obstacles = returnObstacles(standing);
    if (obstacles.length > 0) return { code: 'not-ready-to-return', facts: { obstacles } };
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
  PaymentTaken: (standing, { amount }, { settings }) =>
    amount.currency === settings.currency || latestVisit(standing) === null
      ? null
      : { code: 'currency-differs', facts: { given: amount.currency, expected: settings.currency } },
  DepositTaken: (_standing, { amount }, { settings }) =>
    amount.currency === settings.currency
      ? null
      : { code: 'currency-differs', facts: { given: amount.currency, expected: settings.currency } },
};
