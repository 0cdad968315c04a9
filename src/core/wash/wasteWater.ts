import cautionTable from '../../../data/wash/cautions.json' with { type: 'json' };
import type { Rulebook } from './rulebook.ts';

/**
 * What this workshop may let go down the drain, as its cautions print it.
 *
 * @source workshop-setting (data/chemistry/sewer.json); lowest pH cfr-40-403-5
 */
export const wasteWaterWords = ({ sewer }: Rulebook): string =>
  cautionTable.wasteWater
    .replace('{leastPh}', String(sewer.leastPh))
    .replace('{mostPh}', String(sewer.mostPh))
    .replace('{mostTemperatureC}', String(sewer.mostTemperatureC));
