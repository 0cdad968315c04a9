import type { EntryDraft } from '../dossier/entry.ts';
import type { RugEntry, RugFact } from '../dossier/facts/index.ts';
import type { RoomFact } from '../dossier/roomFacts.ts';
import { type PastRun, type RoomStanding, roomStandingOf } from '../dossier/roomStanding.ts';
import { type RunLearnt, releasedOf, runLearnt } from '../dossier/runLearnt.ts';
import { latestVisit } from '../dossier/standing.ts';
import type { StreamAppend } from '../ports/ledger.ts';
import type { House } from './house.ts';

const taughtParts = ['construction', 'g', 'resistance', 'criticalRegain'] as const;
const isSame = (taught: RunLearnt, known: PastRun): boolean =>
  taughtParts.every((part) => JSON.stringify(taught[part]) === JSON.stringify(known[part]));

/** What the room's record holds of this release, if it holds anything. */
const knownOf = ({ past }: RoomStanding, rug: string, visit: string | undefined): PastRun | null =>
  past.find((run) => run.rug === rug && run.visit === visit) ?? null;

/** What a withdrawal makes of a lesson that stands; one that an owner took out stays out. */
function corrected(known: PastRun | null, taught: RunLearnt | null, reason: string): RoomFact | null {
  if (known === null) return null;
  if (taught === null) return { type: 'EntryWithdrawn', entry: known.entry, reason };
  return isSame(taught, known) ? null : taught;
}

/**
 * What the stream of a drying room gets with a rug's new entries, all or nothing with them: what its release
 * taught, and what a withdrawal changes of that. Its id comes from the entry, so that what is sent again is
 * recorded once.
 */
export async function roomLesson(
  { ledger }: House,
  drafts: readonly EntryDraft<RugFact>[],
  entries: readonly RugEntry[],
): Promise<readonly StreamAppend[]> {
  const cause = drafts.findLast(({ fact }) => fact.type === 'DryAccepted' || fact.type === 'EntryWithdrawn');
  if (cause === undefined) return [];
  const fresh = drafts.map((draft, index) => ({ ...draft, revision: entries.length + index + 1, seal: '' }));
  const after = releasedOf([...entries, ...fresh]);
  const release = after ?? releasedOf(entries);
  if (release === null || release.room === null) return [];
  const rug = cause.stream.slice('rug/'.length);
  const stream = `room/${release.room}`;
  const standing = roomStandingOf(await ledger.read(stream));
  const taught = after === null ? null : runLearnt(after, rug, standing);
  const known = knownOf(standing, rug, latestVisit(release.standing)?.received.visit);
  const fact = cause.fact.type === 'EntryWithdrawn' ? corrected(known, taught, cause.fact.reason) : taught;
  if (fact === null) return [];
  const lesson = { ...cause, id: `${cause.id}-learnt`, stream, fact };
  return [{ stream, expectedRevision: standing.revision, drafts: [lesson] }];
}
