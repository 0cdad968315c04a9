import type { RugFact, RugFactOf, RugStanding, WorkshopSettings } from '../../dossier/index.ts';

/** What a story may look at when a fact depends on what came before it. */
export interface View {
  readonly standing: RugStanding;
  readonly settings: WorkshopSettings;
  readonly now: string;
}

export type DemoPerson = 'mirela' | 'tobin' | 'ines';

/** A blot whose grade is measured on a photograph painted for it. */
export interface PhotographedBlot {
  readonly kind: 'photographed blot';
  readonly seed: number;
  /** Colour of the cloth where it met the dye; null where it took up nothing. */
  readonly stained: string | null;
  readonly of: Omit<RugFactOf<'DyeTested'>, 'type' | 'reading' | 'photos'>;
}

/** The rug photographed after the work, without its dust, and compared with the picture from the door. */
export interface ComparedPictures {
  readonly kind: 'compared pictures';
  /** Where each named colour is measured, in 0 … 1 of the rug's width and length from its upper left. */
  readonly places: Readonly<Record<string, readonly [x: number, y: number]>>;
}

/** A place of a rug's back whose knots are counted on a photograph painted for it. */
export interface PhotographedBack {
  readonly place: string;
  readonly seed: number;
  /** What is painted: knots in 7 cm across and along, two nodes to a knot. */
  readonly weftwiseKnotsPer7cm: number;
  readonly warpwiseKnotsPer7cm: number;
}

export interface PhotographedCount {
  readonly kind: 'photographed count';
  readonly backs: readonly PhotographedBack[];
}

/** What somebody else records meanwhile. */
export interface ByAnother {
  readonly by: DemoPerson;
  readonly fact: RugFact;
}

export type Told = (view: View) => RugFact | ByAnother | null;

/** Facts recorded together by one person, so many hours before the demo is opened. */
export interface Moment {
  readonly hoursAgo: number;
  readonly by: DemoPerson;
  readonly facts: readonly (RugFact | PhotographedBlot | ComparedPictures | PhotographedCount | Told)[];
}

export const moment = (hoursAgo: number, by: DemoPerson, ...facts: Moment['facts']): Moment => ({
  hoursAgo,
  by,
  facts,
});
