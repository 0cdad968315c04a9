import type { CardProblem, CardReading } from '../../core/card/index.ts';
import type {
  BlotPlaces,
  CardBlot,
  ColourProblem,
  Comparison,
  NamedArea,
  Point,
} from '../../core/colour/index.ts';
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
    }
  | {
      readonly kind: 'compare';
      readonly run: number;
      /** The rug's corners in both pictures; null where the card lay at the same place. */
      readonly corners: { readonly [S in Slot]: Corners } | null;
      readonly colours: readonly NamedArea[];
    };

export type Corners = readonly [Point, Point, Point, Point];

/** A comparison with its pictures as files to be shown and kept. */
export interface ComparedHere extends Omit<Comparison, 'before' | 'after' | 'map'> {
  readonly shown: { readonly before: Blob; readonly after: Blob; readonly map: Blob };
}

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
  | {
      readonly kind: 'compared';
      readonly run: number;
      readonly compared: Result<ComparedHere, ColourProblem>;
    }
  | { readonly kind: 'not-measured' };
