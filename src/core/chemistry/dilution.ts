import { done, type OutOfRange, type Result, refused } from '../../units/index.ts';

/**
 * What is left in a rug after rinsing by fills: each time so much liquid stays in the fibre and mixes
 * with so much fresh water.
 *
 * @param retained - liquid that stays in the rug [L per kg, ≥ 0]
 * @param fresh - fresh water per fill [L per kg, > 0]
 * @param fills - number of fills [0, 1, 2 …]
 * @returns concentration left, as a fraction of the first [0 … 1]
 * @source none: dilution by perfect mixing, (r/(r+w))ⁿ
 */
export const leftAfterFills = (retained: number, fresh: number, fills: number): number =>
  (retained / (retained + fresh)) ** fills;

/**
 * What is left after rinsing by flow through a well-mixed rug.
 *
 * @param retained - liquid that stays in the rug [L per kg, > 0]
 * @param through - fresh water that has flowed through [L per kg, ≥ 0]
 * @returns concentration left, as a fraction of the first [0 … 1]
 * @source none: stirred vessel, exp(−V/V₀)
 */
export const leftAfterFlow = (retained: number, through: number): number => Math.exp(-through / retained);

export interface RinseWay {
  readonly way: 'fill and drain' | 'flow' | 'extract, then flow' | 'fill, drain and extract';
  readonly fills: number | null;
  readonly extractions: number;
  readonly litresPerKg: number;
  readonly left: number;
}

export interface RinseBase {
  /** Held after draining [L/kg]. */
  readonly drainedLPerKg: number;
  /** Held after extraction [L/kg]. */
  readonly extractedLPerKg: number;
  /** Water of one fill [L/kg]. */
  readonly fillLPerKg: number;
}

/** Workshop settings. @source workshop-setting: drained 1.5 to 2.0, extracted 0.3 to 0.5 L/kg */
export const usualRinse: RinseBase = { drainedLPerKg: 2, extractedLPerKg: 0.33, fillLPerKg: 10 };

/**
 * Ways to rinse down to a fraction of the bath, least water first.
 *
 * @param end - concentration wanted, as a fraction of the bath's [above 0, below 1]
 * @param base - what the rug holds after draining and extracting, and what a fill takes
 * @returns each way with its water [L per kg of rug]
 * @refuses out-of-range - the end must lie between 0 and 1
 * @source none: dilution by perfect mixing
 */
export function rinseWays(
  end: number,
  base: RinseBase = usualRinse,
): Result<readonly RinseWay[], OutOfRange> {
  if (!(end > 0 && end < 1)) {
    return refused('out-of-range', { field: 'end point', value: end, least: 0, most: 1, symbol: '' });
  }
  const byFills = (way: RinseWay['way'], retained: number): RinseWay => {
    const fills = Math.ceil(Math.log(end) / Math.log(retained / (retained + base.fillLPerKg)) - 1e-9);
    return {
      way,
      fills,
      extractions: retained === base.extractedLPerKg ? fills : 0,
      litresPerKg: fills * base.fillLPerKg,
      left: leftAfterFills(retained, base.fillLPerKg, fills),
    };
  };
  const byFlow = (way: RinseWay['way'], extractions: number): RinseWay => {
    // After extraction the rug takes up fresh water again before any runs through.
    const taken = extractions === 0 ? 0 : base.drainedLPerKg - base.extractedLPerKg;
    const start = 1 - taken / base.drainedLPerKg;
    const through = Math.max(0, base.drainedLPerKg * Math.log(start / end));
    const left = start * leftAfterFlow(base.drainedLPerKg, through);
    return { way, fills: null, extractions, litresPerKg: taken + through, left };
  };
  return done(
    [
      byFills('fill and drain', base.drainedLPerKg),
      byFills('fill, drain and extract', base.extractedLPerKg),
      byFlow('flow', 0),
      byFlow('extract, then flow', 1),
    ].sort((a, b) => a.litresPerKg - b.litresPerKg),
  );
}

/** Litres of concentrate and of water for a dilution, C₁V₁ = C₂V₂. @source none: definition */
export function dilution(
  from: number,
  to: number,
  litres: number,
): Result<{ readonly concentrateL: number; readonly waterL: number }, OutOfRange> {
  if (!(from > 0))
    return refused('out-of-range', { field: 'strength', value: from, least: 0, most: 100, symbol: '%' });
  if (!(to >= 0 && to <= from)) {
    return refused('out-of-range', {
      field: 'wanted strength',
      value: to,
      least: 0,
      most: from,
      symbol: '%',
    });
  }
  const concentrateL = (to / from) * litres;
  return done({ concentrateL, waterL: litres - concentrateL });
}

/** Volume strength of hydrogen peroxide from its concentration [mol/L]. @source none: 2 H₂O₂ → O₂, 22.4 L/mol */
export const peroxideVolumes = (molPerL: number): number => 11.2 * molPerL;

/** Hardness in German degrees as mg/L CaCO₃. @source none: 1 °dH = 10 mg/L CaO, 17.848 mg/L CaCO₃ */
export const hardnessFromGermanDegrees = (degrees: number): number => degrees * 17.848;
