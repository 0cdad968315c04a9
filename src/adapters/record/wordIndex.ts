/** More new words than this are sorted in with all others; fewer are put in their places one by one. */
const few = 100;

/** Which rows hold a word that begins like this; rows are named by numbers. */
export class WordIndex {
  readonly #rowsOf = new Map<string, Set<number>>();
  /** All words in order, except those that came since the last question. */
  readonly #sorted: string[] = [];
  #unsorted: string[] = [];

  add(words: Iterable<string>, row: number): void {
    for (const word of words) {
      const rows = this.#rowsOf.get(word);
      if (rows !== undefined) {
        rows.add(row);
        continue;
      }
      this.#rowsOf.set(word, new Set([row]));
      this.#unsorted.push(word);
    }
  }

  /** Takes a row out from under its words. The words stay: they will come again. */
  remove(words: Iterable<string>, row: number): void {
    for (const word of words) this.#rowsOf.get(word)?.delete(row);
  }

  rowsWith(beginning: string): ReadonlySet<number> {
    this.sort();
    const found = new Set<number>();
    for (let at = this.#firstNotBefore(beginning); this.#sorted[at]?.startsWith(beginning); at += 1) {
      for (const row of this.#rowsOf.get(this.#sorted[at] ?? '') ?? []) found.add(row);
    }
    return found;
  }

  /** Done before the first question anyway; done beforehand, that question need not wait for it. */
  sort(): void {
    const fresh = this.#unsorted;
    this.#unsorted = [];
    if (fresh.length > few) {
      for (const word of fresh) this.#sorted.push(word);
      this.#sorted.sort();
    } else {
      for (const word of fresh) this.#sorted.splice(this.#firstNotBefore(word), 0, word);
    }
  }

  #firstNotBefore(word: string): number {
    let low = 0;
    let high = this.#sorted.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#sorted[middle] ?? '') < word) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
