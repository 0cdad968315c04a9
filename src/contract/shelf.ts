import * as z from 'zod/mini';
import { id } from '../dossier/facts/shape.ts';
import type { ShelfStanding } from '../dossier/shelf.ts';
import { shelfFacts } from '../dossier/shelfFacts.ts';

type ShelfFactShape = (typeof shelfFacts)[keyof typeof shelfFacts];
/** Stock is drawn and returned by the steps that used it, never by hand: a count corrects it. */
const { StockDrawn: _drawn, StockReturned: _returned, ...asked } = shelfFacts;
const shelfFact = z.discriminatedUnion(
  'type',
  Object.values(asked) as unknown as [ShelfFactShape, ...ShelfFactShape[]],
);

export const shelfEntriesRequest = z.strictObject({
  drafts: z.array(z.strictObject({ id, fact: shelfFact })).check(z.minLength(1), z.maxLength(50)),
});
export type ShelfEntriesRequest = z.infer<typeof shelfEntriesRequest>;

/** A rug in the house whose plan reckons with a product, and as what. */
export interface ShelfUse {
  readonly rug: string;
  readonly number: number;
  readonly title: string;
  readonly as: readonly string[];
}

export interface ShelfUsesAnswer {
  readonly uses: readonly ShelfUse[];
}

export interface ShelfAnswer {
  readonly standing: ShelfStanding;
}
