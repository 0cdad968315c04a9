import type { Entry } from '../../dossier/entry.ts';
import type { StoredEntry, StreamHead } from '../record/storedEntry.ts';

/** Sixteen million characters of stored entries: a few hundred long dossiers. */
const mostCharacters = 16_000_000;

/** What stored entries weigh in the cache. */
export const charactersOf = (stored: readonly StoredEntry[]): number =>
  stored.reduce((sum, { body }) => sum + body.length, 0);

interface Kept {
  readonly entries: readonly Entry[];
  readonly characters: number;
  /** The list row last written for these entries, as JSON; undefined when that is not known. */
  readonly row: string | undefined;
}

/** Streams read of late, so that adding to a long dossier does not read all of it again. */
export class StreamCache {
  readonly #kept = new Map<string, Kept>();
  #characters = 0;

  /** The entries of a stream, if they are kept and end at exactly this head. */
  get(stream: string, head: StreamHead): readonly Entry[] | undefined {
    const kept = this.#kept.get(stream);
    const last = kept?.entries.at(-1);
    if (kept === undefined || last?.revision !== head.revision || last.seal !== head.seal) return undefined;
    // Moved to the end: what was used last is given up last.
    this.#kept.delete(stream);
    this.#kept.set(stream, kept);
    return kept.entries;
  }

  charactersOf(stream: string): number {
    return this.#kept.get(stream)?.characters ?? 0;
  }

  rowOf(stream: string): string | undefined {
    return this.#kept.get(stream)?.row;
  }

  put(stream: string, entries: readonly Entry[], characters: number, row?: string): void {
    this.remove(stream);
    this.#kept.set(stream, { entries, characters, row });
    this.#characters += characters;
    for (const oldest of this.#kept.keys()) {
      if (this.#characters <= mostCharacters) return;
      this.remove(oldest);
    }
  }

  remove(stream: string): void {
    this.#characters -= this.charactersOf(stream);
    this.#kept.delete(stream);
  }
}
