import { isAtSupply, type PlanStep, type Residue, residuesOf, type WorkEvent } from '../core/wash/index.ts';
import { agreedPlan, stepId } from './planFacts.ts';
import { latestVisit, type RugStanding, type StepStanding, type VisitStanding } from './standing.ts';

type Timed = WorkEvent & { readonly when: string };

/** The pH a step's liquid had: as measured last, else unknown. */
const phOf = ({ baths, rinses, spots }: VisitStanding, step: string): number | undefined =>
  [...baths, ...rinses, ...spots].findLast((reading) => reading.step === step && reading.ph !== undefined)
    ?.ph;

const waterLPerKg = (step: PlanStep, dryMassKg: number): number => {
  const water = step.amounts.find(({ agent, unit }) => unit === 'L' && agent.startsWith('water'));
  return (water?.least ?? 0) / dryMassKg;
};

function ofStep(
  visit: VisitStanding,
  step: PlanStep,
  dryMassKg: number,
  { step: id, started, done }: StepStanding,
): readonly Timed[] {
  if (started === null) return [];
  const where = step.stain ?? null;
  const ph = phOf(visit, id);
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
 * Everything of this visit that left something in the rug or took it out, oldest first.
 *
 * @source none: reads the record
 */
export function workEventsOf(standing: RugStanding): readonly WorkEvent[] {
  const visit = latestVisit(standing);
  const plan = agreedPlan(standing);
  if (visit === null) return [];
  const events: readonly Timed[] = [
    ...visit.steps.flatMap((known) => {
      const step = plan?.steps.find((one) => stepId(one) === known.step);
      return step === undefined || plan === null ? [] : ofStep(visit, step, plan.basis.dryMassKg, known);
    }),
    // What was laid in a step of the plan stands with the step, from its start.
    ...visit.spots
      .filter(({ step }) => step === undefined)
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
