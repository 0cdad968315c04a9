import { streamKind } from '../../dossier/entry.ts';
import { searchWords } from '../../dossier/searchWords.ts';
import type { ListQuery, ListRow } from '../../ports/ledger.ts';

/** A row without what it shows: enough to decide whether a query means it. */
type IndexedRow = Omit<ListRow, 'words' | 'body' | 'dueAt'>;

interface Placed {
  readonly row: IndexedRow;
  /** Position at which the stream began; rows are listed by it, last first. */
  readonly began: number;
  /** The words, each with a space before it, so that a prefix is found by one scan. */
  readonly words: string;
}

/**
 * The lists' index, in memory: a rug is also found by its client's name, which must never stand readable in a
 * file, so names and rows have to meet here. One scan of 100 000 rows takes a few milliseconds.
 */
export class RowIndex {
  readonly #placed = new Map<string, Placed>();
  /** In the order in which the streams began. */
  readonly #order: { readonly stream: string; readonly began: number }[] = [];

  /** Puts a stream's row in, in place of an earlier one; null takes it out. */
  put(stream: string, began: number, row: ListRow | null): void {
    if (!this.#placed.has(stream) && row !== null) this.#insert(stream, began);
    if (row === null) {
      if (this.#placed.delete(stream)) this.#order.splice(this.#firstNotBefore(began), 1);
      return;
    }
    const { words, body: _body, dueAt: _dueAt, ...columns } = row;
    this.#placed.set(stream, { row: columns, began, words: words.map((word) => ` ${word}`).join('') });
  }

  /** Streams that answer the query, the one begun last first. */
  match(query: ListQuery): readonly string[] {
    const prefixes = searchWords(query.find ?? '').map((word) => ` ${word}`);
    const last = query.after === undefined ? undefined : this.#placed.get(query.after);
    const end = last === undefined ? this.#order.length : this.#firstNotBefore(last.began);
    const streams: string[] = [];
    for (let at = end - 1; at >= 0 && streams.length < query.limit; at -= 1) {
      const stream = this.#order[at]?.stream ?? '';
      const placed = this.#placed.get(stream);
      if (placed !== undefined && this.#fits(placed, query, prefixes)) streams.push(stream);
    }
    return streams;
  }

  #fits({ row, words }: Placed, query: ListQuery, prefixes: readonly string[]): boolean {
    return (
      streamKind(row.stream) === query.kind &&
      (query.tag === undefined || row.tag === query.tag) &&
      (query.client === undefined || row.client === query.client) &&
      (query.consignment === undefined || row.consignment === query.consignment) &&
      (query.stage === undefined || row.stage === query.stage) &&
      (query.place === undefined || row.place === query.place) &&
      (query.inHouse === undefined || row.inHouse === query.inHouse) &&
      prefixes.every((prefix) => words.includes(prefix) || this.#clientWords(row).includes(prefix))
    );
  }

  #clientWords(row: IndexedRow): string {
    return row.client === null ? '' : (this.#placed.get(`client/${row.client}`)?.words ?? '');
  }

  #insert(stream: string, began: number): void {
    this.#order.splice(this.#firstNotBefore(began), 0, { stream, began });
  }

  #firstNotBefore(began: number): number {
    let low = 0;
    let high = this.#order.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#order[middle]?.began ?? 0) < began) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
