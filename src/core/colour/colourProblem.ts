import type { Problem } from '../../units/index.ts';
import type { Area } from './measureArea.ts';

/** Which of the places is meant. */
export type AreaName = 'control' | 'sample' | 'white' | 'card';

/** Why a blot could not be found without being shown. */
export type BlotUnclear = 'several-blots' | 'no-clean-cloth' | 'blot-too-small';

/** What can go wrong in one picture with a blot or a card. */
export type BlotProblem =
  | Problem<
      'blot-area-outside',
      { readonly name: AreaName; readonly area: Area; readonly width: number; readonly height: number }
    >
  | Problem<
      'blot-area-too-small',
      { readonly name: AreaName; readonly area: Area; readonly leastSidePx: number }
    >
  | Problem<'blot-areas-overlap', { readonly one: AreaName; readonly other: AreaName }>
  | Problem<'blot-clipped', { readonly name: AreaName; readonly sharePercent: number }>
  | Problem<'blot-area-mixed', { readonly name: AreaName; readonly keptPercent: number }>
  | Problem<'blot-light-uneven', { readonly offPercent: number }>
  | Problem<
      'blot-cloth-not-white',
      { readonly lightness: number; readonly chroma: number; readonly balanced: boolean }
    >
  | Problem<'blot-sample-lighter', { readonly lighterBy: number }>
  | Problem<'blot-too-noisy', { readonly sigma: number; readonly most: number }>
  | Problem<'blot-card-too-small', { readonly mmPerPx: number }>
  | Problem<'blot-card-cut-off', { readonly seenPercent: number }>
  | Problem<'blot-not-clear', { readonly why: BlotUnclear }>
  | Problem<'blot-outside-window', { readonly name: AreaName }>
  | Problem<'blot-other-card', { readonly before: string; readonly after: string }>
  | Problem<'blot-before-stained', { readonly afterClean: boolean }>
  | Problem<'blot-control-moved', { readonly deltaE: number; readonly most: number }>;

/** Which of two pictures. */
export type PairPicture = 'before' | 'after';

/** What gave the first guess of how two pictures lie on each other. */
export type AlignedFrom = 'corners' | 'card';

export type ColourProblem =
  | BlotProblem
  | Problem<'compare-card-light', { readonly picture: PairPicture; readonly because: BlotProblem['code'] }>
  | Problem<'compare-corners', Readonly<Record<never, never>>>
  | Problem<
      'compare-other-rug',
      { readonly likeness: number; readonly least: number; readonly from: AlignedFrom }
    >
  | Problem<'compare-control-moved', { readonly deltaE: number; readonly most: number }>;
