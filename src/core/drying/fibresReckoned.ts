import settings from '../../../data/drying/settings.json' with { type: 'json' };
import type { Fibre, FibreShares } from '../wash/index.ts';
import type { DryRug } from './scenario.ts';

const { toItsStandard, toStatedRegain } = settings.unknownFibre;

/**
 * What an unknown fibre of a rug counts as: the slowest natural one. To its own dry standard that is the one
 * that keeps least water there; to a stated regain, the one that holds its water most firmly.
 *
 * @returns null where every fibre is named
 * @source none: worst case among the rows of data/air/regain.json (data/drying/settings.json, unknownFibre)
 */
export const unknownFibreAs = ({
  fibres,
  targetRegain,
}: Pick<DryRug, 'fibres' | 'targetRegain'>): Fibre | null =>
  (fibres.unknown ?? 0) > 0 ? ((targetRegain === undefined ? toItsStandard : toStatedRegain) as Fibre) : null;

/**
 * Shares of fibre as a forecast reckons with them, an unknown one taken as the slowest.
 *
 * @source none: unknownFibreAs
 */
export function fibresReckoned(rug: Pick<DryRug, 'fibres' | 'targetRegain'>): FibreShares {
  const slowest = unknownFibreAs(rug);
  if (slowest === null) return rug.fibres;
  const { unknown = 0, ...known } = rug.fibres;
  return { ...known, [slowest]: (known[slowest as keyof typeof known] ?? 0) + unknown };
}
