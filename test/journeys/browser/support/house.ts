import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../../../', import.meta.url));

/** The built product, running as a person would start it. */
export interface RunningHouse {
  readonly address: string;
  /** Makes the owner's account; null in the demo, where everybody has one. */
  readonly setUpCode: string | null;
  /** Of everybody in the demo; null in a new house. */
  readonly passphrase: string | null;
  readonly close: () => Promise<void>;
}

interface Announced {
  readonly address: string;
  readonly setUpCode?: string | null;
  readonly passphrase?: string;
}

/** The address a started server prints as one line of JSON; refused with what it complained of instead. */
function announced(server: ChildProcess): Promise<Announced> {
  return new Promise((resolve, reject) => {
    let complaints = '';
    server.stderr?.on('data', (text) => {
      complaints += text;
    });
    server.once('exit', (code) => reject(new Error(`The server stopped with ${code}. ${complaints}`)));
    if (server.stdout === null) return reject(new Error('The server has no output.'));
    createInterface(server.stdout).once('line', (line) => resolve(JSON.parse(line) as Announced));
  });
}

const ended = (server: ChildProcess): Promise<void> =>
  server.exitCode !== null || server.signalCode !== null
    ? Promise.resolve()
    : new Promise((resolve) => server.once('exit', () => resolve()));

/** Starts a new house on an empty store, or the demo with its invented rugs. */
export async function openHouse(which: 'new' | 'demo'): Promise<RunningHouse> {
  const folder = await mkdtemp(join(tmpdir(), 'wefthouse-journey-'));
  const command =
    which === 'demo'
      ? ['demo', '--port', '0', '--json']
      : ['serve', '--data', folder, '--port', '0', '--json'];
  const server = spawn(process.execPath, [join(root, 'bin', 'wefthouse.js'), ...command], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const { address, setUpCode = null, passphrase = null } = await announced(server);
  return {
    address,
    setUpCode,
    passphrase,
    close: async () => {
      server.kill('SIGTERM');
      await ended(server);
      await rm(folder, { recursive: true, force: true });
    },
  };
}
