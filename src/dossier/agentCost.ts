import { type PlanStep, stepMix } from '../core/wash/index.ts';
import { packOf } from './reorder.ts';
import { mixingPlaceOf, type ShelfStanding } from './shelf.ts';

/** What the agents of a plan cost from this shelf. */
export interface AgentCost {
  /** One for each currency, in integer minor units, rounded up. */
  readonly costs: readonly {
    readonly currency: string;
    readonly leastMinor: number;
    readonly mostMinor: number;
  }[];
  /** Agents of which no price is on record, or no amount can be told. */
  readonly unknown: readonly string[];
}

/**
 * What the agents of a plan's steps cost, by the packs they are bought in.
 *
 * @param steps - of a plan
 * @param standing - the shelf's standing
 * @param today - day, `2026-11-25`
 * @returns from the least to the most that may be needed
 * @source none: amount by price of a pack
 */
export function agentCost(steps: readonly PlanStep[], standing: ShelfStanding, today: string): AgentCost {
  const place = mixingPlaceOf(standing, today);
  const sums = new Map<string, { readonly least: number; readonly most: number }>();
  const unknown = new Set<string>();
  for (const step of steps) {
    const { lines, volume } = stepMix(step, place);
    for (const { agent, product, amount, problems } of lines) {
      // Taken from a bath that was mixed and counted before.
      if (amount === null && problems.length === 0) continue;
      const bought = standing.agents.find((one) => one.agent === product?.id);
      const pack = bought === undefined ? null : packOf(bought);
      if (amount === null || bought?.price === undefined || pack === null || volume === 'each litre') {
        unknown.add(bought?.name ?? agent);
        continue;
      }
      const { currency, amountMinor } = bought.price;
      const known = sums.get(currency) ?? { least: 0, most: 0 };
      const of = (needed: number) => (needed / pack) * amountMinor;
      sums.set(currency, { least: known.least + of(amount.least), most: known.most + of(amount.most) });
    }
  }
  return {
    costs: [...sums].map(([currency, { least, most }]) => ({
      currency,
      leastMinor: Math.ceil(least),
      mostMinor: Math.ceil(most),
    })),
    unknown: [...unknown],
  };
}
