import type { Noted } from '../../dossier/index.ts';
import { figure } from '../dossier/figures.ts';

type Rinse = Noted<'RinseMeasured'>;

/** One criterion of the end of a rinse. */
export interface RinseCriterion {
  readonly asked: string;
  readonly found: string;
  readonly met: boolean;
}

/** Conductivity may stand above the supply by this much [µS/cm] or this share, whichever is more. Workshop settings. */
const conductivityStep = 20;
const conductivityShare = 0.05;
const phStep = 0.5;

const nearSupply = ({ conductivityUsPerCm, supplyConductivityUsPerCm }: Rinse): boolean | null =>
  conductivityUsPerCm === undefined || supplyConductivityUsPerCm === undefined
    ? null
    : conductivityUsPerCm - supplyConductivityUsPerCm <=
      Math.max(conductivityStep, supplyConductivityUsPerCm * conductivityShare);

/** Whether the rinse has reached its end point by its readings; what was not measured is not met. */
export function rinseEnd(rinses: readonly Rinse[]): readonly RinseCriterion[] {
  const lastTwo = rinses.slice(-2);
  const last = rinses.at(-1);
  const conductive = lastTwo.map(nearSupply);
  const phOff =
    last?.ph === undefined || last.supplyPh === undefined ? null : Math.abs(last.ph - last.supplyPh);
  return [
    {
      asked: 'conductivity at the supply’s, twice in a row',
      met: conductive.length === 2 && conductive.every((near) => near === true),
      found:
        last?.conductivityUsPerCm === undefined
          ? 'not measured'
          : `${figure(last.conductivityUsPerCm, 0)} µS/cm, supply ${last.supplyConductivityUsPerCm === undefined ? 'not measured' : figure(last.supplyConductivityUsPerCm, 0)}`,
    },
    {
      asked: 'pH within 0.5 of the supply',
      met: phOff !== null && phOff <= phStep + 1e-9,
      found: phOff === null ? 'not measured' : `${figure(phOff, 2)} away`,
    },
    { asked: 'no foam', met: last?.foam === 'none', found: last?.foam ?? 'not noted' },
    {
      asked: 'no colour on white cloth',
      met: last?.whiteClothGrade === '5',
      found: last?.whiteClothGrade === undefined ? 'not noted' : `grade ${last.whiteClothGrade}`,
    },
  ];
}
