import { done, type Result, refused } from '../units/index.ts';
import type { Entry } from './entry.ts';
import { standingOf, withdrawnIds } from './evolve.ts';
import type { RugEntry, RugFact, RugFactOf, RugFactType } from './facts/index.ts';
import type { RugProblem } from './rugProblem.ts';
import { agreementRules } from './rule/agreement.ts';
import { closingRules } from './rule/closing.ts';
import { colourRules } from './rule/colour.ts';
import { floorRules } from './rule/floor.ts';
import { intakeRules } from './rule/intake.ts';
import { knotRules } from './rule/knots.ts';
import type { Asked, Rules } from './rule/rule.ts';
import { workRules } from './rule/work.ts';
import { presentVisit, type RugStanding } from './standing.ts';

const rules: Rules = {
  ...intakeRules,
  ...colourRules,
  ...knotRules,
  ...agreementRules,
  ...floorRules,
  ...workRules,
  ...closingRules,
};

/** Facts that may be recorded when the rug is not in the workshop. */
const anyTime: readonly RugFactType[] = [
  'DossierOpened',
  'RugReceived',
  'NoteAdded',
  'EntryWithdrawn',
  'IncidentReported',
  'PaymentTaken',
  'PhotographTaken',
  'Quarantined',
  'IncidentTold',
];

/** What is no longer done once the work was declined: the rug only waits to be handed back. */
const work: readonly RugFactType[] = [
  'DyeTestStarted',
  'DyeTested',
  'BathPlanned',
  'PlanAgreed',
  'PriceQuoted',
  'ConsentGiven',
  'RugDusted',
  'StepStarted',
  'SpotTreated',
  'FlowBegun',
  'FlowLogged',
  'DryingStarted',
  'FinishingDone',
  'VisitDeclined',
];

const isDeclined = (standing: RugStanding): boolean => (presentVisit(standing)?.declined ?? null) !== null;

/** A clock a little ahead of the server's is no lie. */
const clockSlackMs = 5 * 60_000;

function timeProblem(standing: RugStanding, fact: RugFact, now: string): RugProblem | null {
  const { happenedAt } = fact;
  if (happenedAt === undefined) return null;
  if (Date.parse(happenedAt) > Date.parse(now) + clockSlackMs) {
    return { code: 'in-the-future', facts: { happenedAt, now } };
  }
  const receivedAt = presentVisit(standing)?.received.when;
  if (receivedAt !== undefined && Date.parse(happenedAt) < Date.parse(receivedAt)) {
    return { code: 'before-receipt', facts: { happenedAt, receivedAt } };
  }
  return null;
}

function placeProblem(standing: RugStanding, fact: RugFact): RugProblem | null {
  if (fact.type === 'DossierOpened') return null;
  if (standing.opened === null) return { code: 'dossier-not-open', facts: {} };
  if (!anyTime.includes(fact.type) && presentVisit(standing) === null) {
    return { code: 'no-visit', facts: { type: fact.type } };
  }
  if (work.includes(fact.type) && isDeclined(standing)) {
    return { code: 'work-declined', facts: { type: fact.type } };
  }
  return null;
}

/**
 * Whether a fact may be recorded. The wish is the fact somebody asks to record; what is allowed is
 * recorded as it was asked.
 *
 * @param standing - the rug's standing before the fact
 * @param fact - the fact asked for, of a valid shape
 * @param asked - who asks, when, and the workshop's settings
 * @returns the fact to append
 * @refuses see RugProblem - each with the facts its words need
 * @source none: rules of this project and of data/wash
 */
export function decide(standing: RugStanding, fact: RugFact, asked: Asked): Result<RugFact, RugProblem> {
  const rule = rules[fact.type] as
    | ((standing: RugStanding, fact: RugFact, asked: Asked) => RugProblem | null)
    | undefined;
  const problem =
    placeProblem(standing, fact) ??
    timeProblem(standing, fact, asked.now) ??
    rule?.(standing, fact, asked) ??
    null;
  return problem === null ? done(fact) : { ok: false, problem };
}

/** Facts that later ones stand on so firmly that taking them away would leave no dossier. */
const neverWithdrawn: readonly RugFactType[] = ['DossierOpened', 'RugReceived', 'EntryWithdrawn'];

/**
 * Whether an entry may be taken out of account: by the one who wrote it or by the owner, with a reason.
 *
 * @param entries - the rug's stream, oldest first
 * @param wish - the withdrawal asked for
 * @param asked - who asks
 * @refuses entry-unknown, entry-withdrawn-already, entry-not-withdrawable, role-missing
 * @source none: rule of this project
 */
export function mayWithdraw(
  entries: readonly Entry[],
  wish: RugFactOf<'EntryWithdrawn'>,
  asked: Asked,
): Result<RugFact, RugProblem> {
  const target = (entries as readonly RugEntry[]).find(({ id }) => id === wish.entry);
  if (target === undefined) return refused('entry-unknown', { entry: wish.entry });
  if (withdrawnIds(entries).has(wish.entry)) return refused('entry-withdrawn-already', { entry: wish.entry });
  const { type } = target.fact;
  if (neverWithdrawn.includes(type)) return refused('entry-not-withdrawable', { entry: wish.entry, type });
  if (target.by !== asked.person.person && !asked.person.roles.includes('owner')) {
    return refused('role-missing', { needs: ['owner'] as const, type: 'EntryWithdrawn' });
  }
  // What was laid on the rug is known only by the plan it was laid under.
  const isBegun = standingOf(entries).visits.some(({ begun }) =>
    begun.some(({ plan }) => plan?.entry === wish.entry),
  );
  if (isBegun) return refused('entry-not-withdrawable', { entry: wish.entry, type });
  // The harm a reading showed is not undone by taking its stop away.
  if (target.fact.type === 'StopCalled' && target.fact.raisedBy !== undefined) {
    const { raisedBy, condition } = target.fact;
    const stands = entries.some(({ id }) => id === raisedBy) && !withdrawnIds(entries).has(raisedBy);
    if (stands) return refused('stop-stands-on-reading', { condition });
  }
  return done(wish);
}
