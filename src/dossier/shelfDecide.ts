import { type ProductProblem, sharesOf } from '../core/chemistry/index.ts';
import { done, type Problem, type Result, refused } from '../units/index.ts';
import type { RugProblem } from './rugProblem.ts';
import type { Asked } from './rule/rule.ts';
import { type ShelfStanding, stockedProduct } from './shelf.ts';
import type { ShelfFact } from './shelfFacts.ts';

export type ShelfProblem =
  | ProductProblem
  | Extract<RugProblem, { code: 'role-missing' }>
  | Problem<'shelf-agent-unknown', { readonly agent: string }>
  | Problem<'lot-unknown', { readonly name: string; readonly lot: string; readonly known: readonly string[] }>
  | Problem<'shelf-day-ahead', { readonly on: string; readonly today: string }>;

/** Who keeps the shelf; the counter reads it. */
const keepers = ['owner', 'washer'] as const;

/** Agents whose name says what they are in the balance; the rest may be described without chemistry. */
const compositionProblem = (fact: Extract<ShelfFact, { type: 'AgentShelved' }>): ShelfProblem | null => {
  const shares = sharesOf(stockedProduct({ ...fact, lots: [], removed: null }));
  if (!shares.ok) return shares.problem;
  return fact.unit === 'mL' && fact.densityGPerMl === undefined
    ? { code: 'density-missing', facts: { name: fact.name } }
    : null;
};

/**
 * Whether a fact of the shelf may be recorded.
 *
 * @param standing - the shelf's standing before the fact
 * @param fact - the fact asked for, of a valid shape
 * @param asked - who asks and when
 * @refuses role-missing - the counter only reads
 * @refuses shelf-agent-unknown, lot-unknown - what is counted must have been received
 * @refuses strength-above-whole, density-missing, agent-unknown - a composition that cannot be
 * @refuses shelf-day-ahead - water is read before it is written down
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
  if (fact.type === 'WaterMeasured') {
    const today = asked.now.slice(0, 10);
    return fact.on > nextDay(today) ? refused('shelf-day-ahead', { on: fact.on, today }) : done(fact);
  }
  if (fact.type === 'AgentShelved') {
    const problem = compositionProblem(fact);
    return problem === null ? done(fact) : { ok: false, problem };
  }
  const agent = standing.agents.find((one) => one.agent === fact.agent);
  if (agent === undefined) return refused('shelf-agent-unknown', { agent: fact.agent });
  if (fact.type === 'StockCounted' && !agent.lots.some(({ lot }) => lot === fact.lot)) {
    return refused('lot-unknown', {
      name: agent.name,
      lot: fact.lot,
      known: agent.lots.map(({ lot }) => lot),
    });
  }
  return done(fact);
}

/** East of the server the day begins earlier. */
const nextDay = (day: string): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
