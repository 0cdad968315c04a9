import { done, type OutOfRange, type Result, refused } from '../../units/index.ts';
import { bathPh } from './bathPh.ts';
import { type BathRecipe, solutionOf } from './bathRecipe.ts';
import { blend, partOf } from './blend.ts';
import { type DoseProblem, type DoseUncertainty, dose, usualDoseUncertainty } from './dose.ts';

/** What a workshop corrects a pH with, either way. */
export interface Correctors {
  readonly acid: string;
  readonly base: string;
}

export const usualCorrectors: Correctors = { acid: 'citric acid, anhydrous', base: 'sodium bicarbonate' };

export interface Correction {
  readonly phNow: number;
  /** Null where the bath stands at the target already. */
  readonly agent: string | null;
  readonly grams: number;
  readonly interval: readonly [number, number];
}

/** Nearer than a strip or meter on the floor can tell. */
const nearEnoughPh = 0.05;

/**
 * pH of a bath by its recipe.
 *
 * @refuses as solutionOf and bathPh
 * @source crc-handbook constants through bathPh
 */
export function phOfBath(bath: BathRecipe): Result<number, DoseProblem> {
  const solution = solutionOf(bath);
  if (!solution.ok) return solution;
  const found = bathPh(solution.value);
  return found.ok ? done(found.value.pH) : found;
}

/**
 * Acid or base, whichever is needed, that brings a bath to a pH.
 *
 * @param bath - as it stands
 * @param targetPh - [0 … 14]
 * @returns grams of the agent needed for the whole bath, with the interval
 * @refuses target-out-of-reach - the corrector is too weak to get there; all of dose
 * @source crc-handbook constants through dose
 */
export function neutralise(
  bath: BathRecipe,
  targetPh: number,
  { acid, base }: Correctors = usualCorrectors,
  uncertainty: DoseUncertainty = usualDoseUncertainty,
): Result<Correction, DoseProblem> {
  const now = phOfBath(bath);
  if (!now.ok) return now;
  const phNow = now.value;
  if (Math.abs(phNow - targetPh) <= nearEnoughPh) {
    return done({ phNow, agent: null, grams: 0, interval: [0, 0] });
  }
  const agent = phNow > targetPh ? acid : base;
  const dosed = dose(bath, agent, targetPh, uncertainty);
  return dosed.ok ? done({ phNow, agent, ...dosed.value }) : dosed;
}

/** What a rug still holds of a bath. */
export interface Held {
  readonly massKg: number;
  /** After draining or extraction [L/kg]. */
  readonly retainedLPerKg: number;
}

const between = (field: string, value: number, least: number, most: number, symbol: string) =>
  value >= least && value <= most ? null : refused('out-of-range', { field, value, least, most, symbol });

/**
 * Acid or base that brings what a rug holds of its last bath to a pH, in the fresh water it is given.
 *
 * @param bath - the last bath
 * @param held - dry mass [kg, 0.05 … 500] and litres held [L/kg, 0.01 … 10]
 * @param fresh - the water of the next bath, without agents; null to treat what is held alone
 * @param targetPh - [0 … 14]
 * @returns litres held, and the dose for held and fresh water together
 * @refuses out-of-range - of mass or retention; all of neutralise
 * @source crc-handbook constants through dose; perfect mixing, no charge taken up by the fibre
 */
export function carryOver(
  bath: BathRecipe,
  { massKg, retainedLPerKg }: Held,
  fresh: BathRecipe | null,
  targetPh: number,
  correctors: Correctors = usualCorrectors,
  uncertainty: DoseUncertainty = usualDoseUncertainty,
): Result<Correction & { readonly heldLitres: number }, DoseProblem | OutOfRange> {
  const wrong =
    between('dry mass', massKg, 0.05, 500, 'kg') ?? between('litres held', retainedLPerKg, 0.01, 10, 'L/kg');
  if (wrong !== null) return wrong;
  const heldLitres = massKg * retainedLPerKg;
  if (heldLitres > bath.litres) {
    return refused('out-of-range', {
      field: 'litres held',
      value: heldLitres,
      least: 0,
      most: bath.litres,
      symbol: 'L',
    });
  }
  const held = partOf(bath, heldLitres);
  const needed = neutralise(fresh === null ? held : blend(held, fresh), targetPh, correctors, uncertainty);
  return needed.ok ? done({ heldLitres, ...needed.value }) : needed;
}
