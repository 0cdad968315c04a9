import {
  type Axis,
  type Method,
  methods,
  type Signatory,
  tightens,
  type WashPlan,
} from '../core/wash/index.ts';
import { done, type Problem, type Result, refused } from '../units/index.ts';
import { forecastFreshHours, isForecastStale } from './expectedDrying.ts';
import { planOf } from './planFacts.ts';
import { latestVisit, type RugStanding, type VisitStanding } from './standing.ts';
import { wetMinutesOf } from './wetMinutes.ts';
import { isWet } from './wetting.ts';
import type { WorkshopSettings } from './workshopFacts.ts';

type Nothing = Readonly<Record<string, never>>;

/** One thing that stands between this rug and water. */
export type WetBlocker =
  | Problem<'rug-quarantined', { readonly why: string }>
  | Problem<'rug-is-out', { readonly to: string }>
  | Problem<'no-plan-possible', { readonly refusal: Problem }>
  | Problem<'method-not-wet', { readonly method: Method; readonly because: readonly string[] }>
  | Problem<'plan-not-agreed', Nothing>
  | Problem<'plan-tightened', { readonly axes: readonly Axis[] }>
  | Problem<'sign-off-missing', { readonly who: readonly Signatory[] }>
  | Problem<'consent-missing', Nothing>
  | Problem<'consent-refused', { readonly words: string }>
  | Problem<'consent-withdrawn', { readonly words: string }>
  | Problem<'consent-for-another-plan', Nothing>
  | Problem<
      'price-above-consent',
      { readonly agreedMinor: number; readonly quotedMinor: number; readonly currency: string }
    >
  | Problem<'drying-forecast-stale', { readonly madeAt: string; readonly mostHours: number }>
  | Problem<'stop-not-cleared', { readonly condition: string }>
  | Problem<'wet-minutes-used', { readonly used: number; readonly allowed: number }>;

export type WashNotAllowed = Problem<'wash-not-allowed', { readonly blockers: readonly WetBlocker[] }>;

/** Methods that put water on the rug. */
export const isWetMethod = (method: Method): boolean => methods.indexOf(method) < methods.indexOf('dry only');

const consentBlocker = (visit: VisitStanding): WetBlocker | null => {
  const { consent, plan, quote } = visit;
  switch (consent.kind) {
    case 'none':
      return { code: 'consent-missing', facts: {} };
    case 'refused':
      return { code: 'consent-refused', facts: { words: consent.refused.words } };
    case 'withdrawn':
      return { code: 'consent-withdrawn', facts: { words: consent.withdrawn.words } };
    case 'given': {
      if (plan !== null && consent.given.plan !== plan.fingerprint) {
        return { code: 'consent-for-another-plan', facts: {} };
      }
      const agreed = consent.given.notToExceed;
      const quoted = quote?.notToExceed;
      if (
        quoted !== undefined &&
        (quoted.amountMinor > agreed.amountMinor || quoted.currency !== agreed.currency)
      ) {
        return {
          code: 'price-above-consent',
          facts: {
            agreedMinor: agreed.amountMinor,
            quotedMinor: quoted.amountMinor,
            currency: quoted.currency,
          },
        };
      }
      return null;
    }
  }
};

const planBlockers = (visit: VisitStanding, current: WashPlan): readonly WetBlocker[] => {
  if (!isWetMethod(current.method)) {
    const binding = current.limits.filter((limit) => limit.axis === 'method' && limit.binding);
    const reasons = binding.map(({ about, because }) => (about === '' ? because : `${about}: ${because}`));
    const facts = { method: current.method, because: [...new Set(reasons)] };
    return [{ code: 'method-not-wet', facts }];
  }
  if (visit.plan === null) return [{ code: 'plan-not-agreed', facts: {} }];
  const axes = tightens(visit.plan.plan as unknown as WashPlan, current).map(({ axis }) => axis);
  const missing = current.signOffs.filter(({ given }) => !given).map(({ who }) => who);
  return [
    ...(axes.length > 0 ? [{ code: 'plan-tightened', facts: { axes } } as const] : []),
    ...(missing.length > 0 ? [{ code: 'sign-off-missing', facts: { who: missing } } as const] : []),
  ];
};

/**
 * Everything that forbids a wet step now; an empty list allows it.
 *
 * @param standing - the rug's standing
 * @param settings - the workshop's settings
 * @param now - instant, for the age of dye tests
 * @source none: safety rule of this project; no wet step without a plan the dossier supports
 */
export function wetBlockers(
  standing: RugStanding,
  settings: WorkshopSettings,
  now: string,
): readonly WetBlocker[] {
  const visit = latestVisit(standing);
  if (visit === null) return [{ code: 'plan-not-agreed', facts: {} }];
  const current = planOf(standing, settings, now);
  const consent = consentBlocker(visit);
  const minutes = wetMinutesOf(standing, now);
  const open = visit.stops.find(({ cleared }) => cleared === null);
  return [
    ...(standing.quarantine === null
      ? []
      : [{ code: 'rug-quarantined', facts: { why: standing.quarantine.why } } as const]),
    ...(standing.out === null ? [] : [{ code: 'rug-is-out', facts: { to: standing.out.to } } as const]),
    ...(current.ok
      ? planBlockers(visit, current.value)
      : [{ code: 'no-plan-possible', facts: { refusal: current.problem } } as const]),
    ...(consent === null ? [] : [consent]),
    ...(!isWet(visit) && isForecastStale(visit, now)
      ? [
          {
            code: 'drying-forecast-stale',
            facts: { madeAt: visit.dryingForecast?.when ?? now, mostHours: forecastFreshHours },
          } as const,
        ]
      : []),
    ...(open === undefined
      ? []
      : [{ code: 'stop-not-cleared', facts: { condition: open.called.condition } } as const]),
    ...(minutes?.isRunning === true && minutes.used >= minutes.allowed
      ? [
          {
            code: 'wet-minutes-used',
            facts: { used: Math.floor(minutes.used), allowed: minutes.allowed },
          } as const,
        ]
      : []),
  ];
}

/**
 * Whether a wet step may start.
 *
 * @refuses wash-not-allowed - with every blocker, so that all can be cleared in one go
 * @source none: safety rule of this project
 */
export function mayWet(
  standing: RugStanding,
  settings: WorkshopSettings,
  now: string,
): Result<true, WashNotAllowed> {
  const blockers = wetBlockers(standing, settings, now);
  return blockers.length === 0 ? done(true) : refused('wash-not-allowed', { blockers });
}
