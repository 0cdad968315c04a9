import labour from '../../../data/weave/labour.json' with { type: 'json' };
import { type KnotDensity, knotsPerSquareMetre } from './density.ts';

/** Part of a rug with one density; `juftiShare` of it is tied over four warps, which halves its knots. */
export interface WovenPart {
  readonly areaM2: number;
  readonly density: KnotDensity;
  /** Fraction 0 … 1 of the part's area. */
  readonly juftiShare: number;
}

/**
 * All knots of a rug: each part's area times its density, jufti areas counted half.
 *
 * @param parts - areas [m²] without fringe and flat-woven ends
 * @returns knots
 * @source common-practice, a jufti knot takes the place of two
 */
export const totalKnots = (parts: readonly WovenPart[]): number =>
  parts.reduce(
    (sum, { areaM2, density, juftiShare }) =>
      sum + areaM2 * knotsPerSquareMetre(density).perSquareMetre * (1 - juftiShare / 2),
    0,
  );

/**
 * Days one weaver needs for so many knots: from the fastest to the slowest rate stated in trade.
 *
 * @param knots - knots to tie, at least 0
 * @returns days of one weaver, at the most, usual and least knots per day
 * @source common-practice, data/weave/labour.json
 * @accuracy trade statements scatter by a factor of three, and so does the result
 */
export function weavingDays(knots: number): {
  readonly least: number;
  readonly usual: number;
  readonly most: number;
} {
  const rate = labour.weavingKnotsPerDay;
  return { least: knots / rate.most, usual: knots / rate.usual, most: knots / rate.least };
}

/**
 * Knots and hours to reknot an area.
 *
 * @param areaCm2 - area without pile [cm²]
 * @param density - of the rug around it
 * @returns knots, and hours including foundation from the fast to the slow rate
 * @source common-practice, data/weave/labour.json
 */
export function repairKnots(
  areaCm2: number,
  density: KnotDensity,
): { readonly knots: number; readonly leastHours: number; readonly mostHours: number } {
  const knots = (areaCm2 / 1e4) * knotsPerSquareMetre(density).perSquareMetre;
  const rate = labour.repairKnotsPerHour;
  return { knots, leastHours: knots / rate.most, mostHours: knots / rate.least };
}
