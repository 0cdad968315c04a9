import { type AnyFact, type Entry, streamKind } from '../../src/dossier/entry.ts';
import { searchWords } from '../../src/dossier/searchWords.ts';
import type { ListRow } from '../../src/ports/ledger.ts';

/** A fact of the ledger's own tests: what the ledger carries it does not understand. */
export interface NoteFact extends AnyFact {
  readonly type: 'NoteAdded';
  readonly text: string;
  readonly tag?: string;
  readonly client?: string;
  readonly stage?: string;
  readonly place?: string;
  readonly inHouse?: boolean;
}

/** The row of a stream of notes: its words from all of them, its columns from the last that names them. */
export function rowOfNotes(stream: string, entries: readonly Entry[]): ListRow | null {
  if (streamKind(stream) === 'workshop') return null;
  const notes = entries.map(({ fact }) => fact).filter((fact): fact is NoteFact => fact.type === 'NoteAdded');
  const last = <Key extends keyof NoteFact>(key: Key) =>
    notes.findLast((note) => note[key] !== undefined)?.[key] ?? null;
  return {
    stream,
    tag: last('tag'),
    client: last('client'),
    consignment: null,
    stage: last('stage'),
    place: last('place'),
    dueAt: null,
    inHouse: last('inHouse') ?? false,
    words: searchWords(...notes.map(({ text }) => text)),
    body: { notes: notes.length, newest: notes.at(-1)?.text ?? null },
  };
}
