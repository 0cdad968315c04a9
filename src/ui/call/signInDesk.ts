/** Whoever waits for somebody to sign in. One sheet answers all. */
let waiting: Array<(signedIn: boolean) => void> = [];
let isOpen = false;
const listeners = new Set<() => void>();

const set = (open: boolean) => {
  isOpen = open;
  for (const listener of listeners) listener();
};

export const signInDesk = {
  isOpen: () => isOpen,
  subscribe: (listener: () => void) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
  /** Opens the sign-in sheet over the page; true once somebody has signed in, false if it was closed. */
  ask: (): Promise<boolean> =>
    new Promise((resolve) => {
      waiting.push(resolve);
      set(true);
    }),
  close: (signedIn: boolean) => {
    const told = waiting;
    waiting = [];
    set(false);
    for (const tell of told) tell(signedIn);
  },
};
