import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { Database, Transaction } from 'better-sqlite3';
import { type Entry, streamKind } from '../../dossier/entry.ts';
import type { AppendProblem, RecordUnavailable } from '../../dossier/recordProblem.ts';
import { canonicalJson, emptySeal } from '../../dossier/seal.ts';
import type {
  Ledger,
  ListQuery,
  ListRow,
  ListRowOf,
  StreamAppend,
  Told,
  Verification,
} from '../../ports/ledger.ts';
import { done, type Result, refused } from '../../units/index.ts';
import { unavailable } from '../disk/unavailable.ts';
import { encryptFact, readable } from '../record/clientCipher.ts';
import { SealCheck } from '../record/sealCheck.ts';
import { admit, type RecordHead, type StoredEntry, type StreamHead } from '../record/storedEntry.ts';
import { ClientKeys } from './clientKeys.ts';
import type { OpenDatabase } from './database.ts';
import { HeadFile } from './headFile.ts';
import { SqliteLists } from './sqliteLists.ts';
import { type BegunStream, prepareStatements, type Statements, toStoredRow } from './statements.ts';
import { charactersOf, StreamCache } from './streamCache.ts';

type Answer = Result<readonly Entry[], AppendProblem>;

interface Waiting {
  readonly batch: readonly StreamAppend[];
  readonly answer: (answer: Answer) => void;
  readonly fail: (error: unknown) => void;
}

interface Recorded {
  readonly entries: readonly Entry[];
  readonly moved: readonly string[];
  /** Where the record ends now; null when nothing was new. */
  readonly end: RecordHead | null;
}

/** What came of a waiting batch; its sender is told once it is durable. */
interface Settled {
  readonly moved: readonly string[];
  readonly end: RecordHead | null;
  readonly tell: () => void;
}

/** Thrown inside a transaction to undo it, caught where the transaction was begun. */
class Undo extends Error {
  readonly problem: AppendProblem;
  constructor(problem: AppendProblem) {
    super(problem.code);
    this.problem = problem;
  }
}

const emptyHead: StreamHead = { revision: 0, seal: emptySeal };
const emptyRecord: RecordHead = { position: 0, link: emptySeal };
/** Long work gives the others a turn after so many entries or streams. */
const turn = 1000;

export class SqliteLedger implements Ledger {
  readonly #database: Database;
  readonly #statements: Statements;
  readonly #recordOne: Transaction<(batch: readonly StreamAppend[]) => Recorded>;
  readonly #recordAll: Transaction<(waiting: readonly Waiting[]) => readonly Settled[]>;
  readonly #listRowOf: ListRowOf;
  readonly #headFile: HeadFile;
  readonly #cache = new StreamCache();
  readonly #keys: ClientKeys;
  readonly #lists: SqliteLists;
  readonly #listeners = new Set<(streams: readonly string[]) => void>();
  #waiting: Waiting[] = [];

