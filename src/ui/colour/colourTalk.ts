import type { CardProblem, CardReading } from '../../core/card/index.ts';
import type { BlotPlaces, CardBlot, ColourProblem } from '../../core/colour/index.ts';
import type { Result } from '../../units/index.ts';
import type { CardKnown } from '../card/cardInPicture.ts';

/** Of two pictures the earlier or the later; a single one is the later. */
export type Slot = 'before' | 'after';

/** What a page asks of the colour worker. */
export type ColourAsked =
  | { readonly kind: 'open'; readonly slot: Slot; readonly file: Blob; readonly known: CardKnown }
  | {
      readonly kind: 'blot';
      /** Comes back with the answer, so that one to an older question is known. */
      readonly run: number;
      readonly isPair: boolean;
      readonly places: BlotPlaces | null;
    };

/** A photograph as it is measured: upright, reduced where it was very large. */
export interface OpenedPicture {
  readonly shown: Blob;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly card: Result<CardReading, CardProblem>;
}

/** What the worker tells the page. */
export type ColourTold =
  | ({ readonly kind: 'opened'; readonly slot: Slot } & OpenedPicture)
  | { readonly kind: 'not-opened'; readonly slot: Slot }
  | { readonly kind: 'blot'; readonly run: number; readonly blot: Result<CardBlot, ColourProblem> }
  | { readonly kind: 'not-measured' };
