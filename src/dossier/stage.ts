import { agreedPlan, soundClaim, stepId } from './planFacts.ts';
import { latestVisit, type RugStanding, type VisitStanding } from './standing.ts';
import { wetSince } from './wetting.ts';

/** The stages of a visit in the trade's own order. */
export const stages = [
  'received',
  'identified',
  'tested',
  'agreed',
  'washed',
  'dried',
  'finished',
  'returned',
] as const;
export type Stage = (typeof stages)[number];

export interface StageStanding {
  readonly stage: Stage;
  readonly state: 'done' | 'now' | 'to come';
}

/** Whether a visit is for work that may wet the rug. */
export const washesIn = (visit: VisitStanding): boolean =>
  visit.received.scope.some((scope) => scope === 'wash' || scope === 'stain removal');

/** Steps of the agreed plan that come after the rug is on its way to drying. */
const afterWash = ['fringe', 'set pile and block', 'dry'];

/** Steps of the agreed plan not yet done, those of drying left out. */
export function openWashSteps(standing: RugStanding) {
  const visit = latestVisit(standing);
  const done = new Set(visit?.steps.flatMap(({ step, done }) => (done === null ? [] : [step])));
  return (agreedPlan(standing)?.steps ?? []).filter(
    (step) => !afterWash.includes(step.kind) && !done.has(stepId(step)),
  );
}

const isIdentified = (standing: RugStanding) =>
  (['construction', 'pile', 'warp', 'weft'] as const).every(
    (about) => soundClaim(standing, about) !== undefined,
  );

/** Every named colour has at least one reading wetter than a crock; what is missing in detail, the plan says. */
const isTested = (standing: RugStanding) =>
  standing.colours.length > 0 &&
  standing.colours.every(({ colour }) =>
    standing.dyeTests.some(
      (test) => test.colour === colour && test.liquid !== 'dry crock' && test.liquid !== 'damp crock',
    ),
  );

const doneOf = (standing: RugStanding, visit: VisitStanding): { readonly [S in Stage]: boolean } => ({
  received: standing.measurements.length > 0,
  identified: isIdentified(standing),
  tested: isTested(standing),
  // Work without water is agreed by its price; nobody asks a consent to a wash for it.
  agreed: visit.consent.kind === 'given' || (!washesIn(visit) && visit.quote !== null),
  washed:
    visit.dryingStarted !== null || (agreedPlan(standing) !== null && openWashSteps(standing).length === 0),
  dried:
    visit.dryAccepted !== null ||
    (visit.dryingStarted === null &&
      wetSince(visit) === null &&
      agreedPlan(standing) !== null &&
      openWashSteps(standing).length === 0),
  finished: visit.inspected !== null,
  returned: visit.end !== null,
});

/**
 * The stages of the latest visit, each done, present, or to come. Derived from what happened: nothing
 * is forced into an order, and stages a scope does not need are left out.
 *
 * @source none: rule of this project
 */
export function stagesOf(standing: RugStanding): readonly StageStanding[] {
  const visit = latestVisit(standing);
  if (visit === null) return [];
  const wet = washesIn(visit);
  const shown = stages.filter((stage) => wet || !['tested', 'washed', 'dried'].includes(stage));
  const isDone = doneOf(standing, visit);
  const present = shown.find((stage) => !isDone[stage]);
  return shown.map((stage) => ({
    stage,
    state: isDone[stage]
      ? 'done'
      : stage === present && visit.end === null && visit.declined === null
        ? 'now'
        : 'to come',
  }));
}

/** The present stage, or how the visit ended. */
export function stageOf(standing: RugStanding): Stage | 'declined' | null {
  const visit = latestVisit(standing);
  if (visit === null) return null;
  if (visit.declined !== null) return 'declined';
  if (visit.end !== null) return 'returned';
  return stagesOf(standing).find(({ state }) => state === 'now')?.stage ?? 'returned';
}
