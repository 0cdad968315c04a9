import { streamKind } from '../../dossier/entry.ts';
import { searchWords } from '../../dossier/searchWords.ts';
import type { ListQuery, ListRow } from '../../ports/ledger.ts';

type Kind = ListQuery['kind'];

/** A row without what it shows: enough to decide whether a query means it. */
interface Placed extends Omit<ListRow, 'words' | 'body' | 'dueAt'> {
  /** Position at which the stream began; rows are listed by it, last first. */
  readonly began: number;
  /** The words, each with a space before it, so that the beginning of one is found by one scan. */
  readonly words: string;
}

/** The beginning of a word that must occur, in the row or with one of these clients. */
interface Wanted {
  readonly beginning: string;
  readonly clients: ReadonlySet<string>;
}

const nobody: ReadonlySet<string> = new Set();

/**
 * The lists' index, in memory: a rug is also found by its client's name, which must never stand readable in a
 * file, so names and rows have to meet here. One scan of 100 000 rows takes a few milliseconds.
 */
export class RowIndex {
  readonly #placed = new Map<string, Placed>();
  /** In the order in which the streams began. */
  readonly #inOrder: Readonly<Record<Kind, Placed[]>> = { rug: [], client: [], room: [] };

  /** Puts a stream's row in, in place of an earlier one; null takes it out. */
  put(stream: string, began: number, row: ListRow | null): void {
    const kind = streamKind(stream);
    if (kind === 'workshop') return;
    const placed = row === null ? undefined : place(row, began);
    const rows = this.#inOrder[kind];
    const known = this.#placed.has(stream) ? 1 : 0;
    rows.splice(firstNotBefore(rows, began), known, ...(placed === undefined ? [] : [placed]));
    if (placed === undefined) this.#placed.delete(stream);
    else this.#placed.set(stream, placed);
  }

  /** Streams that answer the query, the one begun last first. */
  match(query: ListQuery): readonly string[] {
    const rows = this.#inOrder[query.kind];
    const wanted = searchWords(query.find ?? '').map((word) => this.#wanted(query.kind, ` ${word}`));
    const last = query.after === undefined ? undefined : this.#placed.get(query.after);
    const streams: string[] = [];
    let at = last === undefined ? rows.length : firstNotBefore(rows, last.began);
    while (at > 0 && streams.length < query.limit) {
      at -= 1;
      const row = rows[at];
      if (row !== undefined && fits(row, query, wanted)) streams.push(row.stream);
    }
    return streams;
  }

  #wanted(kind: Kind, beginning: string): Wanted {
    if (kind !== 'rug') return { beginning, clients: nobody };
    const named = this.#inOrder.client.filter(({ words }) => words.includes(beginning));
    return { beginning, clients: new Set(named.map(({ stream }) => stream.slice('client/'.length))) };
  }
}

const place = (
  { stream, tag, client, consignment, stage, place, inHouse, words }: ListRow,
  began: number,
): Placed => ({
  ...{ stream, began, tag, client, consignment, stage, place, inHouse },
  words: words.map((word) => ` ${word}`).join(''),
});

const fits = (row: Placed, query: ListQuery, wanted: readonly Wanted[]): boolean =>
  (query.tag === undefined || row.tag === query.tag) &&
  (query.client === undefined || row.client === query.client) &&
  (query.consignment === undefined || row.consignment === query.consignment) &&
  (query.stage === undefined || row.stage === query.stage) &&
  (query.place === undefined || row.place === query.place) &&
  (query.inHouse === undefined || row.inHouse === query.inHouse) &&
  wanted.every(
    ({ beginning, clients }) =>
      row.words.includes(beginning) || (clients.size > 0 && row.client !== null && clients.has(row.client)),
  );

function firstNotBefore(rows: readonly Placed[], began: number): number {
  let low = 0;
  let high = rows.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rows[middle]?.began ?? 0) < began) low = middle + 1;
    else high = middle;
  }
  return low;
}
