import { isStainAnswer, laidIn, type PlanStep } from '../../core/wash/index.ts';
import type { RugFactType } from '../facts/index.ts';
import { flowNow, flowsOf } from '../flowsOf.ts';
import { mayWet, type WetBlocker, wetBlockers } from '../mayWet.ts';
import { agreedPlan, stainClassOf, stepId } from '../planFacts.ts';
import type { RugProblem } from '../rugProblem.ts';
import { rulebookOf } from '../rulebook.ts';
import { latestVisit, type RugStanding, type VisitStanding } from '../standing.ts';
import { isWet } from '../wetting.ts';
import { carriedResidues } from '../workEvents.ts';
import { residueProblem } from './residueProblem.ts';
import { type Asked, needsRole, noValues, type Rules } from './rule.ts';
import { usedProblem } from './usedProblem.ts';

/**
 * Once a rug is wet, getting the bath and the water out of it is never forbidden: chemistry left in the
 * pile and standing water harm it more than an unsettled paper does. Only a forbidden mixture is worse.
 */
const alwaysOnceWet: readonly PlanStep['kind'][] = ['rinse', 'acid rinse', 'extract'];

const dryWorkWaits: readonly WetBlocker['code'][] = ['rug-quarantined', 'no-plan-possible', 'plan-tightened'];

/** A dwell is not broken by the seconds a hand needs to reach the screen. */
const dwellSlackMs = 5000;

/**
 * People other than the one who starts it who stand ready for a step: each recorded it under their own name,
 * lately and since the step was last begun.
 */
export function handsFor(
  { hands, steps }: VisitStanding,
  step: string,
  starter: string,
  { now, settings }: Pick<Asked, 'now' | 'settings'>,
): readonly string[] {
  const begun = steps.find((one) => one.step === step)?.started?.when ?? '';
  const lately = Date.parse(now) - rulebookOf(settings).stops.handsWithinMinutes * 60_000;
  const ready = hands.filter(
    (hand) =>
      hand.step === step && hand.by !== starter && hand.when >= begun && Date.parse(hand.when) >= lately,
  );
  return [...new Set(ready.map(({ by }) => by))];
}

const planned = (standing: RugStanding, step: string | undefined): PlanStep | undefined =>
  agreedPlan(standing)?.steps.find((one) => stepId(one) === step);

function startProblem(standing: RugStanding, step: PlanStep, asked: Asked): RugProblem | null {
  const visit = latestVisit(standing);
  const isWetNow = visit !== null && isWet(visit);
  const mixed = residueProblem(
    standing,
    {
      what: step.kind,
      agents: step.agents.filter((agent) => agent !== 'water'),
      ...(step.targetPh === undefined ? {} : { ph: step.targetPh }),
      // Said when it was laid or hung to dry; what nobody said counts as heat.
      ...(step.kind === 'dry' ? { isHeatedDrying: visit?.dryingStarted?.heated !== false } : {}),
    },
    asked,
  );
  if (mixed !== null) return mixed;
  if (isWetNow && alwaysOnceWet.includes(step.kind)) return null;
  const ready = visit === null ? [] : handsFor(visit, stepId(step), asked.person.person, asked);
  if (ready.length < step.people - 1) return { code: 'too-few-people', facts: { needed: step.people } };
  if (!step.wet) {
    if (isWetNow) return null;
    // Dry work harms too where the rug has turned out weaker than the plan knew.
    const held = wetBlockers(standing, asked.settings, asked.now).filter(({ code }) =>
      dryWorkWaits.includes(code),
    );
    return held.length === 0 ? null : { code: 'wash-not-allowed', facts: { blockers: held } };
  }
  const allowed = mayWet(standing, asked.settings, asked.now);
  return allowed.ok ? null : allowed.problem;
}

const isStain = (standing: RugStanding, mark: string): boolean =>
  standing.marks.some((known) => known.mark === mark && stainClassOf(standing, known) !== undefined);

/** What lets work go on, or counts as proof that something left the rug, is told by whoever washes. */
const floorHands = (asked: Asked, type: RugFactType): RugProblem | null =>
  needsRole(asked, type, 'owner', 'washer');

