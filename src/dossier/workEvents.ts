import { isAtSupply, type PlanStep, type Residue, residuesOf, type WorkEvent } from '../core/wash/index.ts';
import { planOnRecord, stepId } from './planFacts.ts';
import { type BegunStep, latestVisit, type RugStanding, type VisitStanding } from './standing.ts';

type Timed = WorkEvent & { readonly when: string };

/** When the same step was begun once more, or never. */
const untilOf = ({ begun }: VisitStanding, { started }: BegunStep): string | undefined =>
  begun.find((one) => one.started.step === started.step && one.started.when > started.when)?.started.when;

/** The pH the liquid of one beginning had: as measured last before the step was begun again, else unknown. */
function phOf(visit: VisitStanding, one: BegunStep): number | undefined {
  const until = untilOf(visit, one);
  return [...visit.baths, ...visit.rinses, ...visit.spots].findLast(
    ({ step, ph, when }) =>
      step === one.started.step &&
      ph !== undefined &&
      when >= one.started.when &&
      (until === undefined || when < until),
  )?.ph;
}

const waterLPerKg = (step: PlanStep, dryMassKg: number): number => {
  const water = step.amounts.find(({ agent, unit }) => unit === 'L' && agent.startsWith('water'));
  return (water?.least ?? 0) / dryMassKg;
};

function ofStep(visit: VisitStanding, step: PlanStep, dryMassKg: number, begun: BegunStep): readonly Timed[] {
  const { started, done } = begun;
  const where = step.stain ?? null;
  const ph = phOf(visit, begun);
  const agents = step.agents.filter((agent) => agent !== 'water');
  const laid: Timed = {
    ...{ kind: 'laid', where, agents, when: started.when },
    ...(ph === undefined ? {} : { ph }),
  };
  if (done === null) return [laid];
  const { when } = done;
  return [
    laid,
    ...(step.kind === 'rinse'
      ? [{ kind: 'rinsed', where, freshLPerKg: waterLPerKg(step, dryMassKg), when } as const]
      : []),
    ...(step.kind === 'extract' ? [{ kind: 'extracted', when } as const] : []),
  ];
}

/**
 * Everything of this visit that left something in the rug or took it out, oldest first. Each step is read by
 * the plan it was begun under: a plan made since takes nothing out of the rug.
 *
 * @source none: reads the record
 */
export function workEventsOf(standing: RugStanding): readonly WorkEvent[] {
  const visit = latestVisit(standing);
  if (visit === null) return [];
  const events: readonly Timed[] = [
    ...visit.begun.flatMap((begun) => {
      const plan = planOnRecord(begun.plan);
      const step = plan?.steps.find((one) => stepId(one) === begun.started.step);
      return step === undefined || plan === null ? [] : ofStep(visit, step, plan.basis.dryMassKg, begun);
    }),
    // What was laid in a step of the plan stands with the step, from its start.
    ...visit.spots
      .filter(({ step }) => !visit.begun.some(({ started }) => started.step === step))
      .map(
        ({ mark, agents, ph, when }): Timed => ({
          ...{ kind: 'laid', where: mark, agents, when },
          ...(ph === undefined ? {} : { ph }),
        }),
      ),
    ...visit.rinses.flatMap((reading): readonly Timed[] => {
      const where = reading.mark ?? null;
      const read = {
        kind: 'rinse read',
        where,
        isAtSupply: isAtSupply(reading),
        when: reading.when,
      } as const;
      return where === null ? [read] : [{ kind: 'rinsed', where, when: reading.when }, read];
    }),
    ...visit.airings.flatMap(({ mark, smell, when }): readonly Timed[] =>
      smell === 'none' ? [{ kind: 'aired', where: mark ?? null, when }] : [],
    ),
  ];
  return [...events].sort((a, b) => (a.when < b.when ? -1 : a.when > b.when ? 1 : 0));
}

/**
 * What is still in the rug by the record.
 *
 * @source common-practice, through residuesOf
 */
export const residuesIn = (standing: RugStanding): readonly Residue[] => residuesOf(workEventsOf(standing));
