import type { Problem } from '../../units/index.ts';
import type { Area } from './measureArea.ts';

/** Which of the areas given by the person is meant. */
export type AreaName = 'control' | 'sample' | 'white';

export type ColourProblem =
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
  | Problem<'blot-sample-lighter', { readonly lighterBy: number }>;
