import { asCalciumCarbonate, type SupplyWater } from '../core/chemistry/index.ts';
import type { MixingPlace, StockedProduct } from '../core/wash/index.ts';
import type { Entry } from './entry.ts';
import type { ShelfEntry, ShelfFactOf } from './shelfFacts.ts';

export interface LotStanding {
  readonly lot: string;
  readonly amount: number;
  readonly receivedOn?: string | undefined;
  readonly expires?: string | undefined;
}

/** A product with what is left of it. */
export interface ShelvedAgent extends Omit<ShelfFactOf<'AgentShelved'>, 'type'> {
  readonly lots: readonly LotStanding[];
  /** Why and when it was taken off; null while it stands there. */
  readonly removed: { readonly why: string; readonly at: string } | null;
}

export interface ShelfStanding {
  readonly revision: number;
  readonly agents: readonly ShelvedAgent[];
  /** The latest reading of the supply; null while nobody read it. */
  readonly water: ShelfFactOf<'WaterMeasured'> | null;
}

export const emptyShelf: ShelfStanding = { revision: 0, agents: [], water: null };

const changed = (
  standing: ShelfStanding,
  agent: string,
  change: (one: ShelvedAgent) => ShelvedAgent,
): ShelfStanding => ({
  ...standing,
  agents: standing.agents.map((one) => (one.agent === agent ? change(one) : one)),
});

/** Sets what is left of a lot; a lot nobody received is begun. */
const withLot = (
  standing: ShelfStanding,
  agent: string,
  lot: string,
  amount: (before: number) => number,
  days: Pick<LotStanding, 'receivedOn' | 'expires'> = {},
): ShelfStanding =>
  changed(standing, agent, (one) => {
    const known = one.lots.find((held) => held.lot === lot);
    const next = {
      lot,
      amount: Math.max(0, amount(known?.amount ?? 0)),
      receivedOn: days.receivedOn ?? known?.receivedOn,
      expires: days.expires ?? known?.expires,
    };
    const lots =
      known === undefined ? [...one.lots, next] : one.lots.map((held) => (held.lot === lot ? next : held));
    return { ...one, lots };
  });

/**
 * What stands on the shelf now.
 *
 * @param entries - the shelf's stream, oldest first
 * @source none: rule of this project
 */
export function shelfStanding(entries: readonly Entry[]): ShelfStanding {
  let standing = emptyShelf;
  for (const { fact: recorded, at, revision } of entries as readonly ShelfEntry[]) {
    standing = { ...standing, revision };
    switch (recorded.type) {
      case 'AgentShelved': {
        const { type: _type, ...described } = recorded;
        const known = standing.agents.find(({ agent }) => agent === recorded.agent);
        const agent = { ...described, lots: known?.lots ?? [], removed: null };
        standing =
          known === undefined
            ? { ...standing, agents: [...standing.agents, agent] }
            : changed(standing, recorded.agent, () => agent);
        break;
      }
      case 'LotReceived':
        standing = withLot(
          standing,
          recorded.agent,
          recorded.lot,
          (before) => before + recorded.amount,
          recorded,
        );
        break;
      case 'LotCorrected': {
        const { lot, receivedOn, expires } = recorded;
        const days = { receivedOn: receivedOn ?? undefined, expires: expires ?? undefined };
        standing = changed(standing, recorded.agent, (one) => ({
          ...one,
          lots: one.lots.map((held) => (held.lot === lot ? { ...held, ...days } : held)),
        }));
        break;
      }
      case 'StockCounted':
        standing = withLot(standing, recorded.agent, recorded.lot, () => recorded.amount);
        break;
      case 'StockDrawn':
        standing = withLot(standing, recorded.agent, recorded.lot, (before) => before - recorded.amount);
        break;
      case 'StockReturned':
        standing = withLot(standing, recorded.agent, recorded.lot, (before) => before + recorded.amount);
        break;
      case 'AgentRemoved':
        standing = changed(standing, recorded.agent, (one) => ({
          ...one,
          removed: { why: recorded.why, at },
        }));
        break;
      case 'WaterMeasured':
        // A sheet found later may tell of an earlier day.
        if (standing.water === null || recorded.on >= standing.water.on) {
          standing = { ...standing, water: recorded };
        }
        break;
    }
  }
  return standing;
}

/** What is left of a product in lots that may still be used [its unit]. */
export const stockOf = ({ lots }: ShelvedAgent, today: string): number =>
  lots.reduce(
    (sum, { amount, expires }) => (expires === undefined || expires >= today ? sum + amount : sum),
    0,
  );

const supplyOf = (water: ShelfStanding['water']): SupplyWater | null => {
  if (water === null) return null;
  const { on, alkalinity, hardness, ph, conductivityUsPerCm, ironMgPerL, temperatureC } = water;
  return {
    on,
    alkalinityMgPerLCaCO3:
      alkalinity === undefined ? undefined : asCalciumCarbonate(alkalinity.value, alkalinity.unit),
    hardnessMgPerLCaCO3:
      hardness === undefined ? undefined : asCalciumCarbonate(hardness.value, hardness.unit),
    pH: ph,
    ...{ conductivityUsPerCm, ironMgPerL, temperatureC },
  };
};

/** A product as the mixing knows it. */
export const stockedProduct = (one: ShelvedAgent): StockedProduct => ({
  id: one.agent,
  name: one.name,
  serves: one.serves,
  unit: one.unit,
  densityGPerMl: one.densityGPerMl,
  parts: one.parts.map(({ kind, chemical, value, unit }) => ({
    kind,
    chemical,
    strength: { value: value ?? null, unit },
  })),
  lots: one.lots,
  removed: one.removed?.why ?? null,
});

/**
 * Shelf, water and day as the mixing knows them.
 *
 * @param standing - the shelf's standing
 * @param today - day, `2026-11-25`
 */
export const mixingPlaceOf = (standing: ShelfStanding, today: string): MixingPlace => ({
  shelf: standing.agents.map(stockedProduct),
  water: supplyOf(standing.water),
  today: today.slice(0, 10),
});
