import roomSettings from '../../data/drying/room.json' with { type: 'json' };
import { stopWords, type WashPlan } from '../core/wash/index.ts';
import type { Deed, NextStep, Urgency } from './deed.ts';
import { dryCriteria } from './dryStandard.ts';
import { expectedDrying } from './expectedDrying.ts';
import { type WetBlocker, wetBlockers } from './mayWet.ts';
import { agreedPlan, isLookedOver, planOf, soundClaim, stepId } from './planFacts.ts';
import type { ShelfStanding } from './shelf.ts';
import { shelfGaps } from './shelfGaps.ts';
import { openWashSteps, washesIn } from './stage.ts';
import { presentVisit, type RugStanding, type VisitStanding } from './standing.ts';
import { clockStops } from './stopsRaised.ts';
import { hoursBetween, isWet, wetClock, wetSince } from './wetting.ts';
import type { WorkshopSettings } from './workshopFacts.ts';

export type { Deed, NextStep, Urgency } from './deed.ts';

/** A workshop setting: read every 4 h; turning every 4 to 6 h is common practice. */
const { readingEveryHours: hoursBetweenReadings, turnByHours: turnWithinHours } = roomSettings;

const later = (instant: string, minutes: number) =>
  new Date(Date.parse(instant) + minutes * 60_000).toISOString();

const step = (deed: Deed, urgency: Urgency, dueAt: string | null = null): NextStep => ({
  deed,
  urgency,
  dueAt,
});

/** What runs by the clock: stops, dwells, blots that lie. */
function runningSteps(
  standing: RugStanding,
  visit: VisitStanding,
  settings: WorkshopSettings,
  now: string,
): readonly NextStep[] {
  const planned = agreedPlan(standing)?.steps ?? [];
  const { units } = settings;
  const stops = visit.stops
    .filter(({ cleared }) => cleared === null)
    .map(({ called: { stop, condition, broke, when } }) =>
      step(
        { code: 'resolve-stop', stop, condition, units, ...(broke === undefined ? {} : { broke }) },
        'now',
        when,
      ),
    );
  // Nobody records these: they hold until their cause has gone.
  const byClock = clockStops(standing, settings, now).map(({ condition, since }) =>
    step({ code: 'resolve-stop', stop: condition, condition: stopWords(condition), units }, 'now', since),
  );
  const steps = visit.steps.flatMap(({ step: id, started, done }) => {
    if (started === null || done !== null) return [];
    const known = planned.find((one) => stepId(one) === id);
    const kind = known?.kind ?? 'wash';
    if (known?.dwellMinutes === undefined) {
      return [step({ code: 'finish-step', step: id, kind }, 'soon', started.when)];
    }
    const dueAt = later(started.when, known.dwellMinutes);
    return [step({ code: 'end-dwell', step: id, kind }, dueAt <= now ? 'now' : 'soon', dueAt)];
  });
  const blots = standing.lyingBlots.map((blot) => {
    const dueAt = later(blot.when, blot.minutes ?? 0);
    const colour = standing.colours.find((named) => named.colour === blot.colour)?.name ?? blot.colour;
    return step({ code: 'read-blot', colour, liquid: blot.liquid }, dueAt <= now ? 'now' : 'soon', dueAt);
  });
  return [...stops, ...byClock, ...steps, ...blots];
}

function dryingStep(
  standing: RugStanding,
  visit: VisitStanding,
  settings: WorkshopSettings,
  now: string,
): NextStep | null {
  const clock = wetClock(visit, now);
  if (clock === null) return null;
  if (visit.dryingStarted === null) {
    if (openWashSteps(standing).length > 0) return null;
    return step({ code: 'start-drying' }, 'now', clock.since);
  }
  if (dryCriteria(standing, visit, settings.dryStandard).every(({ met }) => met)) {
    return step({ code: 'accept-dry' }, 'now', visit.readings.at(-1)?.when ?? null);
  }
  const last = visit.readings.at(-1)?.when ?? visit.dryingStarted.when;
  const turned = visit.turnings.at(-1)?.when ?? visit.dryingStarted.when;
  const turnBy = later(turned, turnWithinHours * 60);
  if (turnBy <= now) return step({ code: 'turn-rug' }, 'now', turnBy);
  const dueAt = later(last, hoursBetweenReadings * 60);
  const urgent = clock.colour === 'red' || dueAt <= now;
  return step({ code: 'take-drying-reading', wetHours: clock.hours }, urgent ? 'now' : 'soon', dueAt);
}

