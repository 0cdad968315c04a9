import { strengthsUnknown } from '../core/chemistry/index.ts';
import { isDosedToPh } from '../core/wash/index.ts';
import { type ShelvedAgent, stockedProduct } from './shelf.ts';

/** What is not known of a product and counts as the worst until somebody asks. */
export const shelfAsks = ['strength', 'chemical', 'ph', 'hazards', 'safety sheet', 'expiry'] as const;
export type ShelfAsk = (typeof shelfAsks)[number];

/**
 * What to ask the supplier of a product.
 *
 * @param agent - as it stands on the shelf
 * @returns in the order of `shelfAsks`; empty where nothing is missing
 * @source none: rule of this project
 */
export function asksOf(agent: ShelvedAgent): readonly ShelfAsk[] {
  const { parts, serves, ph, signal, safetySheet, lots } = agent;
  const isComputed = parts.some(({ chemical }) => chemical !== undefined);
  const missing: { readonly [A in ShelfAsk]: boolean } = {
    strength: strengthsUnknown(stockedProduct(agent)).length > 0,
    chemical: !isComputed && serves.some(isDosedToPh),
    ph: !isComputed && ph === undefined,
    hazards: signal === undefined,
    'safety sheet': safetySheet === undefined,
    expiry: lots.some(({ amount, expires }) => amount > 0 && expires === undefined),
  };
  return shelfAsks.filter((ask) => missing[ask]);
}
