import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { DiskPhotos } from '../../src/adapters/disk/diskPhotos.ts';
import { openInFolder } from '../support/openInFolder.ts';
import { type NoteFact, rowOfNotes } from '../support/rowOfNote.ts';

const batchSize = 3;

/** The checkout, found from wherever this file has been bundled to. */
function checkout(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package-lock.json'))) folder = dirname(folder);
  return folder;
}

/** Bundles the process to be killed, as the server is bundled, and answers where it lies. */
export async function bundleVictim(): Promise<string> {
  const root = checkout();
  const outDir = join(root, '.cache', 'durability');
  await build({
    root,
    configFile: join(root, 'vite.server.config.ts'),
    logLevel: 'warn',
    build: { ssr: 'test/durability/writeUnderLoad.ts', outDir, emptyOutDir: true },
  });
  return join(outDir, 'writeUnderLoad.js');
}

/** Starts the process, kills it some time after its first word of a kind, and answers all it acknowledged. */
async function acknowledgedUntilKilled(
  victim: string,
  folder: string,
  { after, byMs }: { readonly after: 'entry' | 'photo'; readonly byMs: number },
): Promise<string[]> {
  const call = [victim, folder, String(batchSize)];
  const child = spawn(process.execPath, call, { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  let complaints = '';
  let isDoomed = false;
  child.stderr.on('data', (chunk: Buffer) => {
    complaints += chunk.toString();
  });
  child.stdout.on('data', (chunk: Buffer) => {
    said += chunk.toString();
    if (isDoomed || !said.includes(after)) return;
    isDoomed = true;
    setTimeout(() => child.kill('SIGKILL'), byMs);
  });
  const signal = await new Promise((ended) => child.once('close', (_code, by) => ended(by)));
  if (signal !== 'SIGKILL') throw new Error(`the process ended by itself: ${complaints}`);
  // A last line without its end was cut by the kill and may be any part of a word.
  return said.split('\n').slice(0, -1);
}

export interface Survivors {
  readonly entries: number;
  readonly photos: number;
  /** What was acknowledged and is not there, or is there and should not be; empty when all is well. */
  readonly wrong: readonly string[];
}

/** Opens the folder again and holds it against everything that was ever acknowledged. */
async function examine(folder: string, acknowledged: readonly string[]): Promise<Survivors> {
  const wrong: string[] = [];
  const { ledger, done } = openInFolder(folder, rowOfNotes);
  const photos = new DiskPhotos(join(folder, 'photos'));
  const { broken, entries } = await ledger.verify();
  wrong.push(...broken.map(({ facts }) => JSON.stringify(facts)));

  const batches = new Map<string, number>();
  const seals = new Map<string, string>();
  for (const kind of ['rug', 'client'] as const) {
    for (const stream of await ledger.streams(kind)) {
      for (const { id, seal, fact } of await ledger.read(stream)) {
        const [name = ''] = (fact as NoteFact).text.split(' ');
        batches.set(name, (batches.get(name) ?? 0) + 1);
        seals.set(`${stream} ${id}`, seal);
      }
    }
  }
  for (const [name, size] of batches) if (size !== batchSize) wrong.push(`half of batch ${name}`);
  const rows = await ledger.list({ kind: 'rug', limit: Number.MAX_SAFE_INTEGER });
  const rugs = (await ledger.streams('rug')).length;
  if (rows.length !== rugs) wrong.push(`${rows.length} rows for ${rugs} rugs`);

  let kept = 0;
  for (const line of acknowledged) {
    const [kind, name = '', id = '', seal] = line.split(' ');
    if (kind === 'entry' && seals.get(`${name} ${id}`) !== seal) wrong.push(`lost: ${line}`);
    if (kind === 'photo') {
      const [original, shown] = await Promise.all([
        photos.read(name, 'original'),
        photos.read(name, 'shown'),
      ]);
      if (original === null || shown === null || hash(original.bytes) !== name) wrong.push(`lost: ${line}`);
      kept += 1;
    }
  }
  wrong.push(...halfPhotos(join(folder, 'photos')));
  await done();
  return { entries, photos: kept, wrong };
}

const hash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Files that stand under a photograph's name and are not what the name says. */
function halfPhotos(folder: string): readonly string[] {
  return readdirSync(folder)
    .filter((name) => name !== 'incoming')
    .flatMap((name) => readdirSync(join(folder, name)).map((file) => join(folder, name, file)))
    .filter((path) => /\/[0-9a-f]{64}$/.test(path) && !path.endsWith(hash(readFileSync(path))));
}

/** Kills a loaded process again and again on one folder, and looks after each kill at what survived. */
export async function killRounds(
  folder: string,
  rounds: number,
  report: (round: number, survivors: Survivors) => void,
): Promise<Survivors> {
  const victim = await bundleVictim();
  const acknowledged: string[] = [];
  let survivors: Survivors = { entries: 0, photos: 0, wrong: [] };
  for (let round = 1; round <= rounds && survivors.wrong.length === 0; round += 1) {
    // Entries come first and fast; every second life lasts until photographs are on their way too.
    const doom = { after: round % 2 === 0 ? 'photo' : 'entry', byMs: Math.random() * 300 } as const;
    acknowledged.push(...(await acknowledgedUntilKilled(victim, folder, doom)));
    survivors = await examine(folder, acknowledged);
    report(round, survivors);
  }
  return survivors;
}
