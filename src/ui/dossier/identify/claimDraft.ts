import type { Construction, Fibre, LatexState } from '../../../core/wash/index.ts';
import type { About, Claim } from './claimWords.ts';

export const knots = ['symmetrical', 'asymmetrical', 'offset', 'jufti', 'none', 'unknown'] as const;
export type Knot = (typeof knots)[number];
/** What is typed so far; only the fields of the fact in question are used. */
export interface ClaimDraft {
  readonly construction: Construction | null;
  readonly fibre: Fibre | null;
  readonly blend: readonly Fibre[];
  readonly percent: { readonly [F in Fibre]?: number | null };
  readonly latex: LatexState | null;
  readonly knot: Knot | null;
  readonly fromYear: number | null;
  readonly untilYear: number | null;
  readonly words: string;
}
export const blankDraft: ClaimDraft = {
  construction: null,
  fibre: null,
  blend: [],
  percent: {},
  latex: null,
  knot: null,
  fromYear: null,
  untilYear: null,
  words: '',
};

export type Claimed = Pick<Claim, 'evidence' | 'confidence' | 'note'>;

const blendShares = ({ blend, percent }: ClaimDraft): readonly (readonly [Fibre, number])[] =>
  blend.length === 1
    ? blend.map((fibre) => [fibre, 1])
    : blend.map((fibre) => [fibre, (percent[fibre] ?? 0) / 100]);

/** Sum of the shares of a blend; 1 when it is whole. */
export const sumOf = (typed: ClaimDraft) => blendShares(typed).reduce((sum, [, share]) => sum + share, 0);

/** The claim when everything it needs is there. */
export const claimOf = (about: About, typed: ClaimDraft, claimed: Claimed): Claim | null => {
  switch (about) {
    case 'construction':
      return typed.construction && { about, construction: typed.construction, ...claimed };
    case 'pile': {
      const shares = blendShares(typed);
      const complete =
        shares.length > 0 && shares.every(([, share]) => share > 0) && Math.abs(sumOf(typed) - 1) < 0.001;
      return complete ? { about, fibres: Object.fromEntries(shares), ...claimed } : null;
    }
    case 'warp':
    case 'weft':
    case 'backing':
      return typed.fibre && { about, fibre: typed.fibre, ...claimed };
    case 'latex':
      return typed.latex && { about, latex: typed.latex, ...claimed };
    case 'knot':
      return typed.knot && { about, knot: typed.knot, ...claimed };
    case 'period': {
      const { fromYear, untilYear } = typed;
      if (fromYear === null && untilYear === null) return null;
      if (fromYear !== null && untilYear !== null && fromYear > untilYear) return null;
      return {
        about,
        ...(fromYear === null ? {} : { fromYear }),
        ...(untilYear === null ? {} : { untilYear }),
        ...claimed,
      };
    }
    default:
      return typed.words.trim() === '' ? null : { about, words: typed.words.trim(), ...claimed };
  }
};
