import type { Entry, EntryDraft } from '../dossier/entry.ts';
import type { AppendProblem, RecordUnavailable, SealBroken } from '../dossier/recordProblem.ts';
import type { Result } from '../units/index.ts';

/** Appends to one stream, made on the belief that `expectedRevision` is its latest. */
export interface StreamAppend {
  readonly stream: string;
  /** 0 for a stream that must not exist yet. */
  readonly expectedRevision: number;
  readonly drafts: readonly EntryDraft[];
}

/** What verification found. `headSeal` is the latest link of the chain that runs over all stream heads. */
export interface Verification {
  readonly streams: number;
  readonly entries: number;
  readonly headSeal: string;
  readonly broken: readonly SealBroken[];
}

/**
 * One row of a list, kept beside the entries and rebuildable from them at any time. The row of a client's
 * stream holds personal data and is therefore kept in memory only.
 */
export interface ListRow {
  readonly stream: string;
  /** Columns that lists filter and sort by; null where the stream has none. */
  readonly tag: string | null;
  /** Id of its client, whose stream is `client/<id>`. */
  readonly client: string | null;
  readonly consignment: string | null;
  readonly stage: string | null;
  readonly place: string | null;
  /** Earliest instant at which somebody's hands are needed. */
  readonly dueAt: string | null;
  /** True while the rug is in the workshop. */
  readonly inHouse: boolean;
  /** Words by which the row is found, as `searchWords` makes them. A rug's hold nothing of its client. */
  readonly words: readonly string[];
  /** What a list shows, as JSON. */
  readonly body: unknown;
}

/** Makes a stream's row from all its entries; pure, so that rows rebuilt equal rows kept. */
export type ListRowOf = (stream: string, entries: readonly Entry[]) => ListRow | null;

export interface ListQuery {
  readonly kind: 'rug' | 'client' | 'room';
  readonly tag?: string;
  readonly client?: string;
  readonly consignment?: string;
  readonly stage?: string;
  readonly place?: string;
  readonly inHouse?: boolean;
  /** Words that must all occur as prefixes of the row's words (for rugs also of its client's words). */
  readonly find?: string;
  readonly limit: number;
  /** Name of the last stream of the page before. */
  readonly after?: string;
}

/** Hears how much of a long work is done. */
export type Told = (done: number, of: number) => void;

/** The whole record: streams of sealed entries, and the lists kept from them. */
export interface Ledger {
  /**
   * Records drafts of one or several streams, all or nothing, and answers only after they are durable.
   * A draft whose id is already recorded in that stream is answered with what was recorded.
   */
  append(batch: readonly StreamAppend[]): Promise<Result<readonly Entry[], AppendProblem>>;
  /** All entries of a stream, oldest first; empty when there is none. Client streams are decrypted. */
  read(stream: string): Promise<readonly Entry[]>;
  /** Latest revision and seal; revision 0 and the empty seal when there is no such stream. */
  head(stream: string): Promise<{ readonly revision: number; readonly seal: string }>;
  /** Names of all streams of a kind, in order of creation. */
  streams(kind: 'rug' | 'client' | 'room' | 'workshop'): Promise<readonly string[]>;
  /** Rows that answer the query, the stream begun last first. */
  list(query: ListQuery): Promise<readonly ListRow[]>;
  /**
   * Destroys a client's key: what stands in the stream can never be read again; entries and seals stay. A
   * refusal means that the key may still lie in a file that another program holds: ask again.
   */
  eraseClient(stream: string): Promise<Result<null, RecordUnavailable>>;
  /** Checks every seal (or those of one stream) and the chain over the heads; `told` hears how far it is. */
  verify(stream?: string, told?: Told): Promise<Verification>;
  /** Makes all list rows anew from the entries. */
  rebuild(): Promise<{ readonly rows: number }>;
  /** Called after each durable append with the streams that moved; returns a function that stops it. */
  onAppend(listener: (streams: readonly string[]) => void): () => void;
  close(): Promise<void>;
}
