import {
  type Agent,
  isFit,
  type MixLine,
  type MixProblem,
  type PlanStep,
  stepMix,
} from '../core/wash/index.ts';
import type { Problem } from '../units/index.ts';
import { agreedPlan, stepId } from './planFacts.ts';
import { mixingPlaceOf, type ShelfStanding } from './shelf.ts';
import { presentVisit, type RugStanding } from './standing.ts';

type Missing = Extract<
  MixProblem,
  { readonly code: 'agent-not-on-shelf' | 'agent-off-shelf' | 'lot-expired' }
>;

export type ShelfGapProblem =
  | Missing
  | Problem<
      'stock-may-end',
      { readonly name: string; readonly have: number; readonly need: number; readonly unit: string }
    >
  | Problem<'agent-ran-out', { readonly agent: Agent; readonly name: string }>;

/** An agent that a step still to come of the plan on record needs, and the shelf no longer has. */
export interface ShelfGap {
  readonly step: string;
  readonly order: number;
  readonly kind: PlanStep['kind'];
  readonly agent: Agent;
  readonly problem: ShelfGapProblem;
}

const missingCodes: readonly string[] = ['agent-not-on-shelf', 'agent-off-shelf', 'lot-expired'];

const isMissing = (problem: MixProblem): problem is Missing => missingCodes.includes(problem.code);

interface Stock {
  /** In date on the shelf; null where no lot was ever received: nobody keeps its stock. */
  readonly inDate: number | null;
  /** What the steps before leave of it. */
  readonly left: number;
}

function problemOf({ agent, product, amount, problems }: MixLine, stock: Stock): ShelfGapProblem | null {
  const missing = problems.find(isMissing);
  if (missing !== undefined) return missing;
  if (product === null || stock.inDate === null) return null;
  if (stock.inDate <= 0) return { code: 'agent-ran-out', facts: { agent, name: product.name } };
  // A step of which nobody knows how much it takes may take the most.
  if (amount === null || stock.left >= amount.most) return null;
  const { most: need, unit } = amount;
  return { code: 'stock-may-end', facts: { name: product.name, have: stock.left, need, unit } };
}

/**
 * What the steps still to come of a plan on record lack on the shelf, in the order of the steps. Steps share
 * one stock: what an earlier one takes is not there for a later one. Where nothing was ever shelved nobody keeps
 * stock here, and nothing is lacking.
 *
 * @param standing - the rug's standing
 * @param shelf - what stands on the shelf
 * @param now - instant, for the lots' days
 * @returns empty where nothing is lacking, or the wash is over
 * @source none: rule of this project
 */
export function shelfGaps(standing: RugStanding, shelf: ShelfStanding, now: string): readonly ShelfGap[] {
  const visit = presentVisit(standing);
  if (visit === null || visit.declined !== null || visit.dryingStarted !== null) return [];
  const place = mixingPlaceOf(shelf, now);
  if (place.shelf.length === 0) return [];
  const inDate = new Map(
    place.shelf.map(({ id, lots }) => [
      id,
      lots.length === 0 ? null : lots.filter(isFit(place.today)).reduce((sum, { amount }) => sum + amount, 0),
    ]),
  );
  const taken = new Map<string, number>();
  const begun = new Set(visit.steps.flatMap(({ step, started }) => (started === null ? [] : [step])));
  return (agreedPlan(standing)?.steps ?? [])
    .filter((step) => !begun.has(stepId(step)))
    .flatMap((step) =>
      stepMix(step, place).lines.flatMap((line): readonly ShelfGap[] => {
        const id = line.product?.id ?? '';
        const before = taken.get(id) ?? 0;
        const known = inDate.get(id) ?? null;
        const problem = problemOf(line, { inDate: known, left: Math.max(0, (known ?? 0) - before) });
        taken.set(id, before + (line.amount?.most ?? 0));
        const { order, kind } = step;
        return problem === null ? [] : [{ step: stepId(step), order, kind, agent: line.agent, problem }];
      }),
    );
}
