import settings from '../../../data/drying/settings.json' with { type: 'json' };
import { readTable } from '../air/index.ts';
import type { PreparedRug } from './preparedRoom.ts';
import { type DryReading, type Touch, touches } from './scenario.ts';

/** How far a reading lies from what a rug of a regain would show. */
export interface Misfit {
  /** In spreads of its noise. */
  readonly spreads: number;
  readonly logLikelihood: number;
}

/** Share of a normal chance below a value. @source abramowitz-stegun-1964, eq. 7.1.26 */
function normalBelow(x: number): number {
  const z = Math.abs(x) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * z);
  const poly =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = (poly * Math.exp(-z * z)) / 2;
  return x > 0 ? 1 - tail : tail;
}

const gaussian = (spreads: number): Misfit => ({ spreads, logLikelihood: -0.5 * spreads * spreads });

const drier = [...touches].reverse();

/** A hand sorts into four; between neighbours hands differ. */
function boundsOf(touch: Touch): { readonly below: number; readonly above: number } {
  const { bounds } = settings.touch;
  const place = drier.indexOf(touch);
  return {
    below: place === 0 ? Number.NEGATIVE_INFINITY : (bounds[place - 1] ?? Number.NaN),
    above: bounds[place] ?? Number.POSITIVE_INFINITY,
  };
}

/** Chance that a hand calls a rug of a regain so. @source workshop-setting (data/drying/settings.json) */
export function chanceOfTouch(touch: Touch, regain: number): number {
  const { below, above } = boundsOf(touch);
  const { spread } = settings.touch;
  const upTo = (bound: number) => (Number.isFinite(bound) ? normalBelow((bound - regain) / spread) : 0);
  return (Number.isFinite(above) ? upTo(above) : 1) - upTo(below);
}

/** Chances of every word a hand may say of a rug of a regain, in the order of `touches`. */
export function chancesOfTouches(regain: number, into: Float64Array): void {
  const { bounds, spread } = settings.touch;
  let drier = 0;
  // The driest word stands last.
  for (let t = 0; t < bounds.length; t++) {
    const upTo = normalBelow(((bounds[t] ?? 0) - regain) / spread);
    into[touches.length - 1 - t] = upTo - drier;
    drier = upTo;
  }
  into[0] = 1 - drier;
}

function touchMisfit(touch: Touch, regain: number): Misfit {
  const { below, above } = boundsOf(touch);
  const { spread } = settings.touch;
  const chance = chanceOfTouch(touch, regain);
  const spreads = regain > above ? (above - regain) / spread : regain < below ? (below - regain) / spread : 0;
  return { spreads, logLikelihood: Math.log(Math.max(chance, 1e-12)) };
}

/** A meter in units of its own tells dry from damp, and no more. */
function aboveDryMisfit(aboveDry: number, regain: number, target: number): Misfit {
  const { dryUpTo, slackRegain, spread } = settings.meterAboveDry;
  const off = (target + slackRegain - regain) / spread;
  const away = aboveDry <= dryUpTo ? off : -off;
  return { spreads: Math.min(0, away), logLikelihood: Math.log(Math.max(normalBelow(away), 1e-12)) };
}

/**
 * How well a reading fits a rug that holds a regain.
 *
 * @param reading - mass [kg], pocket humidity, meter or touch
 * @param rug - prepared
 * @param regain - the model's [kg/kg]
 * @param dryMass - true dry mass over the reckoned one
 * @source workshop-setting, noise of readings (data/drying/settings.json)
 */
export function misfitOf(reading: DryReading, rug: PreparedRug, regain: number, dryMass: number): Misfit {
  const { massShare, massKg, pocketRh, meterRegain } = settings.noise;
  if ('massKg' in reading) {
    // By logarithms, in which dry mass and water add up: the search for the likeliest then goes straight.
    const spread = Math.hypot(massShare, massKg / reading.massKg);
    return gaussian(Math.log(reading.massKg / (rug.dryMassKg * dryMass * (1 + regain))) / spread);
  }
  if ('pocketRh' in reading)
    return gaussian((reading.pocketRh - readTable(rug.desorption.activity, regain)) / pocketRh);
  if ('meterRegain' in reading) {
    // Points differ on one rug by as much as one reading errs, so many points narrow only so far.
    const spread = meterRegain * Math.sqrt(0.5 + 0.5 / (reading.points ?? 1));
    return gaussian((reading.meterRegain - regain) / spread);
  }
  if ('meterAboveDry' in reading) return aboveDryMisfit(reading.meterAboveDry, regain, rug.targetRegain);
  return touchMisfit(reading.touch, regain);
}
