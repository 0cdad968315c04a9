import type { Database, Statement } from 'better-sqlite3';
import { canonicalJson } from '../../dossier/seal.ts';
import type { ListRow } from '../../ports/ledger.ts';
import type { RecordHead, StoredEntry, StreamHead } from '../record/storedEntry.ts';

/** The whole database surface of the record, in SQL that SQLite and PostgreSQL read alike. */
const entryColumns = 'position, stream, revision, id, at, recorded_by as "by", version, body, seal, link';
const streamColumns = 'stream as name, position as began';
const rowColumns =
  'stream, tag, client, consignment, stage, place, due_at as "dueAt", in_house as "inHouse", words, body';

/** A stream and the position at which it began. */
export interface BegunStream {
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
  readonly head: One<StreamHead, [stream: string]>;
  readonly beginning: One<BegunStream, [stream: string]>;
  readonly allStreams: One<BegunStream>;
  readonly movedSince: One<BegunStream, [position: number]>;
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
    head: prepare('select revision, seal from entry where stream = ? order by revision desc limit 1'),
    beginning: prepare(`select ${streamColumns} from entry where stream = ? and revision = 1`),
    allStreams: prepare(`select ${streamColumns} from entry where revision = 1 order by position`),
    movedSince: prepare(
      `select ${streamColumns} from entry
       where stream in (select stream from entry where position > ?) and revision = 1 order by position`,
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
    row: prepare(`select ${rowColumns} from list_row where stream = ?`),
    allRows: prepare(
      `select r.stream, tag, client, consignment, stage, place, due_at as "dueAt", in_house as "inHouse",
         words, 'null' as body, position as began
       from entry e join list_row r on r.stream = e.stream where revision = 1 order by position`,
    ),
    putRow: prepare(
      `insert into list_row
         (stream, tag, client, consignment, stage, place, due_at, in_house, words, body)
       values (@stream, @tag, @client, @consignment, @stage, @place, @dueAt, @inHouse, @words, @body)
       on conflict (stream) do update set tag = excluded.tag, client = excluded.client,
         consignment = excluded.consignment, stage = excluded.stage, place = excluded.place,
         due_at = excluded.due_at, in_house = excluded.in_house, words = excluded.words, body = excluded.body
       where (list_row.tag, list_row.client, list_row.consignment, list_row.stage, list_row.place,
           list_row.due_at, list_row.in_house, list_row.words, list_row.body)
         is distinct from (excluded.tag, excluded.client, excluded.consignment, excluded.stage, excluded.place,
           excluded.due_at, excluded.in_house, excluded.words, excluded.body)`,
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
