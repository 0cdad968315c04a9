import stopTable from '../../../data/wash/stopConditions.json' with { type: 'json' };
import type { Band } from './limit.ts';
import type { PlanStep, WashPlan } from './washPlan.ts';

/**
 * The pH a step's liquid must keep: its own aim, else the plan's band for it.
 *
 * @returns null where no liquid may touch the rug
 * @source none: reads a plan
 */
export const phBandOf = (step: PlanStep | undefined, { bounds }: WashPlan): Band | null => {
  const band = step?.targetPh ?? (step?.kind === 'acid rinse' ? bounds.finalPh : bounds.bathPh);
  return band === 'no liquid' ? null : band;
};

/**
 * The pH a rinse must keep: what is left of the bath on its way to the plain supply, whose pH was read beside it.
 * Only an acid rinse has an aim of its own. A supply nobody read, or beyond what a rinse is trusted with, counts
 * for nothing: the plan's band holds.
 *
 * @param supplyPh - pH of the water it is rinsed with
 * @returns null where no liquid may touch the rug
 * @source workshop-setting (data/wash/stopConditions.json)
 */
export const rinsePhBandOf = (
  step: PlanStep | undefined,
  plan: WashPlan,
  supplyPh: number | undefined,
): Band | null => {
  const band = phBandOf(step, plan);
  const { least, most } = stopTable.rinseSupplyPh;
  const isTrusted = supplyPh !== undefined && supplyPh >= least && supplyPh <= most;
  if (band === null || step?.targetPh !== undefined || step?.kind === 'acid rinse' || !isTrusted) return band;
  return { least: Math.min(band.least, supplyPh), most: Math.max(band.most, supplyPh) };
};

/**
 * The warmth [°C] of a step's water: cold is no shock, so without an aim only the plan's cap holds.
 *
 * @source none: reads a plan
 */
export const temperatureBandOf = (step: PlanStep | undefined, { bounds }: WashPlan): Band =>
  step?.temperatureC ?? { least: 0, most: bounds.temperatureC };