/** What is done to a rug on the wash floor. */
export const floorRules: Rules = {
  StepStarted: (standing, { step, wets }, asked) => {
    const stranger = floorHands(asked, 'StepStarted');
    if (stranger !== null) return stranger;
    const meant = planned(standing, step);
    if (meant === undefined) return { code: 'step-not-planned', facts: { step } };
    if (meant.wet !== wets) return { code: 'step-wets', facts: { step } };
    const known = latestVisit(standing)?.steps.find((one) => one.step === step);
    if (known !== undefined && known.started !== null && known.done === null) {
      return { code: 'step-under-way', facts: { step } };
    }
    return startProblem(standing, meant, asked);
  },
  HandLent: (standing, { step }, asked) =>
    floorHands(asked, 'HandLent') ??
    (planned(standing, step) === undefined ? { code: 'step-not-planned', facts: { step } } : null),
  StepDone: (standing, { step, early, happenedAt, used = [] }, asked) => {
    const known = latestVisit(standing)?.steps.find((one) => one.step === step);
    if (known === undefined || known.started === null) return { code: 'step-not-started', facts: { step } };
    const dwellMs = (planned(standing, step)?.dwellMinutes ?? 0) * 60_000;
    const leftMs = Date.parse(known.started.when) + dwellMs - Date.parse(happenedAt ?? asked.now);
    if (leftMs > dwellSlackMs && early === undefined) {
      return { code: 'dwell-not-over', facts: { step, minutesLeft: Math.ceil(leftMs / 60_000) } };
    }
    return used.map((one) => usedProblem(one, asked)).find((problem) => problem !== null) ?? null;
  },
  BathMeasured: (_standing, fact) =>
    noValues(fact, 'step', 'clothOn') ? { code: 'nothing-measured', facts: {} } : null,
  RinseMeasured: (standing, fact, asked) => {
    const stranger = floorHands(asked, 'RinseMeasured');
    if (stranger !== null) return stranger;
    if (fact.mark !== undefined && !isStain(standing, fact.mark)) {
      return { code: 'stain-unknown', facts: { mark: fact.mark } };
    }
    return noValues(fact, 'step', 'clothOn', 'mark') ? { code: 'nothing-measured', facts: {} } : null;
  },
  LengthChecked: (_standing, fact) => (noValues(fact) ? { code: 'nothing-measured', facts: {} } : null),
  SpotTreated: (standing, { mark, step, agents }, asked) => {
    const stranger = floorHands(asked, 'SpotTreated');
    if (stranger !== null) return stranger;
    if (!isStain(standing, mark)) return { code: 'stain-unknown', facts: { mark } };
    if (agents.length === 0) return null;
    const meant = planned(standing, step);
    const known = latestVisit(standing)?.steps.find((one) => one.step === step);
    if (meant === undefined || meant.stain !== mark) {
      return { code: 'step-not-planned', facts: { step: step ?? agents.join(' and ') } };
    }
    if (known === undefined || known.started === null) {
      return { code: 'step-not-started', facts: { step: step ?? '' } };
    }
    if (agents.some((agent) => !meant.agents.includes(agent))) {
      return { code: 'agent-not-planned', facts: { agents, planned: meant.agents } };
    }
    const next = {
      what: meant.kind,
      agents,
      ...(meant.targetPh === undefined ? {} : { ph: meant.targetPh }),
    };
    return residueProblem(
      standing,
      next,
      asked,
      ({ where, agent }) => where === mark && agents.includes(agent),
    );
  },
  OldTreatmentTold: (standing, { mark }) =>
    mark === undefined || isStain(standing, mark) ? null : { code: 'stain-unknown', facts: { mark } },
  ResidueAnswered: (standing, { agent, mark }, asked) =>
    floorHands(asked, 'ResidueAnswered') ??
    (carriedResidues(standing, asked.settings).some(
      (one) => one.agent === agent && one.where === (mark ?? null),
    )
      ? null
      : { code: 'residue-not-carried', facts: { agent } }),
  SpotAired: (standing, { mark }, asked) =>
    floorHands(asked, 'SpotAired') ??
    (mark === undefined || isStain(standing, mark) ? null : { code: 'stain-unknown', facts: { mark } }),
  StainAnswered: (standing, { mark, question, answer }) => {
    if (!isStain(standing, mark)) return { code: 'stain-unknown', facts: { mark } };
    return isStainAnswer({ question, answer })
      ? null
      : { code: 'stain-answer-unknown', facts: { question, answer } };
  },
  FlowBegun: (standing, { flow, mark }, asked) => {
    const stranger = floorHands(asked, 'FlowBegun');
    if (stranger !== null) return stranger;
    const { flows } = rulebookOf(asked.settings);
    const known = flows.find(({ id }) => id === flow);
    if (known === undefined) {
      return { code: 'flow-unknown', facts: { flow, known: flows.map(({ id }) => id) } };
    }
    if (mark !== undefined && !standing.marks.some((one) => one.mark === mark)) {
      return { code: 'stain-unknown', facts: { mark } };
    }
    const isThere = flowsOf(standing, asked).some(
      (one) => one.flow.id === flow && (!known.perPlace || one.mark === mark),
    );
    return isThere ? { code: 'flow-there-already', facts: { flow: known.title } } : null;
  },
  FlowLogged: (standing, fact, asked) => {
    const stranger = floorHands(asked, 'FlowLogged');
    if (stranger !== null) return stranger;
    const { flow, step, mark } = fact;
    const isPlace = (id: string) =>
      isStain(standing, id) ||
      latestVisit(standing)?.flowsBegun.some((begun) => begun.flow === flow && begun.mark === id) === true;
    if (mark !== undefined && !isPlace(mark)) return { code: 'stain-unknown', facts: { mark } };
    const now = flowNow(standing, flow, mark, asked);
    if (now === null || now.id !== step) {
      return { code: 'flow-step-not-next', facts: { flow, step, next: now?.id ?? null } };
    }
    const visit = latestVisit(standing);
    if (now.wets === true && (visit === null || !isWet(visit))) {
      return { code: 'flow-before-wet-step', facts: { flow, step } };
    }
    const lays = laidIn(now, fact.choice);
    const mixed =
      lays.length === 0
        ? null
        : residueProblem(
            standing,
            {
              ...{ what: flow.replaceAll('-', ' '), agents: lays },
              ...(fact.ph === undefined ? {} : { ph: { least: fact.ph, most: fact.ph } }),
            },
            asked,
            ({ where, agent }) => where === (mark ?? null) && lays.includes(agent),
          );
    if (mixed !== null) return mixed;
    const isChosen = now.log !== 'choice' || now.choices?.some(({ id }) => id === fact.choice) === true;
    const isRead = now.log !== 'reading' || fact.conductivityUsPerCm !== undefined;
    const isAcid = now.log !== 'pH' || fact.ph !== undefined;
    const isSeen = now.log !== 'photograph' || fact.photos.length > 0;
    return isChosen && isRead && isAcid && isSeen ? null : { code: 'nothing-measured', facts: {} };
  },
  StopCleared: (standing, { stop }, asked) =>
    floorHands(asked, 'StopCleared') ??
    (latestVisit(standing)?.stops.some(({ called, cleared }) => called.stop === stop && cleared === null)
      ? null
      : { code: 'stop-unknown', facts: { stop } }),
};
