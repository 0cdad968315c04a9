import type { Problem } from '../../units/index.ts';
import { bathPh, type Product, type ReckonedWater, sharesOf, solutionOf } from '../chemistry/index.ts';
import { kindOf } from './agentKind.ts';
import type { Band } from './limit.ts';
import type { Agent } from './planFacts.ts';
import type { PlanStep } from './washPlan.ts';

export type SpotterOffBand = Problem<
  'spotter-off-band',
  {
    readonly name: string;
    readonly least: number;
    readonly most: number;
    readonly bandLeast: number;
    readonly bandMost: number;
  }
>;

interface Cup {
  readonly litres: number;
  readonly water: ReckonedWater;
  readonly step: Pick<PlanStep, 'temperatureC'>;
}

/**
 * The pH a reducer's liquid has by itself, over its range of strength and all the water may be.
 *
 * @param grams - of the product [g]
 * @returns null for what sets no pH of its own, or cannot be computed
 * @source crc-handbook constants through bathPh
 */
export function standsAtPh(
  agent: Agent,
  product: Product | null,
  grams: Band,
  { litres, water, step }: Cup,
): Band | null {
  const shares = product === null || kindOf(agent) !== 'reducer' ? null : sharesOf(product);
  if (shares === null || !shares.ok || shares.value.length === 0) return null;
  const { least, most } = water.alkalinity;
  const found = [grams.least, grams.most].flatMap((amount) =>
    [least, most].map((alkalinityMgPerLCaCO3) => {
      const solution = solutionOf({
        ...{ litres, alkalinityMgPerLCaCO3, activity: 'davies' as const, openToAir: false },
        temperatureC: step.temperatureC?.most ?? 20,
        add: shares.value.map((share) => ({ ...share, grams: amount })),
      });
      const ph = solution.ok ? bathPh(solution.value) : solution;
      return ph.ok ? ph.value.pH : null;
    }),
  );
  const known = found.filter((ph) => ph !== null);
  return known.length < found.length ? null : { least: Math.min(...known), most: Math.max(...known) };
}

/** Said where a liquid stands outside what the place bears. @source none: comparison of two ranges */
export const offBand = (
  name: string,
  stands: Band | null,
  band: Band | undefined,
): readonly SpotterOffBand[] => {
  if (stands === null || band === undefined) return [];
  const { least, most } = stands;
  const facts = { name, least, most, bandLeast: band.least, bandMost: band.most };
  return least < band.least || most > band.most ? [{ code: 'spotter-off-band', facts }] : [];
};
