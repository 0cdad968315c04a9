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
 * The warmth [°C] of a step's water: cold is no shock, so without an aim only the plan's cap holds.
 *
 * @source none: reads a plan
 */
export const temperatureBandOf = (step: PlanStep | undefined, { bounds }: WashPlan): Band =>
  step?.temperatureC ?? { least: 0, most: bounds.temperatureC };
