import { type DryingPosture, dryingPostures } from '../../core/wash/index.ts';
import { dryCriteria } from '../dryStandard.ts';
import type { postures } from '../facts/drying.ts';
import type { RugFactOf } from '../facts/index.ts';
import { mayWet, type WetBlocker, wetBlockers } from '../mayWet.ts';
import { agreedPlan, stepId } from '../planFacts.ts';
import type { RugProblem } from '../rugProblem.ts';
import { latestVisit, type RugStanding } from '../standing.ts';
import { isWet, wetNowSince } from '../wetting.ts';
import { dayProblem } from './closing.ts';
import { type Asked, needsRole, type Rules } from './rule.ts';

/**
 * Once a rug is wet, getting the bath and the water out of it is never forbidden: chemistry left in the
 * pile and standing water harm it more than an unsettled paper does.
 */
const alwaysOnceWet = ['rinse', 'acid rinse', 'extract'];

const dryWorkWaits: readonly WetBlocker['code'][] = ['rug-quarantined', 'no-plan-possible', 'plan-tightened'];

const noValues = (fact: Readonly<Record<string, unknown>>, ...besides: readonly string[]): boolean =>
  Object.entries(fact).every(
    ([key, value]) =>
      ['type', 'happenedAt', ...besides].includes(key) ||
      value === undefined ||
      (Array.isArray(value) && value.length === 0),
  );

/** What a step was mixed from must stand on the shelf, in date on the day it was used. */
function usedProblem(
  { agent, lot }: NonNullable<RugFactOf<'StepDone'>['used']>[number],
  { shelf, now }: Asked,
): RugProblem | null {
  const product = shelf?.agents.find((one) => one.agent === agent);
  if (product === undefined) return { code: 'agent-not-on-shelf', facts: { agent } };
  const { name, removed, lots } = product;
  if (removed !== null) return { code: 'agent-off-shelf', facts: { agent, name, why: removed.why } };
  const held = lots.find((one) => one.lot === lot);
  if (held === undefined) {
    return { code: 'lot-unknown', facts: { name, lot, known: lots.map((one) => one.lot) } };
  }
  return held.expires !== undefined && held.expires < now.slice(0, 10)
    ? { code: 'lot-expired', facts: { name, lot, expires: held.expires } }
    : null;
}

/** How careful a posture is, on the plan's own scale. */
const careOf: { readonly [P in (typeof postures)[number]]: DryingPosture } = {
  hung: 'hung',
  'flat on floor': 'flat',
  'flat on mesh': 'flat',
  'face down flat': 'flat, face down',
};

function postureProblem(standing: RugStanding, posture: keyof typeof careOf): RugProblem | null {
  const limit = agreedPlan(standing)?.bounds.dryingPosture;
  if (limit === undefined) return null;
  return dryingPostures.indexOf(careOf[posture]) >= dryingPostures.indexOf(limit)
    ? null
    : { code: 'posture-not-allowed', facts: { posture, limit } };
}

