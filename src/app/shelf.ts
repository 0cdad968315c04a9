import type { ShelfAnswer, ShelfEntriesRequest } from '../contract/index.ts';
import type { Entry, EntryDraft } from '../dossier/entry.ts';
import type { RugEntry, RugFact } from '../dossier/facts/index.ts';
import type { AppendProblem } from '../dossier/recordProblem.ts';
import { type ShelfStanding, shelfStanding } from '../dossier/shelf.ts';
import { decideShelf, type ShelfProblem } from '../dossier/shelfDecide.ts';
import type { ShelfFact } from '../dossier/shelfFacts.ts';
import type { Ledger, StreamAppend } from '../ports/ledger.ts';
import { done, type Result } from '../units/index.ts';
import type { Actor, House } from './house.ts';

const stream = 'shelf';

/** The standing last folded: every fact asked for is judged against it, and most move nothing on the shelf. */
const lastFold = new WeakMap<Ledger, ShelfStanding>();

/** What stands on the shelf now. */
export async function readShelf({ ledger }: House): Promise<ShelfStanding> {
  const known = lastFold.get(ledger);
  if (known !== undefined && (await ledger.head(stream)).revision === known.revision) return known;
  const standing = shelfStanding(await ledger.read(stream));
  lastFold.set(ledger, standing);
  return standing;
}

/** Records facts of the shelf, judged again whenever somebody else was quicker. */
export async function recordShelf(
  house: House,
  actor: Actor,
  { drafts }: ShelfEntriesRequest,
): Promise<Result<ShelfAnswer, ShelfProblem | AppendProblem>> {
  const { ledger, clock } = house;
  for (;;) {
    const entries = await ledger.read(stream);
    const known = new Set(entries.map(({ id }) => id));
    const now = clock.now();
    const pending: Entry[] = [...entries];
    const ready: EntryDraft[] = [];
    for (const { id, fact } of drafts) {
      const entry = { id, stream, at: now, by: actor.person, version: 1, fact };
      ready.push(entry);
      if (known.has(id)) continue;
      const decided = decideShelf(shelfStanding(pending), fact as ShelfFact, { now, person: actor });
      if (!decided.ok) return decided;
      pending.push({ ...entry, revision: pending.length + 1, seal: '' });
    }
    const appended = await ledger.append([{ stream, expectedRevision: entries.length, drafts: ready }]);
    if (appended.ok) return done({ standing: shelfStanding(pending) });
    if (appended.problem.code !== 'stream-moved-on') return { ok: false, problem: appended.problem };
  }
}

/** What a recorded fact of a rug takes from the shelf or, when it is withdrawn, gives back. */
function movesOf(draft: EntryDraft<RugFact>, entries: readonly RugEntry[]): readonly ShelfFact[] {
  const { fact, id } = draft;
  const rug = draft.stream.slice('rug/'.length);
  if (fact.type === 'StepDone') {
    return (fact.used ?? []).map((one) => ({ type: 'StockDrawn', ...one, rug, step: fact.step, entry: id }));
  }
  if (fact.type !== 'EntryWithdrawn') return [];
  const taken = entries.find((entry) => entry.id === fact.entry)?.fact;
  return taken?.type === 'StepDone'
    ? (taken.used ?? []).map((one) => ({ type: 'StockReturned', ...one, entry: fact.entry }))
    : [];
}

/**
 * Appends to the shelf that go with a rug's new entries, all or nothing with them. Their ids come from the
 * entries, so that what is sent again is recorded once.
 */
export async function stockMoves(
  { ledger }: House,
  drafts: readonly EntryDraft<RugFact>[],
  entries: readonly RugEntry[],
): Promise<readonly StreamAppend[]> {
  const moves = drafts.flatMap((draft) =>
    movesOf(draft, entries).map((fact, index) => ({ ...draft, id: `${draft.id}-${index}`, stream, fact })),
  );
  if (moves.length === 0) return [];
  return [{ stream, expectedRevision: (await ledger.head(stream)).revision, drafts: moves }];
}
