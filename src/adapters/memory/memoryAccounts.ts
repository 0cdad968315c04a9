import type { Account, Accounts, Session, Tries } from '../../ports/accounts.ts';

/** Accounts that last as long as the process. */
export function memoryAccounts(): Accounts {
  const accounts = new Map<string, Account>();
  const sessions = new Map<string, Session>();
  const tries = new Map<string, Tries>();
  const endSessions = (ends: (session: Session) => boolean): void => {
    for (const session of sessions.values()) if (ends(session)) sessions.delete(session.token);
  };
  return {
    account: async (person) => accounts.get(person) ?? null,
    keepAccount: async (account) => void accounts.set(account.person, account),
    async removeAccount(person) {
      accounts.delete(person);
      endSessions((session) => session.person === person);
    },
    addSession: async (session) => void sessions.set(session.token, session),
    session: async (token) => sessions.get(token) ?? null,
    async seeSession(token, seenAt) {
      const session = sessions.get(token);
      if (session !== undefined) sessions.set(token, { ...session, seenAt });
    },
    removeSession: async (token) => void sessions.delete(token),
    removeSessions: async (person, except) =>
      endSessions((session) => session.person === person && session.token !== except),
    removeSessionsStartedBefore: async (at) => endSessions((session) => session.startedAt < at),
    async admitTry(key, at, opensAt) {
      const known = tries.get(key);
      const opens = known === undefined ? null : opensAt(known);
      if (opens !== null && opens > at) return opens;
      tries.set(key, { count: (known?.count ?? 0) + 1, lastAt: at });
      return null;
    },
    clearTries: async (key) => void tries.delete(key),
    async forgetTriesBefore(at) {
      for (const [key, { lastAt }] of tries) if (lastAt < at) tries.delete(key);
    },
  };
}