export const workRules: Rules = {
  StepStarted: (standing, { step, wets, helpers }, asked) => {
    const stranger = needsRole(asked, 'StepStarted', 'owner', 'washer');
    if (stranger !== null) return stranger;
    const visit = latestVisit(standing);
    const planned = agreedPlan(standing)?.steps.find((one) => stepId(one) === step);
    if (planned === undefined) return { code: 'step-not-planned', facts: { step } };
    if (planned.wet !== wets) return { code: 'step-wets', facts: { step } };
    const known = visit?.steps.find((one) => one.step === step);
    if (known !== undefined && known.started !== null && known.done === null) {
      return { code: 'step-under-way', facts: { step } };
    }
    if (planned.people > 1 && helpers === undefined) {
      return { code: 'too-few-people', facts: { needed: planned.people } };
    }
    if (!planned.wet) {
      if (visit !== null && isWet(visit)) return null;
      // Dry work harms too where the rug has turned out weaker than the plan knew.
      const held = wetBlockers(standing, asked.settings, asked.now).filter(({ code }) =>
        dryWorkWaits.includes(code),
      );
      return held.length === 0 ? null : { code: 'wash-not-allowed', facts: { blockers: held } };
    }
    if (visit !== null && isWet(visit) && alwaysOnceWet.includes(planned.kind)) return null;
    const allowed = mayWet(standing, asked.settings, asked.now);
    return allowed.ok ? null : allowed.problem;
  },
  StepDone: (standing, { step, used = [] }, asked) => {
    const started = latestVisit(standing)?.steps.some((one) => one.step === step && one.started !== null);
    if (started !== true) return { code: 'step-not-started', facts: { step } };
    return used.map((one) => usedProblem(one, asked)).find((problem) => problem !== null) ?? null;
  },
  BathMeasured: (_standing, fact) =>
    noValues(fact, 'step') ? { code: 'nothing-measured', facts: {} } : null,
  RinseMeasured: (_standing, fact) =>
    noValues(fact, 'step') ? { code: 'nothing-measured', facts: {} } : null,
  StopCleared: (standing, { stop }) =>
    latestVisit(standing)?.stops.some(({ called, cleared }) => called.stop === stop && cleared === null)
      ? null
      : { code: 'stop-unknown', facts: { stop } },
  DryingExpected: (standing, { why }, asked) => {
    if (latestVisit(standing)?.dryingForecast === null) return null;
    const answers = asked.person.roles.includes('owner') && why !== undefined;
    return answers ? null : { code: 'drying-hours-need-owner', facts: {} };
  },
  DryingForecast: (_standing, _fact, asked) => needsRole(asked, 'DryingForecast', 'owner', 'washer'),
  DryingStarted: (standing, { posture }) => postureProblem(standing, posture),
  RugTurned: (standing, { posture }) =>
    latestVisit(standing)?.dryingStarted === null
      ? { code: 'drying-not-started', facts: {} }
      : postureProblem(standing, posture),
  DryingReading: (standing, fact) => {
    if (latestVisit(standing)?.dryingStarted === null) return { code: 'drying-not-started', facts: {} };
    return noValues(fact, 'airRh', 'airC', 'at', 'meterDryReference')
      ? { code: 'nothing-measured', facts: {} }
      : null;
  },
  DryAccepted: (standing, { standard }, asked) => {
    const { settings } = asked;
    const stranger = needsRole(asked, 'DryAccepted', 'owner', 'washer');
    if (stranger !== null) return stranger;
    const visit = latestVisit(standing);
    if (visit === null || visit.dryingStarted === null) return { code: 'drying-not-started', facts: {} };
    if (standard !== 'full' && standard !== settings.dryStandard) {
      return { code: 'dry-standard-not-chosen', facts: { standard, workshops: settings.dryStandard } };
    }
    const wettedAgainAt = visit.wettedAgainAt ?? '';
    const isOverridden = visit.overrides.some(
      ({ rule, when }) => rule === 'dry standard' && when >= wettedAgainAt,
    );
    if (isOverridden) return null;
    const unmet = dryCriteria(standing, visit, standard).filter(({ met }) => !met);
    return unmet.length === 0 ? null : { code: 'dry-standard-unmet', facts: { standard, unmet } };
  },
  QuarantineReleased: (standing, _fact, asked) =>
    standing.quarantine === null
      ? { code: 'not-quarantined', facts: {} }
      : needsRole(asked, 'QuarantineReleased', 'owner'),
  CameBack: ({ out }) => (out === null ? { code: 'not-out', facts: {} } : null),
  SentOut: (standing, { backBy, happenedAt }, { now }) => {
    const visit = latestVisit(standing);
    const since = visit === null ? null : wetNowSince(visit);
    if (visit !== null && since !== null && isWet(visit)) return { code: 'wet-rug-stays', facts: { since } };
    return backBy === undefined
      ? null
      : dayProblem('back by', backBy, (happenedAt ?? now).slice(0, 10), null);
  },
};
