import { streamKind } from '../../dossier/entry.ts';
import type { ListQuery, ListRow } from '../../ports/ledger.ts';
import { RowIndex } from '../record/rowIndex.ts';
import { type BegunStream, fromStoredRow, type Statements } from './statements.ts';

/** Answers lists: rows of rugs and rooms from the database, rows of clients, which are personal, from memory. */
export class SqliteLists {
  readonly #statements: Statements;
  readonly #clientRowOf: (stream: string) => ListRow | null;
  readonly #index = new RowIndex();
  readonly #clientRows = new Map<string, ListRow>();
  /** Position up to which the index has taken the record in. */
  #taken = 0;

  constructor(statements: Statements, clientRowOf: (stream: string) => ListRow | null) {
    this.#statements = statements;
    this.#clientRowOf = clientRowOf;
  }

  /** Takes all rows in; inside a transaction, so that they and the position belong together. */
  fill(): void {
    for (const { began, ...stored } of this.#statements.allRows.iterate()) {
      this.#index.put(stored.stream, began, fromStoredRow(stored));
    }
    for (const begun of this.#statements.allStreams.all()) {
      if (streamKind(begun.name) === 'client') this.take(begun);
    }
    this.#index.sortWords();
    this.#taken = this.#newest();
  }

  list(query: ListQuery): readonly ListRow[] {
    this.#catchUp();
    return this.#index.match(query).flatMap((stream) => {
      const row = this.#clientRows.get(stream) ?? this.#storedRow(stream);
      return row === null ? [] : [row];
    });
  }

  /** Takes a stream's row in as it is now. */
  take({ name, began }: BegunStream): void {
    if (streamKind(name) !== 'client') {
      this.#index.put(name, began, this.#storedRow(name));
      return;
    }
    const row = this.#clientRow(name);
    this.#index.put(name, began, row);
    if (row === null) this.#clientRows.delete(name);
    else this.#clientRows.set(name, row);
  }

  /** Takes in what was appended since, by this process or another one on the same folder. */
  #catchUp(): void {
    const newest = this.#newest();
    if (newest === this.#taken) return;
    for (const begun of this.#statements.movedSince.all(this.#taken)) this.take(begun);
    this.#taken = newest;
  }

  /** A client's row; none for a stream that was tampered with, which `verify` will report. */
  #clientRow(stream: string): ListRow | null {
    try {
      return this.#clientRowOf(stream);
    } catch {
      return null;
    }
  }

  #storedRow(stream: string): ListRow | null {
    const stored = this.#statements.row.get(stream);
    return stored === undefined ? null : fromStoredRow(stored);
  }

  #newest(): number {
    return this.#statements.lastEntry.get()?.position ?? 0;
  }
}
