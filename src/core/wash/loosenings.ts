import type { Result } from '../../units/index.ts';
import { type Axis, type Bounds, withinOn } from './limit.ts';
import type { PlanFacts } from './planFacts.ts';
import { stainTreatments } from './stainSteps.ts';
import { type Unknown, unknownsOf } from './unknowns.ts';
import type { Loosening } from './washPlan.ts';

type Judge = (facts: PlanFacts) => Result<{ readonly bounds: Bounds }>;

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

function allowed(before: Bounds, after: Bounds): Loosening['allows'] {
  return shownAxes.flatMap((axis) => {
    const [from, to] = [before[axis], after[axis]];
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
function waitingSpotters(facts: PlanFacts, bounds: Bounds): readonly Loosening[] {
  const waiting = (['pre-spot', 'stain treatment'] as const).flatMap(
    (phase) => stainTreatments(facts, bounds, phase).waiting,
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
 * @param bounds - what they allow
 * @param judge - what other facts would allow
 * @source none: rule of this project
 */
export function loosenings(facts: PlanFacts, bounds: Bounds, judge: Judge): readonly Loosening[] {
  const unknowns = unknownsOf(facts);
  const single = unknowns.flatMap((unknown): readonly Loosening[] => {
    const hoped = judge(unknown.hopeful(facts));
    const allows = hoped.ok ? allowed(bounds, hoped.value.bounds) : [];
    return allows.length === 0 ? [] : [asLoosening(unknown, allows)];
  });
  const best = judge(unknowns.reduce((hoped, { hopeful }) => hopeful(hoped), facts));
  const together = best.ok ? allowed(bounds, best.value.bounds) : [];
  const more = together.length > 0 && unknowns.length > 1;
  const all: Loosening = {
    fact: 'all of these',
    find: `Find out: ${[...new Set(unknowns.map(({ fact }) => fact))].join(', ')}.`,
    assumed: 'the worst of each',
    favourable: 'the best of each',
    allows: together,
  };
  return [...single, ...(more ? [all] : []), ...waitingSpotters(facts, bounds)];
}
