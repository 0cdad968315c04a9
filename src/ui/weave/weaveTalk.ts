import type { CardProblem, CardReading } from '../../core/card/index.ts';
import type { WeaveCount, WeaveOptions, WeaveProblem, WeaveScale } from '../../core/weave/index.ts';
import type { Result } from '../../units/index.ts';
import type { CardKnown } from '../card/cardInPicture.ts';

/** What the page asks of the counting worker. */
export type WeaveAsked =
  | { readonly kind: 'open'; readonly file: Blob; readonly known: CardKnown }
  | { readonly kind: 'count'; readonly options: WeaveOptions }
  /** The card's bar was measured only now [mm]. */
  | { readonly kind: 'bar'; readonly barMm: number };

/** A count in pixels of the picture, and the scale a card in it gives. */
export interface CountedHere {
  readonly count: WeaveCount;
  readonly cardScale: WeaveScale | null;
}

export type WeaveCounted = Result<CountedHere, WeaveProblem>;

/** The card lying in a picture, or why none gives the scale. */
export type CardSeen = Result<CardReading, CardProblem>;

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
  | ({ readonly kind: 'opened'; readonly card: CardSeen } & OpenedPicture)
  | { readonly kind: 'card'; readonly card: CardSeen }
  | { readonly kind: 'counted'; readonly counted: WeaveCounted }
  | { readonly kind: 'not-opened' | 'not-counted' };
