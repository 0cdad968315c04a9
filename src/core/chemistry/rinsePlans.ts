import pace from '../../../data/chemistry/rinsePace.json' with { type: 'json' };
import shop from '../../../data/wash/shopFacts.json' with { type: 'json' };
import { done, type OutOfRange, type Result, refused } from '../../units/index.ts';
import { type RinseBase, type RinseWay, rinseWays, usualRinse } from './dilution.ts';

interface Span {
  readonly least: number;
  readonly most: number;
}

/** How long the parts of a rinse take. */
export interface RinsePace {
  readonly waterLPerMin: number;
  readonly drainMin: Span;
  readonly workMin: Span;
  readonly extractionMin: Span;
}

/** @source workshop-setting (data/chemistry/rinsePace.json, data/wash/shopFacts.json) */
export const usualRinsePace: RinsePace = { ...pace, extractionMin: shop.extractionMin };

/** What water and a washer’s hour cost, in one currency. */
export interface RinsePrices {
  readonly waterPerM3: number;
  readonly hour: number;
}

export interface RinsePlan extends RinseWay {
  readonly litres: number;
  readonly minutes: Span;
  /** Null without prices. */
  readonly cost: Span | null;
}

/**
 * Litres and minutes of each way to rinse a rug to an end point: cheapest first where prices are given,
 * else least water first.
 *
 * @param massKg - dry mass [kg, > 0 … 500]
 * @param end - concentration wanted, as a fraction of the bath's [above 0, below 1]
 * @refuses out-of-range
 * @source none: perfect mixing; times are workshop settings
 */
export function rinsePlans(
  massKg: number,
  end: number,
  prices: RinsePrices | null = null,
  base: RinseBase = usualRinse,
  { waterLPerMin, drainMin, workMin, extractionMin }: RinsePace = usualRinsePace,
): Result<readonly RinsePlan[], OutOfRange> {
  if (!(massKg > 0 && massKg <= 500)) {
    return refused('out-of-range', { field: 'dry mass', value: massKg, least: 0, most: 500, symbol: 'kg' });
  }
  const ways = rinseWays(end, base);
  if (!ways.ok) return ways;
  const plans = ways.value.map((way): RinsePlan => {
    const litres = way.litresPerKg * massKg;
    const fills = way.fills ?? 1;
    const minutes = (bound: keyof Span) =>
      litres / waterLPerMin +
      (way.fills === null ? 0 : fills * workMin[bound]) +
      fills * drainMin[bound] +
      way.extractions * extractionMin[bound];
    const [least, most] = [minutes('least'), minutes('most')];
    const cost = (time: number) =>
      prices === null ? 0 : (litres / 1000) * prices.waterPerM3 + (time / 60) * prices.hour;
    return {
      ...way,
      litres,
      minutes: { least, most },
      cost: prices === null ? null : { least: cost(least), most: cost(most) },
    };
  });
  return done(plans.sort((a, b) => (a.cost?.most ?? a.litres) - (b.cost?.most ?? b.litres)));
}
