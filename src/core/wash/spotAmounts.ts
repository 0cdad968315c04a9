import stainTable from '../../../data/wash/stains.json' with { type: 'json' };
import { dose } from '../chemistry/index.ts';
import type { Band, Bounds } from './limit.ts';
import type { Agent } from './planFacts.ts';
import type { StainTreatment } from './stainSteps.ts';
import type { Amount } from './washPlan.ts';

/** How the liquid of a spotter is made up (data/wash/stains.json). */
export type SpotDose =
  | { readonly kind: 'neat' }
  | { readonly kind: 'to pH'; readonly chemical: string }
  | { readonly kind: 'grams per litre'; readonly least: number; readonly most: number }
  /** Mass of the agent itself in the liquid, as a share. */
  | { readonly kind: 'share'; readonly least: number; readonly most: number };

const round = (value: number): number => Number(value.toPrecision(2));

/** A place nobody measured is taken as this large [cm²]; the strength of the liquid does not depend on it. */
const unmeasuredCm2 = 100;

const amount = (agent: string, unit: Amount['unit'], least: number, most: number): Amount => ({
  ...{ agent, unit, least: round(least), most: round(most) },
  source: 'workshop-setting',
});

/** Grams that bring the liquid to the middle of its band, in the softest and the hardest water it may meet. */
function acidFor(chemical: string, litres: Band, ph: Band): Amount | null {
  const target = (ph.least + ph.most) / 2;
  const grams = [
    [litres.least, stainTable.unknownWaterMgPerLCaCO3.least],
    [litres.most, stainTable.unknownWaterMgPerLCaCO3.most],
  ].map(([volume = 0, alkalinityMgPerLCaCO3 = 0]) => {
    const recipe = {
      ...{ litres: volume, temperatureC: stainTable.spotTemperatureC, alkalinityMgPerLCaCO3 },
      ...{ activity: 'davies' as const, openToAir: false, add: [] },
    };
    const dosed = dose(recipe, chemical, target);
    return dosed.ok ? dosed.value : null;
  });
  const [soft, hard] = grams;
  if (soft == null || hard == null) return null;
  return amount(chemical, 'g', soft.interval[0], hard.interval[1]);
}

/**
 * What a spotter takes for one place: millilitres of liquid by its area, and what goes into them.
 *
 * @param treatment - the treatment, with its dose
 * @param areaCm2 - of the stain [cm²]; absent: a hand's breadth
 * @param ph - the band the liquid is used in, or null
 * @param bounds - the rug's limits, for the strength its dyes were tested with
 * @returns amounts, least for a light hand in soft water, most for a soaked place in hard water; the meter decides
 * @source workshop-setting (data/wash/stains.json); grams to a pH by charge balance, crc-handbook
 */
export function spotAmounts(
  { agents, dose: made = { kind: 'neat' } }: StainTreatment,
  areaCm2: number | undefined,
  ph: Band | null,
  { strengthGPerL }: Pick<Bounds, 'strengthGPerL'>,
): readonly Amount[] {
  const [agent] = agents;
  if (agent === undefined) return [];
  const area = areaCm2 === undefined || areaCm2 <= 0 ? unmeasuredCm2 : areaCm2;
  const ml = { least: stainTable.spotMlPerCm2.least * area, most: stainTable.spotMlPerCm2.most * area };
  const litres = { least: ml.least / 1000, most: ml.most / 1000 };
  const liquid = (name: string) => amount(name, 'mL', ml.least, ml.most);
  switch (made.kind) {
    case 'neat':
      return [liquid(agent)];
    case 'to pH': {
      const grams = ph === null ? null : acidFor(made.chemical, litres, ph);
      return grams === null ? [liquid('water')] : [liquid('water'), grams];
    }
    case 'grams per litre': {
      const most =
        agent === ('neutral detergent' satisfies Agent) ? Math.min(made.most, strengthGPerL) : made.most;
      const least = Math.min(made.least, most);
      return [liquid('water'), amount(agent, 'g', least * litres.least, most * litres.most)];
    }
    case 'share':
      return [
        liquid('water'),
        amount(`${agent}, reckoned pure`, 'g', made.least * ml.least, made.most * ml.most),
      ];
  }
}
