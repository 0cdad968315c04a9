import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { bundleVictim, killRounds } from '../test/durability/killRounds.ts';

/** Kills a loaded process 200 times and misses nothing; then shows the order of writing and syncing once. */
async function killMany(folder: string, rounds: number): Promise<boolean> {
  const begun = performance.now();
  const survivors = await killRounds(folder, rounds, (round, { entries, photos }) => {
    if (round % 10 === 0)
      console.log(`${round} kills: ${entries} entries and ${photos} acknowledged photographs are there`);
  });
  for (const what of survivors.wrong) console.log(what);
  const minutes = ((performance.now() - begun) / 60_000).toFixed(1);
  console.log(
    `${rounds} kills in ${minutes} min: ${survivors.wrong.length === 0 ? 'nothing lost, no half entry, all seals hold' : 'NOT SOUND'}`,
  );
  return survivors.wrong.length === 0;
}

const hasStrace = (): boolean => {
  try {
    execFileSync('strace', ['-V'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
};

/** What the trace must show in this order. `passing` is the name under which the original came in. */
const expected = (passing: string): readonly (readonly [what: string, call: RegExp])[] => [
  ['the process begins', /write\(1<.*"begin/],
  ['the entry is written to the log', /pwrite64\(\d+<[^>]*wefthouse\.db-wal>/],
  ['the log is synced', /f(data)?sync\(\d+<[^>]*wefthouse\.db-wal>/],
  ['the outside head is written', /pwrite64\(\d+<[^>]*wefthouse\.head>/],
  ['the entry is acknowledged', /write\(1<.*"entry/],
  ['the original is synced under a passing name', new RegExp(`fsync\\(\\d+<[^>]*${passing}>`)],
  ['it gets its name', originalNamed],
  ['the folder that holds the name is synced', /fsync\(\d+<[^>]*photos\/[0-9a-f]{2}>/],
  ['the photograph is acknowledged', /write\(1<.*"photo/],
];
const originalNamed = /rename(?:at2?)?\(.*photos\/(incoming\/[^"]*)".*\/[0-9a-f]{64}"/;

/** Calls that were cut in two by another thread, put together where they ended. */
function wholeCalls(trace: string): readonly string[] {
  const begun = new Map<string, string>();
  return trace.split('\n').flatMap((text) => {
    const [thread = ''] = text.trim().split(' ');
    const cut = text.indexOf(' <unfinished');
    if (cut >= 0) {
      begun.set(thread, text.slice(0, cut));
      return [];
    }
    const rest = /<\.\.\. \w+ resumed>(.*)$/.exec(text)?.[1];
    return [rest === undefined ? text : `${begun.get(thread) ?? ''}${rest}`];
  });
}

async function showOrder(folder: string): Promise<boolean> {
  if (!hasStrace()) {
    console.log(
      'the order of syncing is not shown: strace is not installed (Debian: apt-get install strace)',
    );
    return true;
  }
  const out = join(folder, 'trace.txt');
  const calls = 'trace=openat,write,pwrite64,fsync,fdatasync,rename,renameat,renameat2';
  const traced = ['-f', '-y', '-s', '60', '-e', calls, '-o', out, process.execPath, await bundleVictim()];
  const { status, stderr } = spawnSync('strace', [...traced, join(folder, 'store'), '1', 'once']);
  if (status !== 0) throw new Error(`the traced process failed: ${stderr.toString()}`);
  const trace = wholeCalls(readFileSync(out, 'utf8'));
  const passing = trace.map((text) => originalNamed.exec(text)?.[1]).find((name) => name !== undefined);
  let from = 0;
  for (const [what, call] of expected(passing ?? 'no original got its name')) {
    const found = trace.findIndex((text, at) => at >= from && call.test(text));
    if (found < 0) {
      console.log(`NOT SHOWN: ${what}`);
      return false;
    }
    console.log(`${what.padEnd(48)} ${trace[found]?.replaceAll(folder, '').slice(0, 150)}`);
    from = found + 1;
  }
  return true;
}

export async function run(args: readonly string[]): Promise<void> {
  const { values } = parseArgs({ args: [...args], options: { kills: { type: 'string', default: '200' } } });
  const folder = mkdtempSync(join(tmpdir(), 'wefthouse-faults-'));
  try {
    const isOrdered = await showOrder(folder);
    const isSound = await killMany(join(folder, 'killed'), Number(values.kills));
    if (!isOrdered || !isSound) process.exitCode = 1;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

await run(process.argv.slice(2));
