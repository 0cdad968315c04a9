/** What a person signs in with. Names and roles stand in the workshop's own stream. */
export interface Account {
  readonly person: string;
  /** Hash of the passphrase, never the passphrase. */
  readonly passphrase: string;
  /** Hash of the PIN; null when the person has none. */
  readonly pin: string | null;
}

/** By what the person of a session showed who they are. A PIN opens less than a passphrase. */
export type Proof = 'passphrase' | 'pin';

export interface Session {
  /** SHA-256 (hex) of the token that the tablet holds; the token itself is nowhere. */
  readonly token: string;
  readonly person: string;
  readonly proof: Proof;
  readonly startedAt: string;
  readonly seenAt: string;
}

/** Wrong tries since the last right one. */
export interface Tries {
  readonly count: number;
  readonly lastAt: string;
}

/** Who may sign in, and who is signed in. Mutable, and apart from the record: none of it is evidence. */
export interface Accounts {
  account(person: string): Promise<Account | null>;
  keepAccount(account: Account): Promise<void>;
  /** Takes away what the person signs in with, and ends all their sessions. */
  removeAccount(person: string): Promise<void>;
  addSession(session: Session): Promise<void>;
  session(token: string): Promise<Session | null>;
  seeSession(token: string, at: string): Promise<void>;
  removeSession(token: string): Promise<void>;
  /** Ends a person's sessions, except the one whose token is given. */
  removeSessions(person: string, except: string | null): Promise<void>;
  removeSessionsStartedBefore(at: string): Promise<void>;
  /**
   * Counts a try before it is judged, so that many at once cannot pass together. Answers null when it may be
   * judged, or the instant from which tries are taken again; a refused try is not counted.
   */
  admitTry(key: string, at: string, opensAt: (tries: Tries) => string | null): Promise<string | null>;
  clearTries(key: string): Promise<void>;
  forgetTriesBefore(at: string): Promise<void>;
}
