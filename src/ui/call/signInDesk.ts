/** The session ended, or it was switched to by PIN and this needs a passphrase. */
export type SignInReason = 'ended' | 'by PIN';

/** Whoever waits for somebody to sign in. One sheet answers all. */
let waiting: Array<(signedIn: boolean) => void> = [];
let reason: SignInReason | null = null;
const listeners = new Set<() => void>();

const set = (next: SignInReason | null) => {
  reason = next;
  for (const listener of listeners) listener();
};

export const signInDesk = {
  /** Why the sheet is open; null while it is not. */
  reason: () => reason,
  subscribe: (listener: () => void) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
  /** Opens the sign-in sheet over the page; true once somebody has signed in, false if it was closed. */
  ask: (why: SignInReason): Promise<boolean> =>
    new Promise((resolve) => {
      waiting.push(resolve);
      set(why);
    }),
  close: (signedIn: boolean) => {
    const told = waiting;
    waiting = [];
    set(null);
    for (const tell of told) tell(signedIn);
  },
};
