import type { ShelfStanding, ShelvedAgent } from './shelf.ts';
import { stockOf } from './shelf.ts';

/** What to order of one product: enough to stand at its reorder level again. */
export interface Order {
  readonly product: ShelvedAgent;
  /** Left in date, in the product's unit. */
  readonly left: number;
  /** What is missing to the reorder level, in its unit. */
  readonly missing: number;
  /** Null where nobody wrote down what a pack holds. */
  readonly packs: number | null;
  /** Null where nobody wrote down its price. */
  readonly cost: { readonly amountMinor: number; readonly currency: string } | null;
}

/** A supplier with everything to be ordered there; null: nobody wrote down where it comes from. */
export interface SupplierOrder {
  readonly supplier: string | null;
  readonly orders: readonly Order[];
  /** Sum of what has a price, one for each currency. */
  readonly totals: readonly { readonly amountMinor: number; readonly currency: string }[];
}

/** A price without a pack is for so much: 1 kg or 1 L. */
const usualPack = 1000;

/** Products to be ordered: on the shelf, and less left in date than their reorder level. */
export const reorderList = ({ agents }: ShelfStanding, today: string): readonly ShelvedAgent[] =>
  agents.filter(
    (one) => one.removed === null && one.reorderBelow !== undefined && stockOf(one, today) < one.reorderBelow,
  );

/** What one pack of a product holds [its unit]; null where nobody wrote it down. */
export const packOf = ({ pack, price }: Pick<ShelvedAgent, 'pack' | 'price'>): number | null =>
  pack ?? (price === undefined ? null : usualPack);

function orderOf(product: ShelvedAgent, today: string): Order {
  const { reorderBelow = 0, price } = product;
  const left = stockOf(product, today);
  const missing = Math.max(0, reorderBelow - left);
  const pack = packOf(product);
  const packs = pack === null ? null : Math.max(1, Math.ceil(missing / pack));
  const cost =
    price === undefined || packs === null
      ? null
      : { amountMinor: price.amountMinor * packs, currency: price.currency };
  return { product, left, missing, packs, cost };
}

/**
 * The reorder list by supplier, with whole packs and what they cost.
 *
 * @param standing - the shelf's standing
 * @param today - day, `2026-11-25`
 * @returns suppliers in the order of their first product; costs in integer minor units
 * @source none: whole packs up to the reorder level, a rule of this project
 */
export function ordersBySupplier(standing: ShelfStanding, today: string): readonly SupplierOrder[] {
  const bySupplier = new Map<string | null, Order[]>();
  for (const product of reorderList(standing, today)) {
    const supplier = product.supplier ?? null;
    bySupplier.set(supplier, [...(bySupplier.get(supplier) ?? []), orderOf(product, today)]);
  }
  return [...bySupplier].map(([supplier, orders]) => {
    const sums = new Map<string, number>();
    for (const { cost } of orders) {
      if (cost !== null) sums.set(cost.currency, (sums.get(cost.currency) ?? 0) + cost.amountMinor);
    }
    return {
      supplier,
      orders,
      totals: [...sums].map(([currency, amountMinor]) => ({ amountMinor, currency })),
    };
  });
}
