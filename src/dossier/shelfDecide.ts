import {
  asCalciumCarbonate,
  hardnessOnlyUnits,
  mostBelievedMgPerLCaCO3,
  type ProductProblem,
  sharesOf,
} from '../core/chemistry/index.ts';
import { type ProductFitProblem, productFit } from '../core/wash/index.ts';
import { done, type Problem, type Result, refused } from '../units/index.ts';
import type { RugProblem } from './rugProblem.ts';
import type { Asked } from './rule/rule.ts';
import { type LotStanding, type ShelfStanding, type ShelvedAgent, stockedProduct } from './shelf.ts';
import type { ShelfFact, ShelfFactOf } from './shelfFacts.ts';

export type ShelfProblem =
  | ProductProblem
  | ProductFitProblem
  | Extract<RugProblem, { code: 'role-missing' }>
  | Problem<'shelf-agent-unknown', { readonly agent: string }>
  | Problem<'lot-unknown', { readonly name: string; readonly lot: string; readonly known: readonly string[] }>
  | Problem<
      'lot-expired-before-receipt',
      { readonly name: string; readonly lot: string; readonly expires: string; readonly received: string }
    >
  | Problem<
      'lot-expiry-differs',
      { readonly name: string; readonly lot: string; readonly known: string; readonly given: string }
    >
  | Problem<'hardness-unit-wrong', { readonly unit: string; readonly known: readonly string[] }>
  | Problem<
      'water-not-believed',
      { readonly field: string; readonly value: number; readonly unit: string; readonly most: number }
    >
  | Problem<
      'shelf-day-ahead',
      { readonly what: 'water' | 'lot'; readonly on: string; readonly today: string }
    >;

/** Who keeps the shelf; the counter reads it. */
const keepers = ['owner', 'washer'] as const;

/** Agents whose name says what they are in the balance; the rest may be described without chemistry. */
const compositionProblem = (fact: Extract<ShelfFact, { type: 'AgentShelved' }>): ShelfProblem | null => {
  const shares = sharesOf(stockedProduct({ ...fact, lots: [], removed: null }));
  if (!shares.ok) return shares.problem;
  if (fact.unit === 'mL' && fact.densityGPerMl === undefined) {
    return { code: 'density-missing', facts: { name: fact.name } };
  }
  const fit = productFit({ ...stockedProduct({ ...fact, lots: [], removed: null }), ph: fact.ph });
  return fit.ok ? null : fit.problem;
};

/** A figure of the water that no tap gives was read in another unit. */
function waterProblem(fact: ShelfFactOf<'WaterMeasured'>, now: string): ShelfProblem | null {
  const today = now.slice(0, 10);
  if (fact.on > nextDay(today)) {
    return { code: 'shelf-day-ahead', facts: { what: 'water', on: fact.on, today } };
  }
  const { hardness, alkalinity } = fact;
  if (hardness !== undefined && !hardnessOnlyUnits.includes(hardness.unit)) {
    return { code: 'hardness-unit-wrong', facts: { unit: hardness.unit, known: hardnessOnlyUnits } };
  }
  for (const [field, read] of Object.entries({ hardness, alkalinity })) {
    if (read === undefined) continue;
    const { value, unit } = read;
    const most = mostBelievedMgPerLCaCO3 / asCalciumCarbonate(1, unit);
    if (value > most) return { code: 'water-not-believed', facts: { field, value, unit, most } };
  }
  return null;
}

/** What the container of a lot cannot bear: a last day before it came in, or another one than its like. */
function lotProblem(
  { name }: ShelvedAgent,
  lot: string,
  { receivedOn, expires }: Pick<LotStanding, 'receivedOn' | 'expires'>,
  now: string,
): ShelfProblem | null {
  const today = now.slice(0, 10);
  if (receivedOn !== undefined && receivedOn > nextDay(today)) {
    return { code: 'shelf-day-ahead', facts: { what: 'lot', on: receivedOn, today } };
  }
  return receivedOn !== undefined && expires !== undefined && expires < receivedOn
    ? { code: 'lot-expired-before-receipt', facts: { name, lot, expires, received: receivedOn } }
    : null;
}

/** A second container of a lot bears the same last day as the first. */
function differingExpiry(
  agent: ShelvedAgent,
  { lot, expires }: ShelfFactOf<'LotReceived'>,
): ShelfProblem | null {
  const known = agent.lots.find((held) => held.lot === lot && held.amount > 0)?.expires;
  return known === undefined || expires === undefined || known === expires
    ? null
    : { code: 'lot-expiry-differs', facts: { name: agent.name, lot, known, given: expires } };
}

const verdict = (fact: ShelfFact, problem: ShelfProblem | null): Result<ShelfFact, ShelfProblem> =>
  problem === null ? done(fact) : { ok: false, problem };

/**
 * Whether a fact of the shelf may be recorded.
 *
 * @param standing - the shelf's standing before the fact
 * @param fact - the fact asked for, of a valid shape
 * @param asked - who asks and when
 * @refuses role-missing - the counter only reads
 * @refuses shelf-agent-unknown, lot-unknown - what is counted must have been received
 * @refuses strength-above-whole, density-missing, agent-unknown - a composition that cannot be
 * @refuses agent-hidden, detergent-not-neutral, constituent-kind-wrong - a product under another name
 * @refuses lot-expired-before-receipt, lot-expiry-differs - days no container can bear
 * @refuses water-not-believed, hardness-unit-wrong - a figure in another unit
 * @refuses shelf-day-ahead - water is read, and a lot received, before it is written down
 * @source none: rule of this project
 */
export function decideShelf(
  standing: ShelfStanding,
  fact: ShelfFact,
  asked: Pick<Asked, 'now' | 'person'>,
): Result<ShelfFact, ShelfProblem> {
  if (!keepers.some((role) => asked.person.roles.includes(role))) {
    return refused('role-missing', { needs: keepers, type: fact.type });
  }
  if (fact.type === 'WaterMeasured') return verdict(fact, waterProblem(fact, asked.now));
  if (fact.type === 'AgentShelved') return verdict(fact, compositionProblem(fact));
  const agent = standing.agents.find((one) => one.agent === fact.agent);
  if (agent === undefined) return refused('shelf-agent-unknown', { agent: fact.agent });
  switch (fact.type) {
    case 'LotReceived':
      return verdict(fact, lotProblem(agent, fact.lot, fact, asked.now) ?? differingExpiry(agent, fact));
    case 'StockCounted':
    case 'LotCorrected': {
      const { name, lots } = agent;
      const known = lots.map(({ lot }) => lot);
      if (!known.includes(fact.lot)) return refused('lot-unknown', { name, lot: fact.lot, known });
      if (fact.type === 'StockCounted') return done(fact);
      const { receivedOn, expires } = fact;
      const days = { receivedOn: receivedOn ?? undefined, expires: expires ?? undefined };
      return verdict(fact, lotProblem(agent, fact.lot, days, asked.now));
    }
    default:
      return done(fact);
  }
}

/** East of the server the day begins earlier. */
const nextDay = (day: string): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
