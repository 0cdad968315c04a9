import type { Problem } from '../../units/index.ts';

export type ConditionProblem =
  /** Four corners that no flat rug could show from any side. */
  | Problem<'corners-not-a-rug', { readonly why: 'crossed' | 'too small' }>
  /** The corners run the other way round than on this side of a rug. */
  | Problem<'corners-mirrored', { readonly side: 'face' | 'back' }>
  /** The outline crosses itself, so its area means nothing. */
  | Problem<'outline-crosses-itself', { readonly corners: number }>
  | Problem<
      'too-few-points',
      { readonly shape: 'line' | 'polygon'; readonly given: number; readonly least: number }
    >
  | Problem<
      'mark-off-the-rug',
      { readonly xMm: number; readonly yMm: number; readonly widthMm: number; readonly lengthMm: number }
    >;
