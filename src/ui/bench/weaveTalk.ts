import type { WeaveCount, WeaveOptions, WeaveProblem } from '../../core/weave/index.ts';
import type { Result } from '../../units/index.ts';

/** What the page asks of the counting worker. */
export type WeaveAsked =
  | { readonly kind: 'open'; readonly file: Blob }
  | { readonly kind: 'count'; readonly options: WeaveOptions };

export type WeaveCounted = Result<WeaveCount, WeaveProblem>;

/** A photograph as it was counted: upright, and reduced where it was very large. */
export interface OpenedPicture {
  readonly shown: Blob;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Pixels of the original to one of this picture. */
  readonly reducedBy: number;
}

/** What the worker tells the page. */
export type WeaveTold =
  | ({ readonly kind: 'opened' } & OpenedPicture)
  | { readonly kind: 'counted'; readonly counted: WeaveCounted }
  | { readonly kind: 'not-opened' | 'not-counted' };
