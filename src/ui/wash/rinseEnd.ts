import { conductsAsSupply, phFromSupply, type RinseLimits } from '../../core/wash/index.ts';
import type { Noted } from '../../dossier/index.ts';
import { figure } from '../dossier/figures.ts';

type Rinse = Noted<'RinseMeasured'>;

/** One criterion of the end of a rinse. */
export interface RinseCriterion {
  readonly asked: string;
  readonly found: string;
  readonly met: boolean;
}

const timesWords = (times: number): string =>
  times === 1 ? 'once' : times === 2 ? 'twice in a row' : `${times} times in a row`;

/** Whether the rinse has reached its end point by its readings; what was not measured is not met. */
export function rinseEnd(rinses: readonly Rinse[], limits: RinseLimits): readonly RinseCriterion[] {
  const { readingsInARow } = limits;
  const lately = rinses.slice(-readingsInARow);
  const last = rinses.at(-1);
  const conductive = lately.map((one) => conductsAsSupply(one, limits));
  const ph = last === undefined ? null : phFromSupply(last, limits);
  return [
    {
      asked: `conductivity at the supply’s, ${timesWords(readingsInARow)}`,
      met: conductive.length === readingsInARow && conductive.every((near) => near === true),
      found:
        last?.conductivityUsPerCm === undefined
          ? 'not measured'
          : `${figure(last.conductivityUsPerCm, 0)} µS/cm, supply ${last.supplyConductivityUsPerCm === undefined ? 'not measured' : figure(last.supplyConductivityUsPerCm, 0)}`,
    },
    {
      asked: `pH within ${figure(limits.atSupply.ph, 2)} of the supply`,
      met: ph?.isNear === true,
      found: ph === null ? 'not measured' : `${figure(ph.off, 2)} away`,
    },
    { asked: 'no foam', met: last?.foam === 'none', found: last?.foam ?? 'not noted' },
    {
      asked: 'no colour on white cloth',
      met: last?.whiteClothGrade === '5',
      found: last?.whiteClothGrade === undefined ? 'not noted' : `grade ${last.whiteClothGrade}`,
    },
  ];
}
