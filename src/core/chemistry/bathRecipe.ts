import { done, type Result } from '../../units/index.ts';
import { equivalentsPerMgCaCO3 } from './acidTable.ts';
import type { Solution } from './chargeBalance.ts';
import {
  type AgentAmount,
  type Contents,
  contentsOf,
  nothing,
  outside,
  type RecipeProblem,
  together,
  withContents,
} from './contents.ts';

/** A bath: water of an alkalinity, and what is put into it. */
export interface BathRecipe {
  readonly litres: number;
  readonly temperatureC: number;
  readonly alkalinityMgPerLCaCO3: number;
  readonly activity: Solution['activity'];
  readonly openToAir: boolean;
  readonly add: readonly AgentAmount[];
}

const bounds = {
  litres: { least: 0.001, most: 100_000, symbol: 'L' },
  temperatureC: { least: 0, most: 60, symbol: '°C' },
  alkalinityMgPerLCaCO3: { least: 0, most: 5000, symbol: 'mg/L CaCO₃' },
} as const;

/** An equivalent of alkalinity. */
const bicarbonate: Contents = { acids: { carbonic: 1 }, strongCharge: 1, spectatorStrength: 0.5 };

/** Nothing that is still a bath holds more than this; it also keeps every pH within the scale’s ends. */
const mostGPerL = 1000;

/**
 * The bath as the charge balance sees it. Alkalinity is taken as bicarbonate that has lost no carbon dioxide,
 * and what is put in as leaving the litres as they are.
 *
 * @param recipe - litres [L], temperature [°C, 0 … 60], alkalinity [mg/L CaCO₃], agents [to 1000 g/L]
 * @refuses out-of-range, agent-unknown, agent-strength-missing, amount-missing
 * @source none: bookkeeping of moles over data/chemistry
 */
export function solutionOf(recipe: BathRecipe): Result<Solution, RecipeProblem> {
  for (const field of ['litres', 'temperatureC', 'alkalinityMgPerLCaCO3'] as const) {
    const { least, most, symbol } = bounds[field];
    const problem = outside(field, recipe[field], least, most, symbol);
    if (problem !== null) return problem;
  }
  const { litres, temperatureC, activity, openToAir } = recipe;
  let all = nothing;
  for (const amount of recipe.add) {
    const read = contentsOf(amount);
    if (!read.ok) return read;
    const much = outside(`amount of ${amount.agent}`, read.value.grams, 0, mostGPerL * litres, 'g');
    if (much !== null) return much;
    all = together(all, read.value.contents);
  }
  const alkalinity = recipe.alkalinityMgPerLCaCO3 * equivalentsPerMgCaCO3;
  const water: Solution = {
    ...{ acidsMolPerL: {}, strongChargeMolPerL: 0, spectatorStrengthMolPerL: 0 },
    ...{ temperatureC, activity, openToAir },
  };
  return done(withContents(withContents(water, bicarbonate, alkalinity), all, 1 / litres));
}
