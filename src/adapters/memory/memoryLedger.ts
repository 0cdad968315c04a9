import { type Entry, streamKind } from '../../dossier/entry.ts';
import type { AppendProblem, RecordUnavailable } from '../../dossier/recordProblem.ts';
import { canonicalJson, emptySeal } from '../../dossier/seal.ts';
import type {
  Ledger,
  ListQuery,
  ListRow,
  ListRowOf,
  StreamAppend,
  Verification,
} from '../../ports/ledger.ts';
import { done, type Result, refused } from '../../units/index.ts';
import { encryptFact, newClientKey, readable } from '../record/clientCipher.ts';
import { RowIndex } from '../record/rowIndex.ts';
import { SealCheck } from '../record/sealCheck.ts';
import { admit, type StoredEntry, type StreamHead } from '../record/storedEntry.ts';

const emptyHead: StreamHead = { revision: 0, seal: emptySeal };

/** The record in memory: for tests and the demonstration, gone when the process ends. */
export class MemoryLedger implements Ledger {
  readonly #listRowOf: ListRowOf;
  #all: readonly StoredEntry[] = [];
  #streams: ReadonlyMap<string, readonly StoredEntry[]> = new Map();
  /** Null once destroyed. */
  #keys: ReadonlyMap<string, Uint8Array | null> = new Map();
  /** Entries never change, so that each is made readable once. */
  readonly #readBefore = new WeakMap<StoredEntry, Entry>();
  readonly #rows = new Map<string, ListRow>();
  readonly #index = new RowIndex();
  readonly #listeners = new Set<(streams: readonly string[]) => void>();

  constructor(listRowOf: ListRowOf) {
    this.#listRowOf = listRowOf;
  }

  async append(batch: readonly StreamAppend[]): Promise<Result<readonly Entry[], AppendProblem>> {
    const all = [...this.#all];
    const streams = new Map(this.#streams);
    const keys = new Map(this.#keys);
    const answered: Entry[] = [];
    const moved = new Set<string>();
    for (const append of batch) {
      const { stream, expectedRevision } = append;
      const before = streams.get(stream) ?? [];
      const head = before.at(-1) ?? emptyHead;
      if (streamKind(stream) === 'client' && !keys.has(stream)) keys.set(stream, newClientKey());
      const key = keys.get(stream);
      if (key === null) return refused('client-erased', { stream });
      const admission = admit(
        append,
        { stream: head, record: all.at(-1) ?? { position: 0, link: emptySeal } },
        (id) => before.find((entry) => entry.id === id),
        (draft) => (key === undefined ? canonicalJson(draft.fact) : encryptFact(draft, key)),
      );
      if (admission === null) {
        return refused('stream-moved-on', { stream, expectedRevision, actualRevision: head.revision });
      }
      answered.push(...admission.answered.map((stored) => readable(stored, key)));
      if (admission.fresh.length === 0) continue;
      all.push(...admission.fresh);
      streams.set(stream, [...before, ...admission.fresh]);
      moved.add(stream);
    }
    this.#all = all;
    this.#streams = streams;
    this.#keys = keys;
    for (const stream of moved) this.#remakeRow(stream);
    if (moved.size > 0) for (const listener of this.#listeners) listener([...moved]);
    return done(answered);
  }

  async read(stream: string): Promise<readonly Entry[]> {
    return this.#entriesOf(stream);
  }

  #entriesOf(stream: string): readonly Entry[] {
    const key = this.#keys.get(stream);
    return (this.#streams.get(stream) ?? []).map((stored) => {
      // What is encrypted is read anew each time: its key may have been destroyed since.
      if (key !== undefined) return readable(stored, key);
      const known = this.#readBefore.get(stored) ?? readable(stored, key);
      this.#readBefore.set(stored, known);
      return known;
    });
  }

  async head(stream: string): Promise<{ readonly revision: number; readonly seal: string }> {
    const { revision, seal } = this.#streams.get(stream)?.at(-1) ?? emptyHead;
    return { revision, seal };
  }

  async streams(kind: 'rug' | 'client' | 'room' | 'workshop'): Promise<readonly string[]> {
    return [...this.#streams.keys()].filter((stream) => streamKind(stream) === kind);
  }

  async list(query: ListQuery): Promise<readonly ListRow[]> {
    return this.#index.match(query).flatMap((stream) => this.#rows.get(stream) ?? []);
  }

  #remakeRow(stream: string): boolean {
    const row = this.#listRowOf(stream, this.#entriesOf(stream));
    this.#index.put(stream, this.#streams.get(stream)?.[0]?.position ?? 0, row);
    if (row === null) this.#rows.delete(stream);
    // Through JSON, so that a row given out is the one a store on disk would give.
    else this.#rows.set(stream, JSON.parse(JSON.stringify(row)) as ListRow);
    return row !== null;
  }

  async eraseClient(stream: string): Promise<Result<null, RecordUnavailable>> {
    if (streamKind(stream) !== 'client') throw new Error(`${stream} is not a client's stream`);
    if (!this.#streams.has(stream)) return done(null);
    this.#keys = new Map(this.#keys).set(stream, null);
    this.#remakeRow(stream);
    return done(null);
  }

  async verify(stream?: string): Promise<Verification> {
    const check = new SealCheck();
    if (stream === undefined) for (const entry of this.#all) check.takeOfAll(entry);
    else for (const entry of this.#streams.get(stream) ?? []) check.takeOfStream(entry);
    const { streams, entries, broken } = check;
    return { streams, entries, broken, headSeal: this.#all.at(-1)?.link ?? emptySeal };
  }

  async rebuild(): Promise<{ readonly rows: number }> {
    const made = [...this.#streams.keys()]
      .filter((stream) => this.#remakeRow(stream))
      .filter((stream) => streamKind(stream) !== 'client');
    return { rows: made.length };
  }

  onAppend(listener: (streams: readonly string[]) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  async close(): Promise<void> {
    this.#listeners.clear();
  }
}
