import { streamKind } from '../../dossier/entry.ts';
import { searchWords } from '../../dossier/searchWords.ts';
import type { ListQuery, ListRow } from '../../ports/ledger.ts';
import { WordIndex } from './wordIndex.ts';

type Kind = ListQuery['kind'];

/** A row without what it shows: enough to decide whether a query means it. */
interface Placed extends Omit<ListRow, 'words' | 'body' | 'dueAt'> {
  /** Position at which the stream began: the row's number, by which rows are listed, last first. */
  readonly began: number;
  /** One text, which takes less room than many. */
  readonly words: string;
}

/** So many rows are sorted rather than looking through all rows, in their order, for them. */
const few = 2000;

/**
 * The lists' index, in memory: a rug is also found by its client's name, which must never stand readable in a
 * file, so names and rows have to meet here.
 */
export class RowIndex {
  readonly #placed = new Map<string, Placed>();
  readonly #byNumber = new Map<number, Placed>();
  /** In the order in which the streams began. */
  readonly #inOrder: Readonly<Record<Kind, Placed[]>> = { rug: [], client: [], room: [] };
  readonly #words: Readonly<Record<Kind, WordIndex>> = {
    rug: new WordIndex(),
    client: new WordIndex(),
    room: new WordIndex(),
  };
  readonly #rugsOf = new Map<string, Set<number>>();

  /** Puts a stream's row in, in place of an earlier one; null takes it out. */
  put(stream: string, began: number, row: ListRow | null): void {
    const kind = streamKind(stream);
    if (kind === 'workshop') return;
    const rows = this.#inOrder[kind];
    const known = this.#placed.get(stream);
    const placed = row === null ? undefined : place(row, began);
    rows.splice(
      firstNotBefore(rows, began),
      known === undefined ? 0 : 1,
      ...(placed === undefined ? [] : [placed]),
    );
    if (known !== undefined) this.#unlink(kind, known);
    if (placed !== undefined) this.#link(kind, placed);
  }

  #link(kind: Kind, row: Placed): void {
    this.#placed.set(row.stream, row);
    this.#byNumber.set(row.began, row);
    this.#words[kind].add(row.words.split(' '), row.began);
    if (kind !== 'rug' || row.client === null) return;
    const rugs = this.#rugsOf.get(row.client);
    if (rugs === undefined) this.#rugsOf.set(row.client, new Set([row.began]));
    else rugs.add(row.began);
  }

  #unlink(kind: Kind, row: Placed): void {
    this.#placed.delete(row.stream);
    this.#byNumber.delete(row.began);
    this.#words[kind].remove(row.words.split(' '), row.began);
    if (kind === 'rug' && row.client !== null) this.#rugsOf.get(row.client)?.delete(row.began);
  }

  /** To be called once all rows have been put in, so that the first query need not wait. */
  sortWords(): void {
    for (const words of Object.values(this.#words)) words.sort();
  }

  /** Streams that answer the query, the one begun last first. */
  match(query: ListQuery): readonly string[] {
    const last = query.after === undefined ? undefined : this.#placed.get(query.after);
    const before = last?.began ?? Number.POSITIVE_INFINITY;
    const sets = searchWords(query.find ?? '').map((word) => this.#rowsWith(query.kind, word));
    if (query.kind === 'rug' && query.client !== undefined)
      sets.push(this.#rugsOf.get(query.client) ?? new Set());
    sets.sort((a, b) => a.size - b.size);
    const streams: string[] = [];
    for (const row of this.#newestFirst(query.kind, before, sets[0])) {
      if (streams.length >= query.limit) break;
      if (fits(row, query) && sets.every((set) => set.has(row.began))) streams.push(row.stream);
    }
    return streams;
  }

  /** Rows that hold a word beginning so, and rugs whose client's row does. */
  #rowsWith(kind: Kind, beginning: string): ReadonlySet<number> {
    const own = this.#words[kind].rowsWith(beginning);
    if (kind !== 'rug') return own;
    const found = new Set(own);
    for (const client of this.#words.client.rowsWith(beginning)) {
      const id = this.#byNumber.get(client)?.stream.slice('client/'.length) ?? '';
      for (const rug of this.#rugsOf.get(id) ?? []) found.add(rug);
    }
    return found;
  }

  /** Rows begun before a position, from a few numbers where there are few, else from all rows. */
  *#newestFirst(kind: Kind, before: number, numbers: ReadonlySet<number> | undefined): Generator<Placed> {
    if (numbers !== undefined && numbers.size <= few) {
      for (const number of [...numbers].sort((a, b) => b - a)) {
        const row = this.#byNumber.get(number);
        if (row !== undefined && number < before) yield row;
      }
      return;
    }
    const rows = this.#inOrder[kind];
    for (let at = firstNotBefore(rows, before) - 1; at >= 0; at -= 1) {
      const row = rows[at];
      if (row !== undefined) yield row;
    }
  }
}

const place = (
  { stream, tag, client, consignment, stage, place, inHouse, words }: ListRow,
  began: number,
): Placed => ({
  ...{ stream, began, tag, client, consignment, stage, place, inHouse },
  words: words.join(' '),
});

const fits = (row: Placed, query: ListQuery): boolean =>
  (query.tag === undefined || row.tag === query.tag) &&
  (query.client === undefined || row.client === query.client) &&
  (query.consignment === undefined || row.consignment === query.consignment) &&
  (query.stage === undefined || row.stage === query.stage) &&
  (query.place === undefined || row.place === query.place) &&
  (query.inHouse === undefined || row.inHouse === query.inHouse);

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
