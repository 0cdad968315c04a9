import type { WashPlan } from '../core/wash/index.ts';
import { latestVisit, planFingerprint, planOf, wetBlockers } from '../dossier/index.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext, RefusalWords } from './paperContext.ts';
import { notice } from './parts.ts';

const isUnderWay = ({ rug, visit }: PaperContext): boolean =>
  visit.end === null && latestVisit(rug)?.received.visit === visit.received.visit;

/**
 * The plan the rug's record supports at the time of issue, or why it supports none. Of a visit that is over,
 * the plan that was put on record then: later tests and rules do not speak for it.
 */
export function presentPlan(
  context: PaperContext,
): { readonly ok: true; readonly plan: WashPlan } | { readonly ok: false; readonly words: RefusalWords } {
  const { rug, visit, workshop, issuedAt, words } = context;
  if (!isUnderWay(context)) {
    if (visit.plan !== null) return { ok: true, plan: visit.plan.plan as unknown as WashPlan };
    const happened = 'The visit ended without a wash plan on record.';
    return {
      ok: false,
      words: { happened, matters: 'No limit was worked out for it.', now: 'Nothing is to be done.' },
    };
  }
  const plan = planOf(rug, workshop.settings, issuedAt);
  return plan.ok ? { ok: true, plan: plan.value } : { ok: false, words: words.problem(plan.problem) };
}

export interface PlanInForce {
  readonly plan: WashPlan;
  readonly fingerprint: string;
  /** The client's agreement stands and is to this very plan. */
  readonly agreed: boolean;
}

/**
 * The plan a paper about the work speaks of: the one put to the client, whole as it was recorded; before
 * that, the one the record supports now.
 *
 * @returns null when there is neither
 */
export function planInForce(context: PaperContext): PlanInForce | null {
  const { plan: recorded, consent } = context.visit;
  if (recorded !== null) {
    const agreed = consent.kind === 'given' && consent.given.plan === recorded.fingerprint;
    return { plan: recorded.plan as unknown as WashPlan, fingerprint: recorded.fingerprint, agreed };
  }
  const present = presentPlan(context);
  if (!present.ok) return null;
  return { plan: present.plan, fingerprint: planFingerprint(present.plan), agreed: false };
}

/** What stands between the rug and water at the time of issue, as a box; nothing when the visit is over. */
export function blockerParts(context: PaperContext, except: readonly string[] = []): readonly PaperPart[] {
  const { rug, workshop, issuedAt, words } = context;
  if (!isUnderWay(context)) return [];
  const blockers = wetBlockers(rug, workshop.settings, issuedAt).filter(({ code }) => !except.includes(code));
  if (blockers.length === 0) return [];
  const lines = blockers.map((blocker) => {
    const { happened, now } = words.problem(blocker);
    return `${happened} ${now}`;
  });
  return [notice('stop', 'No wet step yet', lines)];
}
