import { type PlanStep, phBandOf, type Residue, type WashPlan } from '../core/wash/index.ts';
import { planOnRecord, stepId } from './planFacts.ts';
import type { RugStanding } from './standing.ts';
import { residuesIn } from './workEvents.ts';
import type { WorkshopSettings } from './workshopFacts.ts';

/** The step that laid a residue, with the plan it was begun under. */
const laidIn = (
  { visits }: RugStanding,
  { when }: Residue,
): { readonly step: PlanStep; readonly plan: WashPlan } | null => {
  const begun = visits.flatMap((visit) => visit.begun).find(({ started }) => started.when === when);
  const plan = begun === undefined ? null : planOnRecord(begun.plan);
  const step = plan?.steps.find((one) => stepId(one) === begun?.started.step);
  return plan === null || step === undefined ? null : { step, plan };
};

/**
 * Whether the plan leaves it in the rug: the acid of a final acid rinse. One whose pH nobody read, or off its
 * band, is not left by plan.
 *
 * @source common-practice (data/wash/steps.json)
 */
export const isLeftByPlan = (standing: RugStanding, residue: Residue): boolean => {
  const { ph, where, byOthers } = residue;
  const laid = byOthers === true || where !== null ? null : laidIn(standing, residue);
  if (laid === null || ph === undefined || laid.step.kind !== 'acid rinse') return false;
  const band = phBandOf(laid.step, laid.plan);
  return band !== null && ph >= band.least && ph <= band.most;
};

/**
 * What would go home in the rug although no reading, airing or answer has shown it to be out. The acid of a final
 * acid rinse read within its band is meant to stay and is not among it.
 *
 * @param standing - of the rug, to the end of the visit that is asked about
 * @returns each agent once for each place, the last laid
 * @source common-practice, through residuesOf; data/wash/steps.json for what the final acid rinse leaves
 */
export function goesHomeWith(
  standing: RugStanding,
  settings: Pick<WorkshopSettings, 'ruleChanges'>,
): readonly Residue[] {
  const left = residuesIn(standing, settings).filter((residue) => !isLeftByPlan(standing, residue));
  const keyOf = ({ agent, where }: Residue) => `${agent}/${where ?? ''}`;
  return [...new Map(left.map((residue) => [keyOf(residue), residue])).values()];
}
