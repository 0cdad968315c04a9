import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { memoryAccounts } from '../../src/adapters/memory/memoryAccounts.ts';
import { sqliteAccounts } from '../../src/adapters/sqlite/accounts.ts';
import { openDatabase } from '../../src/adapters/sqlite/database.ts';
import { opensAt } from '../../src/app/secretRules.ts';
import type { Accounts, Session } from '../../src/ports/accounts.ts';
import { throwAwayFolder } from '../support/openInFolder.ts';

const at = (minute: number): string => new Date(Date.UTC(2026, 2, 2, 8, minute)).toISOString();
const session = (token: string, person: string, startedAt = at(0)): Session => ({
  ...{ token, person, proof: 'passphrase' as const, startedAt, seenAt: startedAt },
});

/** What accounts promise, whatever keeps them. */
function accountPromises(
  name: string,
  open: () => { readonly accounts: Accounts; readonly close: () => void },
): void {
  describe(name, () => {
    let accounts: Accounts;
    let close: () => void;
    beforeEach(() => {
      ({ accounts, close } = open());
    });
    afterEach(() => close());

    test('an account is kept, replaced, and taken away with every session of its person', async () => {
      expect(await accounts.account('p1')).toBeNull();
      await accounts.keepAccount({ person: 'p1', passphrase: 'hash', pin: null });
      await accounts.keepAccount({ person: 'p1', passphrase: 'hash 2', pin: 'pin' });
      expect(await accounts.account('p1')).toEqual({ person: 'p1', passphrase: 'hash 2', pin: 'pin' });
      await accounts.addSession(session('t1', 'p1'));
      await accounts.addSession(session('t2', 'p2'));
      await accounts.removeAccount('p1');
      expect(await accounts.account('p1')).toBeNull();
      expect(await accounts.session('t1')).toBeNull();
      expect(await accounts.session('t2')).toEqual(session('t2', 'p2'));
    });

    test('a session is seen, and ends alone, with the others of its person, or by age', async () => {
      for (const token of ['t1', 't2', 't3']) await accounts.addSession(session(token, 'p1'));
      await accounts.addSession(session('t4', 'p2', at(30)));
      await accounts.seeSession('t1', at(5));
      expect((await accounts.session('t1'))?.seenAt).toBe(at(5));
      await accounts.removeSession('t3');
      await accounts.removeSessions('p1', 't1');
      expect([await accounts.session('t2'), await accounts.session('t3')]).toEqual([null, null]);
      expect(await accounts.session('t1')).not.toBeNull();
      await accounts.removeSessionsStartedBefore(at(10));
      expect(await accounts.session('t1')).toBeNull();
      expect(await accounts.session('t4')).not.toBeNull();
    });

    test('five tries are free; the sixth waits, is not counted, and the wait doubles up to an hour', async () => {
      const admit = (minute: number) => accounts.admitTry('p1', at(minute), opensAt);
      for (let tries = 0; tries < 5; tries += 1) expect(await admit(0)).toBeNull();
      expect(await admit(0)).toBe(at(1));
      expect(await admit(0)).toBe(at(1));
      expect(await admit(1)).toBeNull();
      expect(await admit(2)).toBe(at(3));
      let minute = 3;
      for (const wait of [4, 8, 16, 32, 60, 60]) {
        expect(await admit(minute)).toBeNull();
        expect(await admit(minute)).toBe(at(minute + wait));
        minute += wait;
      }
      expect(await accounts.admitTry('p2', at(0), opensAt)).toBeNull();
    });

    test('a right try and a long time both forget the wrong ones', async () => {
      for (const key of ['p1', 'p2'])
        for (let tries = 0; tries < 5; tries += 1) await accounts.admitTry(key, at(0), opensAt);
      await accounts.clearTries('p1');
      expect(await accounts.admitTry('p1', at(0), opensAt)).toBeNull();
      expect(await accounts.admitTry('p2', at(0), opensAt)).toBe(at(1));
      await accounts.forgetTriesBefore(at(1));
      expect(await accounts.admitTry('p2', at(0), opensAt)).toBeNull();
    });
  });
}

accountPromises('accounts in memory', () => ({ accounts: memoryAccounts(), close: () => {} }));

accountPromises('accounts in SQLite', () => {
  const { folder, remove } = throwAwayFolder();
  const opened = openDatabase(folder);
  if (!opened.ok) throw new Error(opened.problem.code);
  const { database } = opened.value;
  return {
    accounts: sqliteAccounts(database),
    close: () => {
      database.close();
      remove();
    },
  };
});
