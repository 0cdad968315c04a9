import { agreedPlan, stepId } from './planFacts.ts';
import { latestVisit, type RugStanding } from './standing.ts';
import { isWet, wetNowSince } from './wetting.ts';

/** How long a rug has been wet and unextracted, against what its plan allows. */
export interface WetMinutes {
  readonly since: string;
  /** From wetting to the end of extraction, or to now [min]. */
  readonly used: number;
  readonly allowed: number;
  /** Whether they still run: wetted and not yet extracted. */
  readonly isRunning: boolean;
}

/**
 * The wet minutes of a rug in the wash; null while it is dry or no plan caps them.
 *
 * @param standing - the rug's standing
 * @param now - instant
 * @source workshop-setting, wet minutes by fibre and dye class (data/wash/fibres.json, data/wash/dyeTests.json)
 */
export function wetMinutesOf(standing: RugStanding, now: string): WetMinutes | null {
  const visit = latestVisit(standing);
  const plan = agreedPlan(standing);
  const since = visit === null ? null : wetNowSince(visit);
  if (visit === null || plan === null || since === null || !isWet(visit)) return null;
  const extracts = plan.steps.filter(({ kind }) => kind === 'extract').map(stepId);
  const extracted = visit.steps.find(
    ({ step, done }) => extracts.includes(step) && done !== null && done.when >= since,
  )?.done?.when;
  const until = extracted ?? visit.dryingStarted?.when ?? now;
  return {
    since,
    used: (Date.parse(until) - Date.parse(since)) / 60_000,
    allowed: plan.bounds.wetMinutes,
    isRunning: extracted === undefined && visit.dryingStarted === null,
  };
}

/** Whether a rug has been wet for longer than it bears and must be rinsed and extracted now. */
export const wetMinutesAreUsed = (standing: RugStanding, now: string): boolean => {
  const minutes = wetMinutesOf(standing, now);
  return minutes?.isRunning === true && minutes.used >= minutes.allowed;
};
