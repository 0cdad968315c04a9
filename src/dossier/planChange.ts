import { type Tightening, tightens, type WashPlan } from '../core/wash/index.ts';
import type { Problem, Result } from '../units/index.ts';
import { agreedPlan, planOf } from './planFacts.ts';
import { canonicalJson } from './seal.ts';
import { presentVisit, type RugStanding } from './standing.ts';
import type { WorkshopSettings } from './workshopFacts.ts';

/** How a plan reads in a list of plans: its method, or why there is none. */
export type PlanInShort =
  | { readonly kind: 'plan'; readonly method: string; readonly steps: number }
  | { readonly kind: 'none'; readonly refusal: Problem };

/** What other rules would change for one rug. */
export interface PlanChange {
  readonly before: PlanInShort;
  readonly after: PlanInShort;
  /** Axes on which the new plan allows less, and on which it allows more. */
  readonly tighter: readonly Tightening[];
  readonly looser: readonly Tightening[];
  /** Axes on which it allows less than the plan the client agreed to: wet work then waits for a new consent. */
  readonly againstAgreed: readonly Tightening[];
}

const inShort = (plan: Result<WashPlan, Problem>): PlanInShort =>
  plan.ok
    ? { kind: 'plan', method: plan.value.method, steps: plan.value.steps.length }
    : { kind: 'none', refusal: plan.problem };

const withoutVersion = (plan: Result<WashPlan, Problem>): string =>
  canonicalJson(plan.ok ? { ...plan.value, rulebook: '', ownRules: [] } : plan.problem);

/**
 * What a change of the rules does to a rug whose visit is under way.
 *
 * @param standing - the rug's standing
 * @param before - the settings now
 * @param after - the settings with the change
 * @param now - instant, for the age of dye tests
 * @returns null where its plan stays the same, or there is no visit
 * @source none: rule of this project
 */
export function planChangeOf(
  standing: RugStanding,
  before: WorkshopSettings,
  after: WorkshopSettings,
  now: string,
): PlanChange | null {
  if (presentVisit(standing) === null) return null;
  const [old, fresh] = [planOf(standing, before, now), planOf(standing, after, now)];
  if (withoutVersion(old) === withoutVersion(fresh)) return null;
  const both = old.ok && fresh.ok;
  const agreed = agreedPlan(standing);
  return {
    before: inShort(old),
    after: inShort(fresh),
    tighter: both ? tightens(old.value, fresh.value) : [],
    looser: both
      ? tightens(fresh.value, old.value).map(({ axis, from, to }) => ({ axis, from: to, to: from }))
      : [],
    againstAgreed: agreed !== null && fresh.ok ? tightens(agreed, fresh.value) : [],
  };
}
