import { accountsMigration } from './accountsMigration.ts';

/** One step of the schema. Once it has left the house it is never changed: what comes after is a new one. */
export interface Migration {
  readonly number: number;
  readonly name: string;
  /** SQL that SQLite and PostgreSQL both take, except for triggers. */
  readonly sql: string;
}

/** All steps, counting up from 1 without a gap. */
export const migrations: readonly Migration[] = [
  {
    number: 1,
    name: 'the record',
    sql: `
      create table entry (
        -- integer and not bigint: SQLite then counts rows by it and needs no index of its own for it
        position integer primary key not null,
        stream text not null,
        revision bigint not null,
        id text not null,
        at text not null,
        recorded_by text not null,
        version bigint not null,
        body text not null,
        seal text not null,
        link text not null,
        unique (stream, revision),
        unique (id, stream)
      );
      create index stream_beginning on entry (position, stream) where revision = 1;
      create trigger entry_is_never_changed before update on entry
        begin select raise(abort, 'an entry is never changed'); end;
      create trigger entry_is_never_removed before delete on entry
        begin select raise(abort, 'an entry is never removed'); end;
      create table client_key (
        stream text primary key not null,
        -- 32 bytes; zeros once destroyed
        secret bytea not null
      );
      create table list_row (
        stream text primary key not null,
        tag text,
        client text,
        consignment text,
        stage text,
        place text,
        due_at text,
        in_house smallint not null check (in_house in (0, 1)),
        words text not null,
        body text not null
      );
    `,
  },
  accountsMigration,
];
