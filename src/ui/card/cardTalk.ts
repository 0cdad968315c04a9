import type { CardProblem, CardReading } from '../../core/card/index.ts';
import type { Result } from '../../units/index.ts';
import type { CardKnown } from './cardInPicture.ts';
import type { PictureHere } from './uprightPicture.ts';

/** What is asked of the reading worker. */
export interface CardAsked {
  readonly photograph: Blob;
  readonly known: CardKnown;
}

/** A photograph opened on this device, and the weave card in it or why there is none to rely on. */
export interface CardHere {
  readonly picture: PictureHere;
  readonly card: Result<CardReading, CardProblem>;
}
