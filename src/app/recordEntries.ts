import type { RecordRequest } from '../contract/index.ts';
import type { Entry } from '../dossier/entry.ts';
import type { RugEntry, RugFact } from '../dossier/facts/index.ts';
import type { AppendProblem } from '../dossier/recordProblem.ts';
import { done, type Problem, type Result, refused } from '../units/index.ts';
import { askedBy } from './asked.ts';
import { commutes } from './commutes.ts';
import { decideDrafts, type FactProblem } from './decideDrafts.ts';
import type { Actor, House } from './house.ts';
import { oneAtATime } from './oneAtATime.ts';
import { roomLesson } from './roomLearning.ts';
import { stockMoves } from './shelf.ts';

/** A clash shows both versions: what was asked for is with the person, this is what others recorded. */
export type MovedOn = Problem<
  'stream-moved-on',
  {
    readonly stream: string;
    readonly expectedRevision: number;
    readonly actualRevision: number;
    readonly entries: readonly Entry[];
  }
>;

/** Records facts of a rug: judged against the newest standing, retried as long as they commute with others'. */
export async function recordEntries(
  house: House,
  actor: Actor,
  rug: string,
  request: RecordRequest,
): Promise<
  Result<readonly Entry[], FactProblem | MovedOn | Exclude<AppendProblem, { code: 'stream-moved-on' }>>
> {
  const receives = request.drafts.some(({ fact }) => fact.type === 'RugReceived');
  return receives
    ? oneAtATime(house, () => recordNow(house, actor, rug, request))
    : recordNow(house, actor, rug, request);
}

async function recordNow(
  house: House,
  actor: Actor,
  rug: string,
  { expectedRevision, drafts }: RecordRequest,
): ReturnType<typeof recordEntries> {
  const stream = `rug/${rug}`;
  for (;;) {
    const entries = (await house.ledger.read(stream)) as readonly RugEntry[];
    if (entries.length === 0) return refused('rug-unknown', { rug });
    const known = new Set(entries.map(({ id }) => id));
    const since = entries.filter(({ revision }) => revision > expectedRevision);
    const clash = drafts.find(({ id, fact }) => !known.has(id) && !commutes(fact as RugFact, since));
    if (clash !== undefined) {
      const actualRevision = entries.length;
      return refused('stream-moved-on', { stream, expectedRevision, actualRevision, entries: since });
    }
    const decided = await decideDrafts(house, stream, entries, drafts, await askedBy(house, actor));
    if (!decided.ok) return decided;
    const append = { stream, expectedRevision: entries.length, drafts: decided.value };
    const fresh = decided.value.filter(({ id }) => !known.has(id));
    const moves = await stockMoves(house, fresh, entries);
    const lesson = await roomLesson(house, fresh, entries);
    const appended = await house.ledger.append([append, ...moves, ...lesson]);
    // What went into other streams with them is not this rug's.
    if (appended.ok) return done(appended.value.filter((entry) => entry.stream === stream));
    const { problem } = appended;
    if (problem.code !== 'stream-moved-on') return { ok: false, problem };
  }
}
