import { clientStanding } from '../dossier/clientFacts.ts';
import { type Entry, streamKind } from '../dossier/entry.ts';
import { rugRow } from '../dossier/rugRow.ts';
import { searchWords } from '../dossier/searchWords.ts';
import type { ListRow } from '../ports/ledger.ts';

/** The row a list keeps for a stream; rugs and clients have one. Pure, so that rows rebuilt equal rows kept. */
export function listRowOf(stream: string, entries: readonly Entry[]): ListRow | null {
  const kind = streamKind(stream);
  if (kind === 'rug') {
    const row = rugRow(entries);
    return row === null ? null : { stream, ...row, words: searchWords(...row.words) };
  }
  const standing = kind === 'client' ? clientStanding(entries) : null;
  if (standing?.kind !== 'known') return null;
  const { signatures: _signatures, kind: _kind, ...body } = standing;
  const words = searchWords(
    ...[body.name, body.phone, body.email, body.address].flatMap((text) => text ?? []),
  );
  return {
    ...{ stream, tag: null, client: stream.slice('client/'.length), consignment: null, stage: null },
    ...{ place: null, dueAt: null, inHouse: false, words, body },
  };
}
