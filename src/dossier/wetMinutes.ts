import type { Band, PlanStep } from '../core/wash/index.ts';
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

/** Minutes a step takes by its plan: its dwell, or what its work usually takes. */
function stepMinutes({ dwellMinutes = 0, amounts }: PlanStep): Band {
  const work = amounts.find(({ unit }) => unit === 'min');
  return { least: dwellMinutes || (work?.least ?? 0), most: Math.max(dwellMinutes, work?.most ?? 0) };
}

/**
 * Wet minutes that the rest of the plan still takes until the rug is extracted, by its dwells and by what such
 * work usually takes here; a step under way counts with what is left of it.
 *
 * @param standing - the rug's standing
 * @param now - instant
 * @returns least and most [min]; the least leaves no minute between two steps
 * @source workshop-setting, minutes of work by area (data/wash/shopFacts.json); dwells of the plan
 */
export function wetMinutesAhead(standing: RugStanding, now: string): Band {
  const visit = latestVisit(standing);
  const steps = agreedPlan(standing)?.steps ?? [];
  const last = steps.findLastIndex(({ kind }) => kind === 'extract');
  let [least, most] = [0, 0];
  for (const step of steps.slice(0, last + 1)) {
    const known = visit?.steps.find((one) => one.step === stepId(step));
    if (!step.wet || (known?.done ?? null) !== null) continue;
    const started = known?.started?.when;
    const gone = started === undefined ? 0 : (Date.parse(now) - Date.parse(started)) / 60_000;
    const takes = stepMinutes(step);
    least += Math.max(0, takes.least - gone);
    most += Math.max(0, takes.most - gone);
  }
  return { least, most };
}

/** Whether a rug has been wet for longer than it bears and must be rinsed and extracted now. */
export const wetMinutesAreUsed = (standing: RugStanding, now: string): boolean => {
  const minutes = wetMinutesOf(standing, now);
  return minutes?.isRunning === true && minutes.used >= minutes.allowed;
};
