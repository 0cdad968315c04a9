import { type DryingPosture, dryingPostures } from '../../core/wash/index.ts';
import { dryingPlaceOf } from '../dryingPlace.ts';
import { dryCriteria } from '../dryStandard.ts';
import type { postures } from '../facts/drying.ts';
import { agreedPlan } from '../planFacts.ts';
import type { RugProblem } from '../rugProblem.ts';
import { latestVisit, type RugStanding } from '../standing.ts';
import { isWet, wetNowSince } from '../wetting.ts';
import { dayProblem } from './closing.ts';
import { solventProblem } from './residueProblem.ts';
import { needsRole, noValues, type Rules } from './rule.ts';

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
  DryingExpected: (standing, { why }, asked) => {
    if (latestVisit(standing)?.dryingForecast === null) return null;
    const answers = asked.person.roles.includes('owner') && why !== undefined;
    return answers ? null : { code: 'drying-hours-need-owner', facts: {} };
  },
  DryingForecast: (_standing, _fact, asked) => needsRole(asked, 'DryingForecast', 'owner', 'washer'),
  DryingStarted: (standing, { posture, heated }, asked) =>
    postureProblem(standing, posture) ?? solventProblem(standing, heated, asked),
  RugTurned: (standing, { posture, room }, asked) => {
    const begun = latestVisit(standing)?.dryingStarted ?? null;
    if (begun === null) return { code: 'drying-not-started', facts: {} };
    const isMoved = room !== undefined && room !== (dryingPlaceOf(standing)?.room ?? begun.room);
    // What was said of heat was said of the room it leaves.
    return postureProblem(standing, posture) ?? (isMoved ? solventProblem(standing, undefined, asked) : null);
  },
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
