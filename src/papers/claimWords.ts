import type { RugFactOf } from '../dossier/index.ts';
import { figure } from './measureWords.ts';

type Claim = RugFactOf<'RugIdentified'>['claims'][number];

/** What a claim says, without its evidence. */
export function claimWords(claim: Claim): string {
  switch (claim.about) {
    case 'construction':
      return claim.construction;
    case 'pile':
      return Object.entries(claim.fibres)
        .map(([fibre, share]) => `${figure((share ?? 0) * 100, 0)} % ${fibre}`)
        .join(', ');
    case 'warp':
    case 'weft':
    case 'backing':
      return claim.fibre;
    case 'latex':
      return `latex ${claim.latex}`;
    case 'knot':
      return claim.knot;
    case 'period': {
      const { fromYear, untilYear } = claim;
      if (fromYear !== undefined && untilYear !== undefined) return `${fromYear} to ${untilYear}`;
      if (fromYear !== undefined) return `${fromYear} or later`;
      return untilYear === undefined ? 'no bound given' : `${untilYear} or earlier`;
    }
    default:
      return claim.words;
  }
}
