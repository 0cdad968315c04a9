import sewer from '../../../data/chemistry/sewer.json' with { type: 'json' };
import { done, type Result, refused } from '../../units/index.ts';
import type { BathRecipe } from './bathRecipe.ts';
import { blend } from './blend.ts';
import type { DoseProblem } from './dose.ts';
import { type Correction, type Correctors, neutralise, phOfBath, usualCorrectors } from './neutralise.ts';

export interface SewerLimits {
  readonly leastPh: number;
  readonly mostPh: number;
  readonly mostTemperatureC: number;
}

/** Until the local authority's own are entered. @source cfr-40-403-5 (b)(2); upper limits workshop-setting */
export const usualSewerLimits: SewerLimits = sewer;

/** So far inside the nearer limit a correction aims; past it bicarbonate would be wasted. @source workshop-setting */
const marginPh = 0.5;

export const sewerReasons = ['too acid', 'too alkaline', 'diluted only', 'too hot'] as const;
export type SewerReason = (typeof sewerReasons)[number];

export interface Effluent {
  readonly litres: number;
  readonly pH: number;
  readonly temperatureC: number;
  readonly bathPhs: readonly number[];
  readonly mayGo: boolean;
  /** Some bath alone may not go, and the others’ chemistry brings it right: where the authority allows it. */
  readonly equalised: boolean;
  readonly reasons: readonly SewerReason[];
  /** Null where the pH needs none. */
  readonly correction: Correction | null;
}

/**
 * Whether baths run together may go to the sewer, and what neutralises them if not. A bath outside the
 * limits must be brought right by the chemistry of the others, never by their water: it is judged with
 * their agents but without their litres.
 *
 * @param baths - at least one, as they stand
 * @param limits - lower pH never below 5.0
 * @refuses out-of-range - a lower limit below pH 5.0, an upper one not above it; all of neutralise
 * @source cfr-40-403-5, (b)(2) pH, (b)(5) heat; (d) of 403.6 no dilution as a substitute for treatment
 */
export function effluent(
  baths: readonly [BathRecipe, ...BathRecipe[]],
  limits: SewerLimits = usualSewerLimits,
  correctors: Correctors = usualCorrectors,
): Result<Effluent, DoseProblem> {
  const { leastPh, mostPh, mostTemperatureC } = limits;
  if (!(leastPh >= sewer.leastPh && leastPh < 9)) {
    const facts = { field: 'lowest sewer pH', value: leastPh, least: sewer.leastPh, most: 9, symbol: 'pH' };
    return refused('out-of-range', facts);
  }
  if (!(mostPh > leastPh && mostPh <= 14)) {
    const facts = { field: 'highest sewer pH', value: mostPh, least: leastPh, most: 14, symbol: 'pH' };
    return refused('out-of-range', facts);
  }
  const bathPhs: number[] = [];
  for (const bath of baths) {
    const found = phOfBath(bath);
    if (!found.ok) return found;
    bathPhs.push(found.value);
  }
  const isWithin = (pH: number) => pH >= leastPh && pH <= mostPh;
  const whole = blend(...baths);
  const blended = phOfBath(whole);
  if (!blended.ok) return blended;
  const [offender, ...offenders] = baths.filter((_, i) => !isWithin(bathPhs[i] ?? Number.NaN));
  // Agents of the baths that are in order, without their water.
  const agents = baths.filter((_, i) => isWithin(bathPhs[i] ?? Number.NaN)).flatMap(({ add }) => add);
  const together = offender === undefined ? null : blend(offender, ...offenders);
  const undiluted = together === null ? whole : { ...together, add: [...together.add, ...agents] };
  const judged = phOfBath(undiluted);
  if (!judged.ok) return judged;
  const reasons: SewerReason[] = [];
  if (blended.value < leastPh) reasons.push('too acid');
  if (blended.value > mostPh) reasons.push('too alkaline');
  if (isWithin(blended.value) && !isWithin(judged.value)) reasons.push('diluted only');
  if (baths.some(({ temperatureC }) => temperatureC > mostTemperatureC)) reasons.push('too hot');
  const isRight = isWithin(blended.value) && isWithin(judged.value);
  const [treated, pH] = isWithin(judged.value) ? [whole, blended.value] : [undiluted, judged.value];
  const inside = Math.min(marginPh, (mostPh - leastPh) / 2);
  const target = pH < leastPh ? leastPh + inside : mostPh - inside;
  const correction = isRight ? null : neutralise(treated, target, correctors);
  if (correction?.ok === false) return correction;
  return done({
    ...{ litres: whole.litres, pH: blended.value, temperatureC: whole.temperatureC, bathPhs, reasons },
    mayGo: reasons.length === 0,
    equalised: reasons.length === 0 && offender !== undefined,
    correction: correction?.value ?? null,
  });
}
