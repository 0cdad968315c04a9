import stainTable from '../../../data/wash/stains.json' with { type: 'json' };
import { kindOf, statedName } from './agentKind.ts';
import type { Band, Bounds } from './limit.ts';
import type { Rulebook } from './rulebook.ts';
import type { StainTreatment } from './stainSteps.ts';
import type { Amount } from './washPlan.ts';

/** How the liquid of a spotter is made up (data/wash/stains.json). */
export type SpotDose =
  | { readonly kind: 'neat' }
  /** By charge balance in the water there is, where it is mixed. */
  | { readonly kind: 'to pH' }
  | { readonly kind: 'grams per litre'; readonly least: number; readonly most: number }
  /** Mass of the pure agent in the liquid, as a share. */
  | { readonly kind: 'share'; readonly least: number; readonly most: number };

/** What a spotter's liquid is called among the amounts. */
export const madeUp = 'liquid, made up with water';

const perFlush = 'water, for each flush';

const round = (value: number): number => Number(value.toPrecision(2));

/** A place nobody measured is taken as this large [cm²]; the strength of the liquid does not depend on it. */
export const unmeasuredCm2: number = stainTable.unmeasuredCm2;

const amount = (agent: string, unit: Amount['unit'], least: number, most: number): Amount => ({
  ...{ agent, unit, least: round(least), most: round(most) },
  source: 'workshop-setting',
});

/**
 * Liquid one place takes up [mL], from a light hand to a soaked place.
 *
 * @param areaCm2 - of the stain [cm²]; absent: a hand's breadth
 * @source workshop-setting (data/wash/stains.json)
 */
export function spotMl(areaCm2: number | undefined, { spotting }: Rulebook): Band {
  const area = areaCm2 === undefined || areaCm2 <= 0 ? unmeasuredCm2 : areaCm2;
  const { least, most } = spotting.spotMlPerCm2;
  return { least: round(least * area), most: round(most * area) };
}

/**
 * Water to flush several places with, each as its spotting card has it.
 *
 * @param places - with their areas [cm²]; none: one that nobody has drawn yet
 * @returns for one flush of all of them [mL]
 * @source workshop-setting (data/wash/stains.json)
 */
export function flushAmount(
  places: readonly { readonly areaCm2?: number | undefined }[],
  book: Rulebook,
): Amount {
  const each = (places.length === 0 ? [{}] : places).map(({ areaCm2 }) => spotMl(areaCm2, book));
  const sum = (side: keyof Band) => each.reduce((all, takes) => all + takes[side], 0);
  return amount(perFlush, 'mL', sum('least'), sum('most'));
}

/**
 * What a spotter takes for one place. What is made up with water is made up once, enough for a soaked place
 * and never so little that its agent could not be weighed; a range is then one of strength alone.
 *
 * @param treatment - the treatment, with its dose and the area of its stain
 * @param bounds - the rug's limits, for the strength its dyes were tested with
 * @returns amounts; what an acid takes is worked out where it is mixed, by the water there is
 * @source workshop-setting (data/wash/stains.json)
 */
export function spotAmounts(
  { agents, areaCm2, dose: made = { kind: 'neat' } }: StainTreatment,
  { strengthGPerL }: Pick<Bounds, 'strengthGPerL'>,
  book: Rulebook,
): readonly Amount[] {
  const [agent] = agents;
  if (agent === undefined) return [];
  const takes = spotMl(areaCm2, book);
  if (made.kind === 'neat') {
    return [amount(agent === 'water' ? perFlush : agent, 'mL', takes.least, takes.most)];
  }
  const ml = Math.max(takes.most, book.spotting.leastBatchMl);
  const liquid = amount(madeUp, 'mL', ml, ml);
  if (made.kind === 'to pH') return [liquid];
  const cap = kindOf(agent) === 'surfactant' ? strengthGPerL : Number.POSITIVE_INFINITY;
  const gramsPerMl =
    made.kind === 'share'
      ? made
      : { least: Math.min(made.least, cap) / 1000, most: Math.min(made.most, cap) / 1000 };
  return [liquid, amount(statedName(agent), 'g', gramsPerMl.least * ml, gramsPerMl.most * ml)];
}
