import type { Database, Statement } from 'better-sqlite3';
import type { Account, Accounts, Session, Tries } from '../../ports/accounts.ts';

type One<Row, Arguments extends unknown[]> = Statement<Arguments, Row>;
type Write<Arguments extends unknown[]> = Statement<Arguments>;

function prepareAccounts(database: Database) {
  const prepare = <Prepared>(sql: string) => database.prepare(sql) as Prepared;
  return {
    account: prepare<One<Account, [string]>>('select person, passphrase, pin from account where person = ?'),
    keepAccount: prepare<Write<[Account]>>(
      `insert into account (person, passphrase, pin) values (@person, @passphrase, @pin)
       on conflict (person) do update set passphrase = excluded.passphrase, pin = excluded.pin`,
    ),
    removeAccount: prepare<Write<[string]>>('delete from account where person = ?'),
    addSession: prepare<Write<[Session]>>(
      `insert into session (token, person, proof, started_at, seen_at)
       values (@token, @person, @proof, @startedAt, @seenAt)`,
    ),
    session: prepare<One<Session, [string]>>(
      `select token, person, proof, started_at as "startedAt", seen_at as "seenAt" from session where token = ?`,
    ),
    seeSession: prepare<Write<[string, string]>>('update session set seen_at = ? where token = ?'),
    removeSession: prepare<Write<[string]>>('delete from session where token = ?'),
    removeSessions: prepare<Write<[string, string]>>('delete from session where person = ? and token <> ?'),
    removeOldSessions: prepare<Write<[string]>>('delete from session where started_at < ?'),
    tries: prepare<One<Tries, [string]>>(
      'select count, last_at as "lastAt" from sign_in_tries where key = ?',
    ),
    countTry: prepare<Write<[string, string]>>(
      `insert into sign_in_tries (key, count, last_at) values (?, 1, ?)
       on conflict (key) do update set count = sign_in_tries.count + 1, last_at = excluded.last_at`,
    ),
    clearTries: prepare<Write<[string]>>('delete from sign_in_tries where key = ?'),
    forgetTries: prepare<Write<[string]>>('delete from sign_in_tries where last_at < ?'),
  };
}

/** Accounts beside the record, in the same file. */
export function sqliteAccounts(database: Database): Accounts {
  const statements = prepareAccounts(database);
  const removeAccount = database.transaction((person: string) => {
    statements.removeAccount.run(person);
    statements.removeSessions.run(person, '');
  });
  const admitTry = database.transaction(
    (key: string, at: string, opensAt: (tries: Tries) => string | null) => {
      const known = statements.tries.get(key);
      const opens = known === undefined ? null : opensAt(known);
      if (opens !== null && opens > at) return opens;
      statements.countTry.run(key, at);
      return null;
    },
  );
  return {
    account: async (person) => statements.account.get(person) ?? null,
    keepAccount: async (account) => void statements.keepAccount.run(account),
    removeAccount: async (person) => removeAccount.immediate(person),
    addSession: async (session) => void statements.addSession.run(session),
    session: async (token) => statements.session.get(token) ?? null,
    seeSession: async (token, at) => void statements.seeSession.run(at, token),
    removeSession: async (token) => void statements.removeSession.run(token),
    removeSessions: async (person, except) => void statements.removeSessions.run(person, except ?? ''),
    removeSessionsStartedBefore: async (at) => void statements.removeOldSessions.run(at),
    admitTry: async (key, at, opensAt) => admitTry.immediate(key, at, opensAt),
    clearTries: async (key) => void statements.clearTries.run(key),
    forgetTriesBefore: async (at) => void statements.forgetTries.run(at),
  };
}
