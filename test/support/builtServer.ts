import { type ChildProcess, spawn } from 'node:child_process';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { throwAwayFolder } from './openInFolder.ts';

const main = join(resolve(import.meta.dirname, '../..'), 'dist/server/main.js');

/** What `--json` prints when a server has started. */
export interface Announced {
  readonly address: string;
  readonly setUpCode?: string | null;
  readonly passphrase?: string;
  readonly fingerprint?: string | null;
}

export interface BuiltServer extends Announced {
  /** Folder of its store; the demo keeps its own. */
  readonly folder: string;
  /** Ends the process by a signal and waits until it is gone; answers its exit code. */
  readonly stop: (signal?: NodeJS.Signals) => Promise<number | null>;
  readonly complaints: () => string;
}

const firstLine = (child: ChildProcess, complaints: () => string): Promise<string> =>
  new Promise((answer, fail) => {
    if (child.stdout !== null) createInterface(child.stdout).once('line', answer);
    child.once('exit', (code) => fail(new Error(`the server ended with ${code}: ${complaints()}`)));
  });

/** Starts the built product as a person would, on any free port and a folder that is thrown away. */
export async function startBuilt(
  command: 'serve' | 'demo',
  args: readonly string[] = [],
  kept?: string,
): Promise<BuiltServer> {
  const made = kept === undefined ? throwAwayFolder() : { folder: kept, remove: () => {} };
  const { folder, remove } = made;
  const data = command === 'serve' ? ['--data', folder] : [];
  const child = spawn(process.execPath, [main, command, '--port', '0', '--json', ...data, ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let complained = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    complained += text;
  });
  const line = await firstLine(child, () => complained);
  const announced = JSON.parse(line) as Announced;
  if (announced.address === undefined) throw new Error(line);
  const stop = (signal: NodeJS.Signals = 'SIGTERM'): Promise<number | null> =>
    new Promise((ended) => {
      const end = (code: number | null): void => {
        remove();
        ended(code);
      };
      if (child.exitCode !== null || child.signalCode !== null) return end(child.exitCode);
      child.once('exit', end);
      child.kill(signal);
    });
  return { ...announced, folder, stop, complaints: () => complained };
}
