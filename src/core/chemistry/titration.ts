import { done, type Result } from '../../units/index.ts';
import type { BathRecipe } from './bathRecipe.ts';
import { type Dosed, type DoseProblem, type DoseUncertainty, dose, usualDoseUncertainty } from './dose.ts';
import { phOfBath } from './neutralise.ts';

/** What of an agent brings a bath to a pH. */
export interface TitrationPoint {
  readonly pH: number;
  readonly grams: number;
  readonly least: number;
  readonly most: number;
}

/** So many steps of pH draw a smooth curve. */
const steps = 60;

/** So far past the target the curve goes on, as a share of the way to it. */
const beyond = 0.35;

/**
 * How the pH of a bath moves as an agent goes into it, from what it is now to a little past the target.
 *
 * @param recipe - the bath before the dose
 * @param targetPh - [0 … 14]
 * @returns points in rising grams, each with the range that uncertain strength and water give
 * @refuses as dose
 * @source crc-handbook constants through dose
 */
export function titration(
  recipe: BathRecipe,
  agent: Dosed,
  targetPh: number,
  uncertainty: DoseUncertainty = usualDoseUncertainty,
): Result<readonly TitrationPoint[], DoseProblem> {
  const now = phOfBath(recipe);
  if (!now.ok) return now;
  const reached = dose(recipe, agent, targetPh, uncertainty);
  if (!reached.ok) return reached;
  const way = targetPh - now.value;
  const points: TitrationPoint[] = [];
  for (let step = 0; step <= steps; step++) {
    const pH = now.value + way * (1 + beyond) * (step / steps);
    if (pH < 0 || pH > 14) break;
    const found = dose(recipe, agent, pH, uncertainty);
    // Past the target the agent may have no more to give; there the curve ends.
    if (!found.ok) continue;
    points.push({
      ...{ pH, grams: found.value.grams },
      ...{ least: found.value.interval[0], most: found.value.interval[1] },
    });
  }
  return done(points);
}