/** What must be known before a plan: in the order a workshop asks. */
function knowledgeStep(
  standing: RugStanding,
  visit: VisitStanding,
  plan: WashPlan | null,
  urgency: Urgency,
): NextStep | null {
  // Size and condition belong to a visit: what happened to the rug since the last one is seen only now.
  if (!standing.measurements.some(({ when }) => when >= visit.received.when)) {
    return step({ code: 'measure' }, urgency);
  }
  if (!isLookedOver(standing)) {
    return step({ code: 'survey-condition' }, urgency);
  }
  const missing = (['construction', 'pile', 'warp', 'weft'] as const).filter(
    (about) => soundClaim(standing, about) === undefined,
  );
  if (missing.length > 0) return step({ code: 'identify', missing }, urgency);
  if (!washesIn(visit)) return null;
  if (!standing.weighings.some(({ when }) => when >= visit.received.when)) {
    return step({ code: 'weigh' }, urgency);
  }
  if (standing.colours.length === 0) return step({ code: 'name-colours' }, urgency);
  const tests = plan?.missingDyeTests.filter(({ blocksWetWork }) => blocksWetWork) ?? [];
  const [test] = tests;
  const refused = visit.testRefusals.some(({ colour }) => colour === test?.colour);
  if (test !== undefined && !refused) {
    return step({ code: 'test-dye', test, more: tests.length - 1 }, urgency);
  }
  if (expectedDrying(visit) === null) return step({ code: 'enter-drying-hours' }, urgency);
  return null;
}

function agreementStep(
  visit: VisitStanding,
  plan: WashPlan | null,
  blockers: readonly WetBlocker[],
  urgency: Urgency,
): NextStep | null {
  const blocked = (code: WetBlocker['code']) => blockers.find((blocker) => blocker.code === code);
  if (washesIn(visit)) {
    if (plan === null) return step({ code: 'resolve-plan' }, urgency);
    if (visit.plan === null) return step({ code: 'agree-plan', again: false }, urgency);
    if (blocked('plan-tightened') !== undefined) return step({ code: 'agree-plan', again: true }, 'now');
    const signOff = plan.signOffs.filter(({ given }) => !given).map(({ who }) => who);
    if (signOff.length > 0) return step({ code: 'sign-off', who: signOff }, urgency);
  }
  if (visit.quote === null) return step({ code: 'quote-price' }, urgency);
  switch (visit.consent.kind) {
    case 'none':
      return washesIn(visit) ? step({ code: 'ask-consent', again: false }, 'waiting') : null;
    case 'refused':
    case 'withdrawn':
      return step({ code: 'settle-refusal' }, 'waiting');
    case 'given':
      return (blocked('consent-for-another-plan') ?? blocked('price-above-consent'))
        ? step({ code: 'ask-consent', again: true }, 'waiting')
        : null;
  }
}

/** What the plan on record lacks on the shelf; at once where the rug is wet or is to be wetted next. */
function gapStep(
  standing: RugStanding,
  visit: VisitStanding,
  {
    shelf,
    now,
    next,
  }: { readonly shelf: ShelfStanding | null; readonly now: string; readonly next: Deed | undefined },
): readonly NextStep[] {
  const [gap, ...others] = shelf === null ? [] : shelfGaps(standing, shelf, now);
  if (gap === undefined) return [];
  const deed = { code: 'mend-shelf', gap, more: others.length, isWet: isWet(visit) } as const;
  return [step(deed, deed.isWet ? 'now' : next?.code === 'start-step' ? 'soon' : 'later')];
}

/** Days before the promised day from which everything moves up. */
const promiseNearDays = 2;

/**
 * All that could be done next for a rug, most pressing first; the first is the one shown.
 *
 * @param standing - the rug's standing
 * @param settings - the workshop's settings
 * @param now - instant
 * @param shelf - what stands on the shelf; null while it is not known
 * @source none: order of work of rules of the trade, common practice
 */
export function nextStepsOf(
  standing: RugStanding,
  settings: WorkshopSettings,
  now: string,
  shelf: ShelfStanding | null = null,
): readonly NextStep[] {
  const visit = presentVisit(standing);
  if (visit === null) return [step({ code: 'receive-again' }, 'later')];
  if (visit.declined !== null) return [step({ code: 'hand-back' }, 'waiting', null)];
  const steps = ownSteps(standing, visit, settings, now);
  const gap = gapStep(standing, visit, { shelf, now, next: steps[0]?.deed });
  if (gap.length === 0) return steps;
  if (isWet(visit)) return byUrgency([...gap, ...steps]);
  // What is lacking is fetched before the water, and hides nothing else that could be done meanwhile.
  return steps[0]?.deed.code === 'start-step' ? [...gap, ...steps] : [...steps, ...gap];
}

