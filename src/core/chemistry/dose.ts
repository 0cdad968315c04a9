import { done, type Problem, type Result, refused } from '../../units/index.ts';
import { strengthShare } from './agentName.ts';
import { atOwnStrength, bathPh, type IonicStrengthTooHigh } from './bathPh.ts';
import { type BathRecipe, solutionOf } from './bathRecipe.ts';
import { balanceAt, carriedAt, constantsAt, type Solution } from './chargeBalance.ts';
import {
  type AgentAmount,
  type Contents,
  contentsOf,
  nothing,
  type RecipeProblem,
  together,
  withContents,
} from './contents.ts';
import type { Share } from './shelfAgent.ts';

export type DoseProblem =
  | RecipeProblem
  | IonicStrengthTooHigh
  /** Likely water has a dose, but at an end of what the water may be none can be computed. */
  | Problem<
      'dose-range-open',
      { readonly agent: string; readonly targetPh: number; readonly alkalinityMgPerLCaCO3: number }
    >
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

/** More of an agent than this is no dose but another liquid [g/L]. */
const mostGPerL = 200;

/** A dose that is computed back lands on its target, but for rounding [pH]. */
const reachedWithin = 4e-7;

/** An amount within reach of a weighing error of nothing [g/L]. */
const noneGPerL = 1e-12;

/** What is dosed: a chemical at full strength, or a product by the mass shares of what is in it. */
export type Dosed = string | { readonly name: string; readonly shares: readonly Share[] };

const nameOf = (dosed: Dosed): string => (typeof dosed === 'string' ? dosed : dosed.name);

const sharesOf = (dosed: Dosed): readonly AgentAmount[] =>
  typeof dosed === 'string' ? [{ agent: dosed }] : dosed.shares;

/** One gram of what is dosed, in a litre. */
function gramOf(dosed: Dosed): Result<Contents, RecipeProblem> {
  let all = nothing;
  for (const share of sharesOf(dosed)) {
    const read = contentsOf({ ...share, grams: 1 });
    if (!read.ok) return read;
    all = together(all, read.value.contents);
  }
  return done(all);
}

/**
 * Grams per litre that bring a bath to a pH; below 0 where it lies past the target already or the agent
 * moves it the other way. At a given pH every charge is in proportion to its amount, so the dose follows
 * from what is left over of the bath’s charges by one division.
 */
function gramsPerLitre(
  bath: Solution,
  gram: Contents,
  targetPh: number,
): Result<number, IonicStrengthTooHigh> {
  const solved = atOwnStrength(bath.activity, (strength) => {
    const constants = constantsAt(bath, strength, gram.acids);
    const p = targetPh + constants.logGammaH;
    const { chargeMolPerL, strengthMolPerL } = balanceAt(bath, constants, p);
    let [charge, ionic] = [gram.strongCharge, gram.spectatorStrength];
    for (const family of constants.families) {
      const moles = family.heldMolPerL === null ? (gram.acids[family.acid] ?? 0) : 0;
      const carried = carriedAt(family, p);
      charge += carried.chargeMolPerL * moles;
      ionic += carried.strengthMolPerL * moles;
    }
    const grams = -chargeMolPerL / charge;
    const isDose = grams > 0 && Number.isFinite(grams);
    return { grams, strengthMolPerL: strengthMolPerL + (isDose ? grams * ionic : 0) };
  });
  return solved.ok ? done(solved.value.grams) : solved;
}

/**
 * Grams of an agent that bring a bath to a pH, with the range that uncertain strength and water give.
 *
 * @param recipe - the bath before the dose
 * @param agent - chemical name, at the strength it stands for, or a product; grams are then of the product
 * @param targetPh - [0 … 14]
 * @param uncertainty - shares by which strength and alkalinity may be off
 * @returns grams for the whole bath, and the interval they may truly need
 * @refuses target-out-of-reach - the agent cannot bring this water there; dose-range-open - it brings likely water
 * there, but not computably the water at an end of its range; all of solutionOf and bathPh
 * @source crc-handbook constants through bathPh
 * @example dose(1 L of 250 mg/L CaCO₃, 'citric acid, anhydrous', 5) // about 0.56 g
 */
export function dose(
  recipe: BathRecipe,
  agent: Dosed,
  targetPh: number,
  uncertainty: DoseUncertainty = usualDoseUncertainty,
): Result<{ readonly grams: number; readonly interval: readonly [number, number] }, DoseProblem> {
  if (!(targetPh >= 0 && targetPh <= 14)) {
    return refused('out-of-range', { field: 'target pH', value: targetPh, least: 0, most: 14, symbol: 'pH' });
  }
  const gram = gramOf(agent);
  if (!gram.ok) return gram;
  const needed = (alkalinityShare: number): Result<number, DoseProblem> => {
    const alkalinityMgPerLCaCO3 = recipe.alkalinityMgPerLCaCO3 * alkalinityShare;
    const bath = solutionOf({ ...recipe, alkalinityMgPerLCaCO3 });
    if (!bath.ok) return bath;
    const grams = gramsPerLitre(bath.value, gram.value, targetPh);
    if (!grams.ok || !(grams.value > 0 && grams.value <= mostGPerL)) return grams;
    // Near a salt's own pH the strength of the ions has more than one answer: only a dose that holds is told.
    const reached = bathPh(withContents(bath.value, gram.value, grams.value));
    if (!reached.ok) return reached;
    return done(Math.abs(reached.value.pH - targetPh) < reachedWithin ? grams.value : Number.NaN);
  };
  const middle = needed(1);
  if (!middle.ok) return middle;
  if (!(middle.value >= -noneGPerL && middle.value <= mostGPerL)) {
    return outOfReach(recipe, agent, gram.value, targetPh);
  }
  const grams = Math.max(0, middle.value) * recipe.litres;
  const strength = Math.max(
    ...sharesOf(agent).map((one) => strengthShare(one.agent, one.strength, uncertainty.strength)),
  );
  const ends: number[] = [];
  for (const share of [1 - uncertainty.alkalinity, 1 + uncertainty.alkalinity]) {
    const end = needed(share);
    if (!end.ok && end.problem.code !== 'ionic-strength-too-high') return end;
    // Taking the middle for such an end would state a bound that nobody computed.
    if (!end.ok || !Number.isFinite(end.value)) {
      const alkalinityMgPerLCaCO3 = recipe.alkalinityMgPerLCaCO3 * share;
      return refused('dose-range-open', { agent: nameOf(agent), targetPh, alkalinityMgPerLCaCO3 });
    }
    // Water past the target already needs nothing.
    const most = Math.max(0, end.value) * recipe.litres;
    ends.push(most / (1 + strength), most / (1 - strength));
  }
  return done({ grams, interval: [Math.min(grams, ...ends), Math.max(grams, ...ends)] });
}

/** Why no sensible amount brings the bath there, with how far the agent does take it. */
function outOfReach(
  recipe: BathRecipe,
  agent: Dosed,
  gram: Contents,
  targetPh: number,
): Result<never, DoseProblem> {
  const bath = solutionOf(recipe);
  if (!bath.ok) return bath;
  const now = bathPh(bath.value);
  if (!now.ok) return now;
  const filled = withContents(bath.value, gram, mostGPerL);
  const most = bathPh({ ...filled, activity: 'ideal' });
  if (!most.ok) return most;
  return refused('target-out-of-reach', {
    ...{ agent: nameOf(agent), targetPh },
    ...{ phNow: now.value.pH, phAtMost: most.value.pH },
  });
}
