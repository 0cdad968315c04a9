import { fork } from 'node:child_process';
import { constants, setPriority } from 'node:os';
import { countSeed, type Outcome } from './outcome.ts';
import type { ShownKind } from './shown.ts';

/** A stretch of seeds of one kind, of which every process takes its share. */
export interface Seeds {
  readonly kind: ShownKind;
  readonly first: number;
  readonly count: number;
  readonly keep: string | null;
}

const processes = 2;
const shareWord = 'share';

/** Counts a share in this process and sends every outcome to its parent: `share KIND FIRST COUNT STEP [KEEP]`. */
export async function runShare([word, kind, first, count, step, keep]: readonly string[]): Promise<boolean> {
  if (word !== shareWord || process.send === undefined) return false;
  setPriority(constants.priority.PRIORITY_LOW - 4);
  const until = Number(first) + Number(count);
  for (let seed = Number(first); seed < until; seed += Number(step))
    process.send(await countSeed(kind === 'cloth' ? 'cloth' : 'rug', seed, keep ?? null));
  process.disconnect();
  return true;
}

/** Counts all seeds in two processes of low priority, or as many as were counted when it was interrupted; in the order of seeds. */
export async function countSeeds({ kind, first, count, keep }: Seeds): Promise<readonly Outcome[]> {
  const script = process.argv[1];
  if (script === undefined) throw new Error('the bench is not run from a file');
  const outcomes: Outcome[] = [];
  let told = 0;
  let interrupted = false;
  await Promise.all(
    Array.from(
      { length: processes },
      (_, share) =>
        new Promise<void>((resolve, reject) => {
          const own = Math.ceil((count - share) / processes);
          const args = [shareWord, kind, String(first + share), String(count - share), String(processes)];
          const child = fork(script, keep === null ? args : [...args, keep]);
          process.once('SIGINT', () => {
            interrupted = true;
            child.kill();
          });
          let held = 0;
          child.on('message', (message) => {
            outcomes.push(...(message as readonly Outcome[]));
            held += 1;
            told += 1;
            if (told % 50 === 0) console.error(`${told} of ${count} pictures`);
          });
          child.on('error', reject);
          child.on('exit', (code) =>
            interrupted || (code === 0 && held === own)
              ? resolve()
              : reject(new Error(`a share ended with ${held} of ${own}`)),
          );
        }),
    ),
  );
  return outcomes.sort((a, b) => a.seed - b.seed);
}
