import { clientStanding } from '../dossier/clientFacts.ts';
import { type Entry, streamKind } from '../dossier/entry.ts';
import { evolve, standingOf } from '../dossier/evolve.ts';
import type { RugEntry } from '../dossier/facts/index.ts';
import { roomRow } from '../dossier/roomRow.ts';
import { roomStandingOf } from '../dossier/roomStanding.ts';
import { rugRow } from '../dossier/rugRow.ts';
import { searchWords } from '../dossier/searchWords.ts';
import type { RugStanding } from '../dossier/standing.ts';
import type { ListRow, ListRowOf } from '../ports/ledger.ts';

type FoldOf = (stream: string, entries: readonly Entry[]) => RugStanding;

/** The row a list keeps for a stream; rugs and clients have one. Pure, so that rows rebuilt equal rows kept. */
export const listRowOf: ListRowOf = (stream, entries) =>
  rowWith((_stream, all) => standingOf(all), stream, entries);

/** Streams whose standing is remembered: more than a workshop has in hand at once. */
const mostRemembered = 500;

/**
 * The same row by a fold that goes on from where it stood, so that an append need not fold the whole
 * dossier again. A withdrawal, or a stream that is not the one remembered, folds anew.
 */
export function rememberingListRowOf(): ListRowOf {
  const known = new Map<string, RugStanding>();
  const foldOf: FoldOf = (stream, entries) => {
    const before = known.get(stream);
    const later = before === undefined ? [] : (entries.slice(before.revision) as readonly RugEntry[]);
    const goesOn =
      before !== undefined &&
      entries[before.revision - 1]?.seal === before.seal &&
      later.every(({ fact }) => fact.type !== 'EntryWithdrawn');
    const standing = goesOn ? later.reduce(evolve, before) : standingOf(entries);
    known.delete(stream);
    known.set(stream, standing);
    const [oldest] = known.keys();
    if (known.size > mostRemembered && oldest !== undefined) known.delete(oldest);
    return standing;
  };
  return (stream, entries) => rowWith(foldOf, stream, entries);
}

function rowWith(foldOf: FoldOf, stream: string, entries: readonly Entry[]): ListRow | null {
  const kind = streamKind(stream);
  if (kind === 'rug') {
    const row = rugRow(foldOf(stream, entries));
    return row === null ? null : { stream, ...row, words: searchWords(...row.words) };
  }
  if (kind === 'room') {
    const body = roomRow(roomStandingOf(entries));
    return body === null ? null : { stream, ...noColumns, words: searchWords(body.name), body };
  }
  const standing = kind === 'client' ? clientStanding(entries) : null;
  if (standing?.kind !== 'known') return null;
  const { signatures: _signatures, kind: _kind, ...body } = standing;
  const words = searchWords(
    ...[body.name, body.phone, body.email, body.address].flatMap((text) => text ?? []),
  );
  return { stream, ...noColumns, client: stream.slice('client/'.length), words, body };
}

/** Columns that only rugs have. */
const noColumns = {
  ...{ tag: null, client: null, consignment: null, stage: null, place: null, dueAt: null },
  inHouse: false,
} as const;
