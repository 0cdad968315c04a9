import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import Sqlite from 'better-sqlite3';
import { uuidv7 } from '../src/adapters/clock/uuidv7.ts';
import { openDatabase } from '../src/adapters/sqlite/database.ts';
import { migrations } from '../src/adapters/sqlite/migrations.ts';
import { SqliteLedger } from '../src/adapters/sqlite/sqliteLedger.ts';
import { prepareStatements } from '../src/adapters/sqlite/statements.ts';
import { rememberingListRowOf } from '../src/app/listRow.ts';
import type { StreamAppend } from '../src/ports/ledger.ts';
import { draftOf, rugFact } from './record/dossier.ts';
import { line, timed } from './record/figures.ts';
import { type Filled, fillStore } from './record/fillStore.ts';

const ids = uuidv7();

/** The ledger in a folder, and what closes both. */
function openAt(folder: string) {
  const opened = openDatabase(folder);
  if (!opened.ok) throw new Error(opened.problem.code);
  const ledger = new SqliteLedger(opened.value, rememberingListRowOf());
  const close = async () => {
    await ledger.close();
    opened.value.database.close();
  };
  return { ledger, close, database: opened.value.database };
}

async function inFolder(work: (folder: string) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'wefthouse-bench-'));
  try {
    await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Appends against bare durable inserts of as many bytes, in turns, so that both meet the same machine. */
async function benchAppend(folder: string): Promise<void> {
  const { ledger, close, database } = openAt(folder);
  const plan = { client: ids.next(), visit: ids.next(), consignment: ids.next(), inHouse: true };
  const length = 60;
  let made = 0;
  const appends: StreamAppend[][] = Array.from({ length: 40 }, (_, number) => {
    const stream = `rug/${ids.next()}`;
    return Array.from({ length }, (_, at) => ({
      stream,
      expectedRevision: at,
      drafts: [draftOf(stream, ids.next(), made++, rugFact({ ...plan, number }, at, length))],
    }));
  });

  const bare = new Sqlite(join(folder, 'bare.db'));
  bare.pragma('journal_mode = WAL');
  bare.pragma('synchronous = FULL');
  bare.exec('create table bare (position integer primary key not null, body text not null)');
  const insert = bare.prepare('insert into bare (body) values (?)');

  // Until a log has grown to its full length, each commit also lengthens a file; that is over after a while.
  for (let at = 0; at < 1500; at += 1) insert.run('x'.repeat(400));
  const alike = new Sqlite(join(folder, 'alike.db'));
  alike.pragma('journal_mode = WAL');
  alike.pragma('synchronous = FULL');
  for (const { sql } of migrations.slice(0, 1)) alike.exec(sql);
  const insertAlike = prepareStatements(alike).addEntry;

  const turns: Record<'ours' | 'bare' | 'alike', number>[] = [];
  let bytes = 0;
  for (const dossier of appends) {
    const ours = await timed(dossier, (append) => ledger.append([append]));
    const rows = prepareStatements(database).entriesOf.all(dossier[0]?.stream ?? '');
    const texts = rows.map((row) => Object.values(row).join(''));
    bytes += texts.reduce((sum, text) => sum + text.length, 0);
    const others = await timed(texts, (text) => insert.run(text));
    const same = await timed(rows, (row) => insertAlike.run(row));
    turns.push({ ours: ours.p50, bare: others.p50, alike: same.p50 });
  }
  turns.splice(0, turns.length / 4);
  const middle = (of: 'ours' | 'bare' | 'alike') =>
    turns.map((each) => each[of]).sort((a, b) => a - b)[turns.length / 2] ?? 0;
  const ratio = (of: 'bare' | 'alike') => (middle('ours') / middle(of)).toFixed(2);
  console.log(
    [
      `append, one at a time: ${middle('ours').toFixed(3)} ms`,
      `  bare durable insert of the same ${Math.round(bytes / made)} bytes: ${middle('bare').toFixed(3)} ms, ratio ${ratio('bare')} (target 2 or less)`,
      `  bare durable insert of the same row into such a table: ${middle('alike').toFixed(3)} ms, ratio ${ratio('alike')}`,
    ].join('\n'),
  );
  alike.close();

  const together = Array.from({ length: 50 }, () =>
    Array.from({ length: 10 }, () => {
      const stream = `rug/${ids.next()}`;
      const fact = rugFact({ ...plan, number: 1 }, 0, 9);
      return { stream, expectedRevision: 0, drafts: [draftOf(stream, ids.next(), 1, fact)] };
    }),
  );
  const ten = await timed(together, (batch) => Promise.all(batch.map((each) => ledger.append([each]))));
  console.log(
    `ten appends at once: ${(ten.mean / 10).toFixed(3)} ms each; ratio ${(ten.mean / 10 / middle('bare')).toFixed(2)}`,
  );
  bare.close();
  await close();
}

/** Gives the database file's pages back to the disk, where the tool for it is there. */
function forgetFile(path: string): boolean {
  try {
    execFileSync('dd', [`if=${path}`, 'iflag=nocache', 'count=0'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

async function benchReading(folder: string, rugs: number, entries: number): Promise<void> {
  const begun = performance.now();
  const seconds = (since: number) => `${((performance.now() - since) / 1000).toFixed(1)} s`;
  const filled: Filled = await fillStore(folder, { rugs, entries, longDossiers: 300, ids });
  const size = (statSync(join(folder, 'wefthouse.db')).size / 1e9).toFixed(2);
  console.log(
    `store of ${rugs} rugs, ${filled.entries} entries, ${filled.clients} clients: ${size} GB, filled in ${seconds(begun)}`,
  );

  const rebuildBegun = performance.now();
  const first = openAt(folder);
  console.log(`rebuild: ${(await first.ledger.rebuild()).rows} rows in ${seconds(rebuildBegun)}`);
  await first.close();

  const heap = () => {
    globalThis.gc?.();
    return process.memoryUsage().heapUsed / 1e6;
  };
  const heapBefore = heap();
  const openBegun = performance.now();
  const { ledger, close } = openAt(folder);
  const opened = seconds(openBegun);
  console.log(`opening the store, index and all: ${opened}, ${Math.round(heap() - heapBefore)} MB of heap`);

  if (forgetFile(join(folder, 'wefthouse.db'))) {
    const cold = await timed(filled.long, (stream) => ledger.read(stream));
    console.log(line('open a dossier of 300 entries, file not in memory', cold));
  }
  // A second ledger on the folder, since the first one remembers the dossiers it has just read.
  const second = openAt(folder);
  const warm = await timed(filled.long, (stream) => second.ledger.read(stream));
  console.log(line('open a dossier of 300 entries, file in memory', warm));
  await second.close();

  // Only a rug in the house has a tag; one in 500 is.
  const tagInHouse = (number: number) => `T${(number - (number % 500)) % 10_000}`;
  const places = Array.from({ length: 300 }, (_, at) => (at * 7919) % rugs);
  const search = async (what: string, query: (number: number) => Parameters<typeof ledger.list>[0]) => {
    let found = 0;
    const figures = await timed(places, async (number) => {
      found += (await ledger.list(query(number))).length;
    });
    console.log(`${line(`search ${what}`, figures)} ${(found / places.length).toFixed(1)} rows each`);
  };
  const kind = 'rug' as const;
  const limit = 50;
  await search('by tag', (number) => ({ kind, limit, tag: tagInHouse(number) }));
  await search('by client', (number) => ({ kind, limit, client: filled.clientOf(number) }));
  await search('by the client’s name', (number) => ({ kind, limit, find: filled.nameOf(number) }));
  await search('by one word', (number) => ({
    kind,
    limit,
    find: ['madder', 'kil', 'prayer', 'ind'][number % 4] ?? '',
  }));
  await search('by two words', (number) => ({
    kind,
    limit,
    find: ['rose bot', 'camel mat', 'w hunt'][number % 3] ?? '',
  }));
  await search('by a name and a word', (number) => ({
    kind,
    limit,
    find: `${filled.nameOf(number)} madder`,
  }));
  await search('by a word that is nowhere', () => ({ kind, limit, find: 'zzz' }));
  await search('of what is in the house, by place', (number) => ({
    kind,
    limit,
    inHouse: true,
    place: `shelf ${number % 40}`,
  }));
  await search('for clients by name', (number) => ({ kind: 'client', limit, find: filled.nameOf(number) }));

  const verifyBegun = performance.now();
  const { broken, entries: checked } = await ledger.verify();
  console.log(`verify: ${checked} entries in ${seconds(verifyBegun)}, ${broken.length} broken seals`);
  await close();
}

export async function run(args: readonly string[]): Promise<void> {
  const { values } = parseArgs({ args: [...args], options: { small: { type: 'boolean', default: false } } });
  const [rugs, entries] = values.small ? [2000, 150_000] : [100_000, 5_000_000];
  await inFolder(benchAppend);
  await inFolder((folder) => benchReading(folder, rugs, entries));
}

await run(process.argv.slice(2));
