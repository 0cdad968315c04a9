import type { PlanProblem, WashPlan } from '../core/wash/index.ts';
import type { Result } from '../units/index.ts';
import type { RugFactOf } from './facts/index.ts';
import type { SizeNotMeasured } from './planFacts.ts';

type OverriddenRule = RugFactOf<'OverrideGranted'>['rule'];

/**
 * What an override of a rule would be about now: the findings, colours or hours by which the rule holds.
 * An override is for these alone; a later finding under the same rule holds again.
 *
 * @param plan - the plan that follows from the record now
 * @param rule - the rule to be set aside
 * @returns what it is about; empty where the rule is about the whole visit; null when it does not hold at all
 * @source none: rule of this project
 */
export function overrideAbout(
  plan: Result<WashPlan, PlanProblem | SizeNotMeasured>,
  rule: OverriddenRule,
): readonly string[] | null {
  if (rule === 'dry standard') return [];
  if (plan.ok) {
    const held = plan.value.limits.filter((limit) => limit.rule === rule && limit.overridable);
    return held.length === 0 ? null : [...new Set(held.map(({ about }) => about))].sort();
  }
  const { code, facts } = plan.problem;
  if (code === 'wash-promise-too-early') return rule === 'R39' ? [] : null;
  const sides =
    code === 'wash-limits-clash' ? [facts.first, facts.second] : code === 'wash-blocked' ? [facts] : [];
  const held = sides.filter((side) => side.rule === rule);
  return held.length === 0 ? null : held.map(({ about }) => about).sort();
}
