import type { Migration } from './migrations.ts';

/** Tables of those who sign in. They are mutable and no part of the record, so no trigger guards them. */
export const accountsMigration: Migration = {
  number: 2,
  name: 'accounts',
  sql: `
    create table account (
      person text primary key not null,
      passphrase text not null,
      pin text
    );
    create table session (
      token text primary key not null,
      person text not null,
      proof text not null check (proof in ('passphrase', 'pin')),
      started_at text not null,
      seen_at text not null
    );
    create index session_of_person on session (person);
    create table sign_in_tries (
      key text primary key not null,
      count bigint not null,
      last_at text not null
    );
  `,
};
