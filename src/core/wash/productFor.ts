import { done, type Problem, type Result, refused } from '../../units/index.ts';
import type { Product, SupplyWater } from '../chemistry/index.ts';
import type { Agent } from './planFacts.ts';

/** One container of a product; a lot past its day is not used. */
export interface StockLot {
  readonly lot: string;
  readonly amount: number;
  /** Last day of use. */
  readonly expires?: string | undefined;
}

/** A product on the shelf, or taken off it. */
export interface StockedProduct extends Product {
  readonly id: string;
  /** Which agents of the plans it is used as. */
  readonly serves: readonly Agent[];
  readonly unit: 'g' | 'mL';
  readonly lots: readonly StockLot[];
  /** Why it was taken off the shelf; null while it stands there. */
  readonly removed: string | null;
}

/** What there is to mix with, and when. */
export interface MixingPlace {
  readonly shelf: readonly StockedProduct[];
  readonly water: SupplyWater | null;
  /** `2026-11-25` */
  readonly today: string;
}

export type NoProduct =
  | Problem<'agent-not-on-shelf', { readonly agent: string }>
  | Problem<'agent-off-shelf', { readonly agent: string; readonly name: string; readonly why: string }>
  | Problem<'lot-expired', { readonly name: string; readonly lot: string; readonly expires: string }>;

/** Whether a lot is in date. */
export const isFit =
  (today: string) =>
  ({ expires }: StockLot): boolean =>
    expires === undefined || expires >= today;

/** The lot to use first: the one that expires first of those still in date and not empty. */
const firstLot = (lots: readonly StockLot[], today: string): StockLot | undefined =>
  [...lots]
    .filter((lot) => isFit(today)(lot) && lot.amount > 0)
    .sort((a, b) => ((a.expires ?? '9999') < (b.expires ?? '9999') ? -1 : 1))[0];

/**
 * The product that serves as an agent, with the lot to take.
 *
 * @param agent - of a plan's step
 * @refuses agent-off-shelf - the only product for it was taken off the shelf
 * @refuses agent-not-on-shelf - none was ever shelved for it
 * @refuses lot-expired - there are only lots past their day
 * @source none: rule of this project
 */
export function productFor(
  agent: Agent,
  { shelf, today }: Pick<MixingPlace, 'shelf' | 'today'>,
): Result<{ readonly product: StockedProduct; readonly lot: StockLot | null }, NoProduct> {
  const serving = shelf.filter(({ serves }) => serves.includes(agent));
  const there = serving.filter(({ removed }) => removed === null);
  const [gone] = serving;
  if (there.length === 0) {
    return gone === undefined
      ? refused('agent-not-on-shelf', { agent })
      : refused('agent-off-shelf', { agent, name: gone.name, why: gone.removed ?? '' });
  }
  for (const product of there) {
    const lot = firstLot(product.lots, today);
    if (lot !== undefined) return done({ product, lot });
  }
  const expired = there.flatMap(({ name, lots }) =>
    lots.flatMap(({ lot, expires, amount }) =>
      amount > 0 && expires !== undefined && expires < today ? [{ name, lot, expires }] : [],
    ),
  )[0];
  const [product] = there;
  if (expired !== undefined || product === undefined) {
    return refused('lot-expired', expired ?? { name: agent, lot: '', expires: '' });
  }
  return done({ product, lot: null });
}
