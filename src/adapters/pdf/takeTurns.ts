/** Runs at most `sideBySide` pieces of work at once; the others wait in the order they came. */
export function takeTurns(sideBySide: number): <Value>(work: () => Promise<Value>) => Promise<Value> {
  const waiting: (() => void)[] = [];
  let free = sideBySide;
  return async (work) => {
    if (free > 0) free -= 1;
    else await new Promise<void>((goOn) => waiting.push(goOn));
    try {
      return await work();
    } finally {
      // A turn is handed straight to the next in line, so a newcomer cannot slip in between.
      const next = waiting.shift();
      if (next === undefined) free += 1;
      else next();
    }
  };
}
