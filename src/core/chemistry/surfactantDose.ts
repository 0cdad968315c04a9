import shop from '../../../data/wash/shopFacts.json' with { type: 'json' };
import { done, type OutOfRange, type Result, refused } from '../../units/index.ts';

interface Span {
  readonly least: number;
  readonly most: number;
}

/** Detergent concentrate by area. @source workshop-setting (data/wash/shopFacts.json): 15 to 40 g/m² */
export const usualDetergentGPerM2: Span = shop.detergentGPerM2;

const between = (field: string, value: number, least: number, most: number, symbol: string) =>
  value > least && value <= most ? null : refused('out-of-range', { field, value, least, most, symbol });

/**
 * Grams of detergent concentrate for a rug by its area, and how strong that makes its bath.
 *
 * @param areaM2 - [m², > 0 … 500]
 * @param litres - water of the bath [L, > 0 … 100 000]
 * @param perM2 - concentrate by area [g/m²]
 * @returns grams and the strength of the bath [g/L], each from least to most
 * @refuses out-of-range
 * @source workshop-setting (data/wash/shopFacts.json)
 */
export function surfactantByArea(
  areaM2: number,
  litres: number,
  perM2: Span = usualDetergentGPerM2,
): Result<{ readonly grams: Span; readonly gPerL: Span }, OutOfRange> {
  const wrong = between('area', areaM2, 0, 500, 'm²') ?? between('litres', litres, 0, 100_000, 'L');
  if (wrong !== null) return wrong;
  const grams = { least: perM2.least * areaM2, most: perM2.most * areaM2 };
  return done({ grams, gPerL: { least: grams.least / litres, most: grams.most / litres } });
}

/**
 * Grams of a product for a bath of so much active surfactant.
 *
 * @param activeGPerL - wanted [g/L, > 0 … 50]
 * @param litres - water of the bath [L, > 0 … 100 000]
 * @param strength - active share of the product by mass [> 0 … 1]
 * @param uncertainty - of the strength, as a share of it [0 … 0.9]
 * @refuses out-of-range
 * @source none: definition of mass fraction
 */
export function surfactantByBath(
  activeGPerL: number,
  litres: number,
  strength: number,
  uncertainty: number,
): Result<{ readonly grams: number; readonly interval: readonly [number, number] }, OutOfRange> {
  const wrong =
    between('active surfactant', activeGPerL, 0, 50, 'g/L') ??
    between('litres', litres, 0, 100_000, 'L') ??
    between('strength', strength, 0, 1, 'mass fraction');
  if (wrong !== null) return wrong;
  const grams = (activeGPerL * litres) / strength;
  return done({ grams, interval: [grams / (1 + uncertainty), grams / (1 - uncertainty)] });
}
