import type { Result } from '../../units/index.ts';
import { type Axis, withinOn } from './limit.ts';
import type { PlanFacts } from './planFacts.ts';
import type { BarePlan } from './planWash.ts';
import { stainTreatments } from './stainSteps.ts';
import { type Unknown, unknownsOf } from './unknowns.ts';
import type { Loosening } from './washPlan.ts';

type Plan = (facts: PlanFacts) => Result<BarePlan>;

/** Axes a person plans by; the rest follow from them. */
const shownAxes: readonly Axis[] = [
  'method',
  'bathPh',
  'finalPh',
  'temperatureC',
  'wetMinutes',
  'bathMinutes',
  'agitation',
  'extraction',
  'dryingPosture',
  'people',
  'forbiddenAgents',
  'requiredActs',
  'signOffs',
];

function allowed(before: BarePlan, after: BarePlan): Loosening['allows'] {
  return shownAxes.flatMap((axis) => {
    const [from, to] = [before.bounds[axis], after.bounds[axis]];
    const looser = !withinOn(axis, to as never, from as never);
    return looser ? [{ axis, from, to }] : [];
  });
}

const asLoosening = (
  { find, fact, assumed, favourable }: Unknown,
  allows: Loosening['allows'],
): Loosening => ({
  find,
  fact,
  assumed,
  favourable,
  allows,
});

/** Stain treatments that wait for a spotter test. */
function waitingSpotters(facts: PlanFacts, plan: BarePlan): readonly Loosening[] {
  const waiting = (['pre-spot', 'stain treatment'] as const).flatMap(
    (phase) => stainTreatments(facts, plan.bounds, phase).waiting,
  );
  return waiting.map(({ stain, agents, what }) => ({
    fact: `spotter test for ${stain}`,
    find: `Test ${agents.join(' and ')} as used on every colour under it, staining and change of the colour.`,
    assumed: 'not borne',
    favourable: 'no staining, no change',
    allows: [{ axis: 'steps', from: 'left out', to: what } as unknown as Loosening['allows'][number]],
  }));
}

/**
 * What to find out, and what the plan would then allow: each unknown assumed favourable and the whole plan
 * computed anew; last, all of them together.
 *
 * @param facts - what is known
 * @param plan - the plan for them
 * @param replan - the planner without loosenings
 * @source none: rule of this project
 */
export function loosenings(facts: PlanFacts, plan: BarePlan, replan: Plan): readonly Loosening[] {
  const unknowns = unknownsOf(facts);
  const single = unknowns.flatMap((unknown): readonly Loosening[] => {
    const hoped = replan(unknown.hopeful(facts));
    const allows = hoped.ok ? allowed(plan, hoped.value) : [];
    return allows.length === 0 ? [] : [asLoosening(unknown, allows)];
  });
  const best = replan(unknowns.reduce((hoped, { hopeful }) => hopeful(hoped), facts));
  const together = best.ok ? allowed(plan, best.value) : [];
  const more = together.length > 0 && unknowns.length > 1;
  const all: Loosening = {
    fact: 'all of these',
    find: `Find out: ${[...new Set(unknowns.map(({ fact }) => fact))].join(', ')}.`,
    assumed: 'the worst of each',
    favourable: 'the best of each',
    allows: together,
  };
  return [...single, ...(more ? [all] : []), ...waitingSpotters(facts, plan)];
}