/** What the rug's own record asks for, most pressing first. */
function ownSteps(
  standing: RugStanding,
  visit: VisitStanding,
  settings: WorkshopSettings,
  now: string,
): readonly NextStep[] {
  const promised = visit.received.promisedFor;
  const near = promised !== undefined && hoursBetween(now, `${promised}T17:00:00Z`) <= promiseNearDays * 24;
  const urgency: Urgency = near ? 'now' : 'later';
  const dueAt = promised === undefined ? null : `${promised}T17:00:00.000Z`;
  const running = runningSteps(standing, visit, settings, now);
  const drying = dryingStep(standing, visit, settings, now);
  const timed = [...running, ...(drying === null ? [] : [drying])];
  if (timed.some((one) => one.urgency === 'now')) return byUrgency(timed);
  if (standing.quarantine !== null) {
    const release = step({ code: 'release-quarantine', why: standing.quarantine.why }, 'waiting');
    return [...byUrgency(timed), release];
  }
  if (standing.out !== null) {
    const back = standing.out.backBy;
    const due = back === undefined ? null : `${back}T17:00:00.000Z`;
    return [...byUrgency(timed), step({ code: 'fetch-back', from: standing.out.to }, 'waiting', due)];
  }
  const quiet = quietStep(standing, visit, settings, now, urgency);
  // A wet rug waits for hands, not for its promised day.
  const withDue = quiet === null ? [] : [{ ...quiet, dueAt: quiet.dueAt ?? (isWet(visit) ? null : dueAt) }];
  // A dwell or a drying rug that needs nobody yet does not hide what could be done meanwhile.
  return timed.length > 0 && (quiet === null || isWet(visit))
    ? byUrgency([...timed, ...withDue])
    : [...withDue, ...byUrgency(timed)];
}

/** What comes next when no clock is running out. */
function quietStep(
  standing: RugStanding,
  visit: VisitStanding,
  settings: WorkshopSettings,
  now: string,
  urgency: Urgency,
): NextStep | null {
  const wet = wetSince(visit) !== null;
  const washed = wet && visit.dryAccepted !== null;
  if (!washed) {
    const planned = washesIn(visit) ? planOf(standing, settings, now) : null;
    const plan = planned?.ok === true ? planned.value : null;
    const blockers = washesIn(visit) && visit.plan !== null ? wetBlockers(standing, settings, now) : [];
    const before =
      (wet ? null : knowledgeStep(standing, visit, plan, urgency)) ??
      agreementStep(visit, plan, blockers, urgency);
    if (before !== null) return before;
    if (blockers.some(({ code }) => code === 'drying-forecast-stale')) {
      return step({ code: 'forecast-drying' }, urgency);
    }
    const [open] = openWashSteps(standing);
    const running = visit.steps.some(({ started, done }) => started !== null && done === null);
    if (open !== undefined) {
      if (running) return null;
      return step({ code: 'start-step', step: stepId(open), kind: open.kind }, wet ? 'now' : urgency);
    }
    if (isWet(visit)) return null;
  }
  const works = visit.received.scope.filter((scope) => scope === 'repair' || scope === 'dusting only');
  const worked = visit.finishings.length > 0 || visit.dustings.length > 0;
  if (works.length > 0 && !worked) return step({ code: 'do-the-work', scope: works }, urgency);
  if (visit.inspected === null) return step({ code: 'inspect' }, urgency);
  return step({ code: 'hand-back' }, 'waiting');
}

const rank: { readonly [U in Urgency]: number } = { now: 0, soon: 1, later: 2, waiting: 3 };

/** A stop comes before everything: whatever else is due, the harm goes on until it is resolved. */
const isStop = ({ deed }: NextStep): number => (deed.code === 'resolve-stop' ? 0 : 1);

/** Sorts stops first, then by urgency, then by when it falls due. */
export const byUrgency = (steps: readonly NextStep[]): readonly NextStep[] =>
  [...steps].sort(
    (a, b) =>
      isStop(a) - isStop(b) ||
      rank[a.urgency] - rank[b.urgency] ||
      (a.dueAt ?? '9').localeCompare(b.dueAt ?? '9'),
  );

/** The one next step of a rug. */
export function nextStepOf(
  standing: RugStanding,
  settings: WorkshopSettings,
  now: string,
  shelf: ShelfStanding | null = null,
): NextStep {
  return nextStepsOf(standing, settings, now, shelf)[0] ?? step({ code: 'hand-back' }, 'waiting');
}
