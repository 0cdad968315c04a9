import * as z from 'zod/mini';
import { type MeasuredCard, workshopFacts } from '../dossier/workshopFacts.ts';

const { serial, barMm } = workshopFacts.CardMeasured.shape;
export const cardMeasurement = z.strictObject({ serial, barMm });
export type CardMeasurement = z.infer<typeof cardMeasurement>;

/** Answer of `GET /api/cards`: every printed card whose bar was measured. */
export interface CardsAnswer {
  readonly cards: readonly MeasuredCard[];
}
