import type { Database, Statement } from 'better-sqlite3';
import { canonicalJson } from '../../dossier/seal.ts';
import type { ListRow } from '../../ports/ledger.ts';
import type { RecordHead, StoredEntry, StreamHead } from '../record/storedEntry.ts';

/** The whole database surface of the record, in SQL that SQLite and PostgreSQL read alike. */
const entryColumns = 'position, stream, revision, id, at, recorded_by as "by", version, body, seal, link';
const rowColumns =
  'r.stream, tag, client, consignment, stage, place, due_at as "dueAt", in_house as "inHouse", words, body';

export interface StoredStream extends StreamHead {
  readonly name: string;
  readonly began: number;
}

/** A list row as it is stored: words as one text with spaces, the body as canonical JSON. */
export interface StoredRow extends Omit<ListRow, 'inHouse' | 'words' | 'body'> {
  readonly inHouse: 0 | 1;
  readonly words: string;
  readonly body: string;
}

type One<Row, Arguments extends unknown[] = []> = Statement<Arguments, Row>;
type Write<Row> = Statement<[Row]>;

export interface Statements {
  readonly lastEntry: One<RecordHead>;
  readonly linkAt: One<Pick<StoredEntry, 'link'>, [position: number]>;
  readonly stream: One<StoredStream, [name: string]>;
  readonly streamsOfKind: One<StoredStream, [kind: string]>;
  readonly allStreams: One<StoredStream>;
  readonly movedSince: One<StoredStream, [position: number]>;
  readonly putStream: Write<StoredStream & { readonly kind: string }>;
  readonly recordedEntry: One<StoredEntry, [id: string, stream: string]>;
  readonly entriesOf: One<StoredEntry, [stream: string]>;
  readonly entriesAfter: One<StoredEntry, [position: number, limit: number]>;
  readonly addEntry: Write<StoredEntry>;
  readonly key: One<{ readonly secret: Uint8Array }, [stream: string]>;
  readonly addKey: Statement<[stream: string, secret: Uint8Array]>;
  readonly destroyKey: Statement<[zeros: Uint8Array, stream: string]>;
  readonly row: One<StoredRow, [stream: string]>;
  readonly allRows: One<StoredRow & { readonly began: number }>;
  readonly putRow: Write<StoredRow>;
  readonly removeRow: Statement<[stream: string]>;
}

export function prepareStatements(database: Database): Statements {
  const prepare = <Prepared>(sql: string) => database.prepare(sql) as Prepared;
  return {
    lastEntry: prepare('select position, link from entry order by position desc limit 1'),
    linkAt: prepare('select link from entry where position = ?'),
    stream: prepare('select name, began, revision, seal from stream where name = ?'),
    streamsOfKind: prepare('select name, began, revision, seal from stream where kind = ? order by began'),
    allStreams: prepare('select name, began, revision, seal from stream order by began'),
    movedSince: prepare(
      `select name, began, revision, seal from stream
       where name in (select stream from entry where position > ?) order by began`,
    ),
    putStream: prepare(
      `insert into stream (name, kind, began, revision, seal) values (@name, @kind, @began, @revision, @seal)
       on conflict (name) do update set revision = excluded.revision, seal = excluded.seal`,
    ),
    recordedEntry: prepare(`select ${entryColumns} from entry where id = ? and stream = ?`),
    entriesOf: prepare(`select ${entryColumns} from entry where stream = ? order by revision`),
    entriesAfter: prepare(`select ${entryColumns} from entry where position > ? order by position limit ?`),
    addEntry: prepare(
      `insert into entry (position, stream, revision, id, at, recorded_by, version, body, seal, link)
       values (@position, @stream, @revision, @id, @at, @by, @version, @body, @seal, @link)`,
    ),
    key: prepare('select secret from client_key where stream = ?'),
    addKey: prepare('insert into client_key (stream, secret) values (?, ?)'),
    destroyKey: prepare('update client_key set secret = ? where stream = ?'),
    row: prepare(`select ${rowColumns} from list_row r where stream = ?`),
    allRows: prepare(
      `select r.stream, tag, client, consignment, stage, place, due_at as "dueAt", in_house as "inHouse",
         words, 'null' as body, began from list_row r join stream s on s.name = r.stream order by began`,
    ),
    putRow: prepare(
      `insert into list_row
         (stream, tag, client, consignment, stage, place, due_at, in_house, words, body)
       values (@stream, @tag, @client, @consignment, @stage, @place, @dueAt, @inHouse, @words, @body)
       on conflict (stream) do update set tag = excluded.tag, client = excluded.client,
         consignment = excluded.consignment, stage = excluded.stage, place = excluded.place,
         due_at = excluded.due_at, in_house = excluded.in_house, words = excluded.words, body = excluded.body`,
    ),
    removeRow: prepare('delete from list_row where stream = ?'),
  };
}

/** A row as it is written. */
export const toStoredRow = ({ inHouse, words, body, ...row }: ListRow): StoredRow => ({
  ...row,
  inHouse: inHouse ? 1 : 0,
  words: words.join(' '),
  body: canonicalJson(body),
});

/** A row as it was written. */
export const fromStoredRow = ({ inHouse, words, body, ...row }: StoredRow): ListRow => ({
  ...row,
  inHouse: inHouse === 1,
  words: words === '' ? [] : words.split(' '),
  body: JSON.parse(body) as unknown,
});
