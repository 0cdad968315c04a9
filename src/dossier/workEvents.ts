import {
  isAtSupply,
  laidIn,
  type PlanStep,
  type Residue,
  type RinseLimits,
  residuesOf,
  shippedRulebook,
  type WorkEvent,
} from '../core/wash/index.ts';
import { planOnRecord, stepId } from './planFacts.ts';
import { rulebookOf } from './rulebook.ts';
import { type BegunStep, latestVisit, type RugStanding, type VisitStanding } from './standing.ts';
import type { WorkshopSettings } from './workshopFacts.ts';

type Timed = WorkEvent & { readonly when: string };

/** When the same step was begun once more, or never. */
const untilOf = ({ begun }: VisitStanding, { started }: BegunStep): string | undefined =>
  begun.find((one) => one.started.step === started.step && one.started.when > started.when)?.started.when;

/**
 * The pH the liquid of one beginning had: as measured last before the step was begun again, else unknown. What
 * rinses it out is another liquid, nearer to the supply: its reading would make the first look harmless.
 */
function phOf(visit: VisitStanding, one: BegunStep): number | undefined {
  const until = untilOf(visit, one);
  return [...visit.baths, ...visit.spots]
    .filter(
      ({ step, ph, when }) =>
        step === one.started.step &&
        ph !== undefined &&
        when >= one.started.when &&
        (until === undefined || when < until),
    )
    .sort((a, b) => (a.when < b.when ? -1 : 1))
    .at(-1)?.ph;
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

const byTime = (a: Timed, b: Timed): number => (a.when < b.when ? -1 : a.when > b.when ? 1 : 0);

/** Everything of one visit, oldest first. Each step is read by the plan it was begun under. */
function ofVisit(visit: VisitStanding, limits: RinseLimits): readonly Timed[] {
  const events: readonly Timed[] = [
    // What others laid was there when the rug came in, whenever somebody thinks of telling it.
    ...visit.oldTreatments.map(
      ({ agents, mark }): Timed => ({
        ...{ kind: 'laid', where: mark ?? null, agents, when: visit.received.when, byOthers: true },
      }),
    ),
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
    ...visit.flowLog.flatMap(({ flow, step, choice, mark, ph, when }): readonly Timed[] => {
      const { steps = [] } = shippedRulebook.flows.find(({ id }) => id === flow) ?? {};
      const agents = laidIn(
        steps.find(({ id }) => id === step),
        choice,
      );
      if (agents.length === 0) return [];
      return [{ kind: 'laid', where: mark ?? null, agents, when, ...(ph === undefined ? {} : { ph }) }];
    }),
    ...visit.rinses.flatMap((reading): readonly Timed[] => {
      const where = reading.mark ?? null;
      const read = {
        kind: 'rinse read',
        where,
        isAtSupply: isAtSupply(reading, limits),
        when: reading.when,
      } as const;
      return where === null ? [read] : [{ kind: 'rinsed', where, when: reading.when }, read];
    }),
    ...visit.airings.flatMap(({ mark, smell, when }): readonly Timed[] =>
      smell === 'none' ? [{ kind: 'aired', where: mark ?? null, when }] : [],
    ),
    ...visit.residueAnswers.map(
      ({ agent, mark, when }): Timed => ({
        ...{ kind: 'answered', where: mark ?? null, agent, when },
        laidBefore: visit.received.when,
      }),
    ),
  ];
  return [...events].sort(byTime);
}

/**
 * Everything that left something in the rug or took it out, visit by visit, oldest first. Home and back again
 * takes nothing out of it, nor does a plan made since.
 *
 * @source none: reads the record
 */
export const workEventsOf = (
  { visits }: RugStanding,
  settings: Pick<WorkshopSettings, 'ruleChanges'>,
): readonly WorkEvent[] => {
  const { residues } = rulebookOf(settings);
  return visits.flatMap((visit) => ofVisit(visit, residues));
};

/**
 * What is still in the rug by the record.
 *
 * @source common-practice, through residuesOf
 */
export const residuesIn = (
  standing: RugStanding,
  settings: Pick<WorkshopSettings, 'ruleChanges'>,
): readonly Residue[] => residuesOf(workEventsOf(standing, settings), rulebookOf(settings).residues);

/**
 * Whether a residue was in the rug before this visit began.
 *
 * @source none: rule of this project
 */
export const isCarried = (standing: RugStanding, { when, byOthers }: Residue): boolean =>
  byOthers === true || (when ?? '') < (latestVisit(standing)?.received.when ?? '');

/**
 * What was in the rug when it came in this time, from an earlier visit or from others, and still is. Only of
 * this may a person answer without a reading: what this visit laid is rinsed and read.
 *
 * @source none: rule of this project
 */
export const carriedResidues = (
  standing: RugStanding,
  settings: Pick<WorkshopSettings, 'ruleChanges'>,
): readonly Residue[] => residuesIn(standing, settings).filter((residue) => isCarried(standing, residue));
