import { streamKind } from '../../dossier/entry.ts';
import { searchWords } from '../../dossier/searchWords.ts';
import type { ListQuery, ListRow } from '../../ports/ledger.ts';
import { KindRows, type PlacedRow } from './kindRows.ts';

type Kind = ListQuery['kind'];

/**
 * The lists' index, in memory: a rug is also found by its client's name, which must never stand readable in a
 * file, so names and rows have to meet here.
 */
export class RowIndex {
  readonly #placed = new Map<string, PlacedRow>();
  readonly #kinds: Readonly<Record<Kind, KindRows>> = {
    rug: new KindRows(),
    client: new KindRows(),
    room: new KindRows(),
  };

  /** Puts a stream's row in, in place of an earlier one; null takes it out. */
  put(stream: string, began: number, row: ListRow | null): void {
    const kind = streamKind(stream);
    if (kind === 'workshop') return;
    const known = this.#placed.get(stream);
    if (known !== undefined) this.#kinds[kind].remove(known);
    this.#placed.delete(stream);
    if (row === null) return;
    const { tag, client, consignment, stage, place, inHouse } = row;
    const words = row.words.join(' ');
    const placed = { stream, began, tag, client, consignment, stage, place, inHouse, words };
    this.#kinds[kind].add(placed);
    this.#placed.set(stream, placed);
  }

  /** To be called once all rows have been put in, so that the first query need not wait. */
  sortWords(): void {
    for (const { words } of Object.values(this.#kinds)) words.sort();
  }

  /** Streams that answer the query, the one begun last first. */
  match(query: ListQuery): readonly string[] {
    const last = query.after === undefined ? undefined : this.#placed.get(query.after);
    const sets = searchWords(query.find ?? '').map((word) => this.#rowsWith(query.kind, word));
    const rows = this.#kinds[query.kind].match(query, sets, last?.began ?? Number.POSITIVE_INFINITY);
    return rows.map(({ stream }) => stream);
  }

  /** Rows that hold a word beginning so, and rugs whose client's row does. */
  #rowsWith(kind: Kind, beginning: string): ReadonlySet<number> {
    const own = this.#kinds[kind].words.rowsWith(beginning);
    if (kind !== 'rug') return own;
    const { rug, client } = this.#kinds;
    const found = new Set(own);
    for (const number of client.words.rowsWith(beginning)) {
      const id = client.get(number)?.stream.slice('client/'.length) ?? '';
      for (const owned of rug.having('client', id)) found.add(owned);
    }
    return found;
  }
}