  /** The ledger in an open database; `listRowOf` is pure and makes a stream's row from its entries. */
  constructor({ database, directory }: OpenDatabase, listRowOf: ListRowOf) {
    this.#database = database;
    this.#statements = prepareStatements(database);
    this.#recordOne = database.transaction((batch: readonly StreamAppend[]) => this.#record(batch));
    this.#recordAll = database.transaction((waiting: readonly Waiting[]) =>
      waiting.map((each) => this.#settle(each)),
    );
    this.#keys = new ClientKeys(this.#statements);
    this.#listRowOf = listRowOf;
    this.#headFile = new HeadFile(join(directory, 'wefthouse.head'), (position) => this.#linkAt(position));
    this.#lists = new SqliteLists(this.#statements, (stream) =>
      listRowOf(stream, this.#entriesOf(stream, this.#headOf(stream))),
    );
    database.transaction(() => this.#lists.fill())();
  }

  append(batch: readonly StreamAppend[]): Promise<Answer> {
    return new Promise((answer, fail) => {
      this.#waiting.push({ batch, answer, fail });
      // Whatever else is asked for in this turn of the event loop shares one commit.
      if (this.#waiting.length === 1) globalThis.setImmediate(() => this.#commitWaiting());
    });
  }

  #commitWaiting(): void {
    const waiting = this.#waiting;
    this.#waiting = [];
    let settled: readonly Settled[];
    try {
      // One alone needs no transaction around its own.
      settled =
        waiting.length === 1 ? waiting.map((each) => this.#settle(each)) : this.#recordAll.immediate(waiting);
    } catch (error) {
      const problem = unavailable(error);
      for (const { answer, fail } of waiting) {
        if (problem === null) fail(error);
        else answer({ ok: false, problem });
      }
      return;
    }
    const end = settled.findLast((each) => each.end !== null)?.end ?? null;
    if (end !== null) this.#headFile.write(end);
    for (const { tell } of settled) tell();
    if (end === null) return;
    const moved = [...new Set(settled.flatMap((each) => each.moved))];
    for (const listener of this.#listeners) listener(moved);
  }

  /** Records one waiting batch, undone by itself if it must not be, and says how its sender is to be told. */
  #settle({ batch, answer, fail }: Waiting): Settled {
    try {
      const { entries, moved, end } = this.#recordOne.immediate(batch);
      return { moved, end, tell: () => answer(done(entries)) };
    } catch (error) {
      // Trouble with the store itself undoes them all.
      if (unavailable(error) !== null) throw error;
      const tell = () =>
        error instanceof Undo ? answer({ ok: false, problem: error.problem }) : fail(error);
      return { moved: [], end: null, tell };
    }
  }

  /** Writes one batch inside a transaction; throws `Undo` when it must not be. */
  #record(batch: readonly StreamAppend[]): Recorded {
    const entries: Entry[] = [];
    const moved: string[] = [];
    let end: RecordHead | null = null;
    for (const append of batch) {
      const { stream, expectedRevision } = append;
      const head = this.#headOf(stream);
      const key = this.#keys.forWriting(stream);
      if (key === null) throw new Undo(refused('client-erased', { stream }).problem);
      const admission = admit(
        append,
        { stream: head, record: end ?? this.#recordHead() },
        (id) => (head.revision === 0 ? undefined : this.#statements.recordedEntry.get(id, stream)),
        (draft) => (key === undefined ? canonicalJson(draft.fact) : encryptFact(draft, key)),
      );
      if (admission === null) {
        const facts = { stream, expectedRevision, actualRevision: head.revision };
        throw new Undo(refused('stream-moved-on', facts).problem);
      }
      const answered = admission.answered.map((stored) => readable(stored, key));
      entries.push(...answered);
      const last = admission.fresh.at(-1);
      if (last === undefined) continue;
      this.#write(stream, head, admission.fresh, answered);
      moved.push(stream);
      end = { position: last.position, link: last.link };
    }
    return { entries, moved, end };
  }

  #write(stream: string, head: StreamHead, fresh: readonly StoredEntry[], answered: readonly Entry[]): void {
    const before = this.#entriesOf(stream, head);
    for (const entry of fresh) this.#statements.addEntry.run(entry);
    // What is answered holds the new entries, and may hold others, or one twice.
    const readables = new Map(answered.map((entry) => [entry.revision, entry]));
    const entries = [...before, ...fresh.flatMap(({ revision }) => readables.get(revision) ?? [])];
    const characters = this.#cache.charactersOf(stream) + charactersOf(fresh);
    const row = streamKind(stream) === 'client' ? null : this.#listRowOf(stream, entries);
    const text = JSON.stringify(row);
    // Most entries leave the row as it is.
    if (text !== this.#cache.rowOf(stream)) this.#putRow(stream, row);
    this.#cache.put(stream, entries, characters, text);
  }

  async read(stream: string): Promise<readonly Entry[]> {
    return this.#entriesOf(stream, this.#headOf(stream));
  }

  #entriesOf(stream: string, head: StreamHead): readonly Entry[] {
    if (head.revision === 0) return [];
    const kept = this.#cache.get(stream, head);
    if (kept !== undefined) return kept;
    const stored = this.#statements.entriesOf.all(stream);
    const key = this.#keys.forReading(stream);
    const entries = stored.map((entry) => readable(entry, key));
    this.#cache.put(stream, entries, charactersOf(stored));
    return entries;
  }

  async head(stream: string): Promise<{ readonly revision: number; readonly seal: string }> {
    return this.#headOf(stream);
  }

  async streams(kind: 'rug' | 'client' | 'room' | 'workshop'): Promise<readonly string[]> {
    const all = this.#statements.allStreams.all().map(({ name }) => name);
    return all.filter((name) => streamKind(name) === kind);
  }

  async list(query: ListQuery): Promise<readonly ListRow[]> {
    return this.#lists.list(query);
  }

  #putRow(stream: string, row: ListRow | null): void {
    if (row === null) this.#statements.removeRow.run(stream);
    else this.#statements.putRow.run(toStoredRow(row));
  }

  async eraseClient(stream: string): Promise<Result<null, RecordUnavailable>> {
    if (streamKind(stream) !== 'client') throw new Error(`${stream} is not a client's stream`);
    try {
      this.#keys.destroy(stream);
      this.#cache.remove(stream);
      const begun = this.#statements.beginning.get(stream);
      if (begun !== undefined) this.#lists.take(begun);
      // Earlier copies of the key lie in the log until it is written back and cut to nothing.
      const [log] = this.#database.pragma('wal_checkpoint(TRUNCATE)') as { readonly busy: number }[];
      return log?.busy === 0 ? done(null) : refused('record-unavailable', { reason: 'locked' });
    } catch (error) {
      const problem = unavailable(error);
      if (problem === null) throw error;
      return { ok: false, problem };
    }
  }

  async verify(stream?: string, told?: Told): Promise<Verification> {
    const check = new SealCheck();
    if (stream === undefined) {
      for (;;) {
        const entries = this.#statements.entriesAfter.all(check.position, turn);
        for (const entry of entries) check.takeOfAll(entry);
        told?.(check.position, this.#recordHead().position);
        if (entries.length === 0) break;
        await setImmediate();
      }
      const outside = this.#headFile.read();
      if (outside !== null) check.takeOutsideHead(outside, this.#linkAt(outside.position));
    } else {
      for (const entry of this.#statements.entriesOf.all(stream)) check.takeOfStream(entry);
    }
    const { streams, entries, broken } = check;
    return { streams, entries, broken, headSeal: this.#recordHead().link };
  }

  async rebuild(): Promise<{ readonly rows: number }> {
    let rows = 0;
    const streams = this.#statements.allStreams.all().filter(({ name }) => streamKind(name) !== 'client');
    const remake = this.#database.transaction((some: readonly BegunStream[]) => {
      for (const begun of some) {
        const { name } = begun;
        const stored = this.#statements.entriesOf.all(name);
        const row = this.#listRowOf(
          name,
          stored.map((entry) => readable(entry, undefined)),
        );
        this.#putRow(name, row);
        this.#lists.take(begun);
        if (row !== null) rows += 1;
      }
    });
    for (let at = 0; at < streams.length; at += turn) {
      remake.immediate(streams.slice(at, at + turn));
      await setImmediate();
    }
    return { rows };
  }

  onAppend(listener: (streams: readonly string[]) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Waits for what is on its way. The database is closed by whoever opened it. */
  async close(): Promise<void> {
    await setImmediate();
    await this.#headFile.close();
  }

  #headOf(stream: string): StreamHead {
    return this.#statements.head.get(stream) ?? emptyHead;
  }

  #recordHead(): RecordHead {
    return this.#statements.lastEntry.get() ?? emptyRecord;
  }

  #linkAt(position: number): string | undefined {
    return this.#statements.linkAt.get(position)?.link;
  }
}
