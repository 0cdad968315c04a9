import { done, type Problem, type Result, refused } from '../../units/index.ts';
import { bathPh, type IonicStrengthTooHigh } from './bathPh.ts';
import { agentNamed, type BathRecipe, type RecipeProblem, solutionOf } from './bathRecipe.ts';
import type { Share } from './shelfAgent.ts';

export type DoseProblem =
  | RecipeProblem
  | IonicStrengthTooHigh
  | Problem<
      'target-out-of-reach',
      { readonly agent: string; readonly targetPh: number; readonly phNow: number; readonly phAtMost: number }
    >;

/** What of the water and the agent is uncertain: shares by which each may be off. */
export interface DoseUncertainty {
  /** Of the agent's strength, as a share of it; 0.05 means ±5 %. */
  readonly strength: number;
  /** Of the water's alkalinity, as a share of it. */
  readonly alkalinity: number;
}

/** Workshop setting until a lot's own figures are known. @source workshop-setting */
export const usualDoseUncertainty: DoseUncertainty = { strength: 0.05, alkalinity: 0.1 };

/** Nobody doses more than this into a litre of wash bath. */
const mostGramsPerLitre = 50;

/** What is dosed: a chemical at full strength, or a product by the mass shares of what is in it. */
export type Dosed = string | { readonly name: string; readonly shares: readonly Share[] };

const phWith = (recipe: BathRecipe, dosed: Dosed, grams: number): Result<number, DoseProblem> => {
  const shares = typeof dosed === 'string' ? [{ agent: dosed, strength: 1 }] : dosed.shares;
  const more = shares.map(({ agent, strength }) => ({ agent, grams, strength }));
  const solution = solutionOf({ ...recipe, add: [...recipe.add, ...more] });
  if (!solution.ok) return solution;
  const found = bathPh(solution.value);
  return found.ok ? done(found.value.pH) : found;
};

const nameOf = (dosed: Dosed): string => (typeof dosed === 'string' ? dosed : dosed.name);

function gramsTo(recipe: BathRecipe, agent: Dosed, targetPh: number): Result<number, DoseProblem> {
  const before = phWith(recipe, agent, 0);
  if (!before.ok) return before;
  const most = mostGramsPerLitre * recipe.litres;
  const after = phWith({ ...recipe, activity: 'ideal' }, agent, most);
  if (!after.ok) return after;
  const rises = after.value > before.value;
  const between = (targetPh - before.value) * (targetPh - after.value) <= 0;
  if (!between) {
    const facts = { agent: nameOf(agent), targetPh, phNow: before.value, phAtMost: after.value };
    return refused('target-out-of-reach', facts);
  }
  let [low, high] = [0, most];
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2;
    const found = phWith(recipe, agent, middle);
    // Past the strength the Davies equation bears, the dose is too large in any case of use.
    const enough = !found.ok || (rises ? found.value >= targetPh : found.value <= targetPh);
    if (enough) high = middle;
    else low = middle;
  }
  const reached = phWith(recipe, agent, high);
  return reached.ok ? done(high) : reached;
}

/** Whether the bath lies beyond the target before anything is dosed: then nothing is needed. */
const isPast = (problem: DoseProblem): boolean => {
  if (problem.code !== 'target-out-of-reach') return false;
  const { targetPh, phNow, phAtMost } = problem.facts;
  return Math.abs(phAtMost - targetPh) > Math.abs(phNow - targetPh);
};

/**
 * Grams of an agent that bring a bath to a pH, with the range that uncertain strength and water give.
 *
 * @param recipe - the bath before the dose
 * @param agent - chemical name, at full strength, or a product; grams are then of the product
 * @param targetPh - [0 … 14]
 * @param uncertainty - shares by which strength and alkalinity may be off
 * @returns grams for the whole bath, and the interval they may truly need
 * @refuses target-out-of-reach - the agent cannot bring this water there; out-of-range, agent-unknown
 * @source crc-handbook constants through bathPh
 * @example dose(1 L of 250 mg/L CaCO₃, 'citric acid, anhydrous', 5) // about 0.56 g
 */
export function dose(
  recipe: BathRecipe,
  agent: Dosed,
  targetPh: number,
  uncertainty: DoseUncertainty = usualDoseUncertainty,
): Result<{ readonly grams: number; readonly interval: readonly [number, number] }, DoseProblem> {
  for (const name of typeof agent === 'string' ? [agent] : agent.shares.map((share) => share.agent)) {
    const known = agentNamed(name);
    if (!known.ok) return known;
  }
  if (!(targetPh >= 0 && targetPh <= 14)) {
    return refused('out-of-range', { field: 'target pH', value: targetPh, least: 0, most: 14, symbol: 'pH' });
  }
  const grams = gramsTo(recipe, agent, targetPh);
  if (!grams.ok) return grams;
  const ends = [-1, 1].map((way) => {
    const alkalinityMgPerLCaCO3 = recipe.alkalinityMgPerLCaCO3 * (1 + way * uncertainty.alkalinity);
    const needed = gramsTo({ ...recipe, alkalinityMgPerLCaCO3 }, agent, targetPh);
    // Water that is past the target already, or that nothing reaches, sets no end of the range.
    const value = needed.ok ? needed.value : isPast(needed.problem) ? 0 : grams.value;
    return value / (1 - way * uncertainty.strength);
  });
  const all = [grams.value, ...ends];
  return done({ grams: grams.value, interval: [Math.min(...all), Math.max(...all)] });
}
