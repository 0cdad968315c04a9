import type { ListQuery, ListRow } from '../../ports/ledger.ts';
import { WordIndex } from './wordIndex.ts';

const columns = ['tag', 'client', 'consignment', 'stage', 'place'] as const;
type Column = (typeof columns)[number];

/** A row without what it shows: enough to decide whether a query means it. */
export interface PlacedRow extends Pick<ListRow, Column | 'stream' | 'inHouse'> {
  /** Position at which the stream began: the row's number, by which rows are listed, last first. */
  readonly began: number;
  /** One text, which takes less room than many. */
  readonly words: string;
}

/** So many rows are sorted rather than looking through all rows, in their order, for them. */
const few = 2000;

const none: ReadonlySet<number> = new Set();

/** The rows of one kind of stream, and the numbers of those with a word, a value of a column, or in the house. */
export class KindRows {
  readonly words = new WordIndex();
  readonly #rows = new Map<number, PlacedRow>();
  readonly #inOrder: number[] = [];
  readonly #having: Readonly<Record<Column, Map<string, Set<number>>>> = {
    tag: new Map(),
    client: new Map(),
    consignment: new Map(),
    stage: new Map(),
    place: new Map(),
  };
  readonly #inHouse = new Set<number>();

  add(row: PlacedRow): void {
    const { began } = row;
    this.#rows.set(began, row);
    const at = this.#firstNotBefore(began);
    if (this.#inOrder[at] !== began) this.#inOrder.splice(at, 0, began);
    this.words.add(row.words.split(' '), began);
    if (row.inHouse) this.#inHouse.add(began);
    for (const column of columns) {
      const value = row[column];
      if (value === null) continue;
      const rows = this.#having[column].get(value);
      if (rows === undefined) this.#having[column].set(value, new Set([began]));
      else rows.add(began);
    }
  }

  /** Takes a row out. Its number keeps its place in the order: it usually comes back changed. */
  remove(row: PlacedRow): void {
    const { began } = row;
    this.#rows.delete(began);
    this.words.remove(row.words.split(' '), began);
    this.#inHouse.delete(began);
    for (const column of columns) {
      const value = row[column];
      if (value !== null) this.#having[column].get(value)?.delete(began);
    }
  }

  get(began: number): PlacedRow | undefined {
    return this.#rows.get(began);
  }

  having(column: Column, value: string): ReadonlySet<number> {
    return this.#having[column].get(value) ?? none;
  }

  /** Rows that stand in all these sets and answer the query's columns, the one begun last first. */
  match(query: ListQuery, sets: readonly ReadonlySet<number>[], before: number): readonly PlacedRow[] {
    const named = columns.flatMap((column) => {
      const value = query[column];
      return value === undefined ? [] : [this.having(column, value)];
    });
    const all = [...sets, ...named, ...(query.inHouse === true ? [this.#inHouse] : [])];
    all.sort((a, b) => a.size - b.size);
    const found: PlacedRow[] = [];
    for (const number of this.#newestFirst(before, all[0])) {
      if (found.length >= query.limit) break;
      const row = this.#rows.get(number);
      const fits = row !== undefined && (query.inHouse !== false || !row.inHouse);
      if (fits && all.every((set) => set.has(number))) found.push(row);
    }
    return found;
  }

  /** Numbers before one, from a set where it is small, else all. */
  *#newestFirst(before: number, numbers: ReadonlySet<number> | undefined): Generator<number> {
    if (numbers !== undefined && numbers.size <= few) {
      yield* [...numbers].filter((number) => number < before).sort((a, b) => b - a);
      return;
    }
    for (let at = this.#firstNotBefore(before) - 1; at >= 0; at -= 1) yield this.#inOrder[at] ?? 0;
  }

  #firstNotBefore(began: number): number {
    let low = 0;
    let high = this.#inOrder.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#inOrder[middle] ?? 0) < began) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
