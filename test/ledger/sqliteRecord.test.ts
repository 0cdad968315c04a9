import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openDatabase } from '../../src/adapters/sqlite/database.ts';
import { canonicalJson, linkOf, sealOfText } from '../../src/dossier/seal.ts';
import { problemWords } from '../../src/text/problemWords.ts';
import { note, recorded } from '../support/ledgerPromises.ts';
import { openInFolder, throwAwayFolder } from '../support/openInFolder.ts';
import { rowOfNotes } from '../support/rowOfNote.ts';

let folder: string;
let remove: () => void;
let open: ReturnType<typeof openInFolder>;
beforeEach(() => {
  ({ folder, remove } = throwAwayFolder());
  open = openInFolder(folder, rowOfNotes);
});
afterEach(async () => {
  if (open.database.open) await open.done();
  remove();
});

const reopened = async () => {
  if (open.database.open) await open.done();
  open = openInFolder(folder, rowOfNotes);
  return open.ledger;
};
const notes = (stream: string, from: number, ...texts: string[]) => ({
  stream,
  expectedRevision: from,
  drafts: texts.map((text) => note(stream, text)),
});
const filesHold = (bytes: Buffer): readonly string[] =>
  readdirSync(folder).filter((name) => readFileSync(join(folder, name)).includes(bytes));

describe('what happens to the database outside this program is found:', () => {
  beforeEach(async () => {
    await recorded(open.ledger, notes('rug/a', 0, 'one', 'two', 'three'), notes('rug/b', 0, 'four', 'five'));
    await recorded(open.ledger, notes('client/k', 0, 'six'), notes('rug/a', 3, 'seven'));
    await open.done();
  });

  /** Does to the file what only someone with another program can do. */
  const tamper = (sql: string) => {
    const database = new Sqlite(join(folder, 'wefthouse.db'));
    database.exec(`drop trigger entry_is_never_changed; drop trigger entry_is_never_removed; ${sql}`);
    database.close();
  };
  const found = async () => (await (await reopened()).verify()).broken.map(({ facts }) => facts);

  test('nothing, when nothing happened', async () => {
    tamper('');
    expect(await found()).toEqual([]);
  });

  test.each([
    [
      'a changed fact',
      `update entry set body = replace(body, 'two', 'TWO') where stream = 'rug/a'`,
      'rug/a',
      2,
    ],
    ['a changed person', `update entry set recorded_by = 'other' where position = 1`, 'rug/a', 1],
    ['a changed time', `update entry set at = '2026-11-24T09:00:00.000Z' where position = 5`, 'rug/b', 2],
    [
      'a changed cipher text',
      `update entry set body = replace(body, 'text', 'next') where position = 6`,
      'client/k',
      1,
    ],
  ])('%s is an entry altered', async (_what, sql, stream, revision) => {
    tamper(sql);
    expect(await found()).toEqual([{ stream, revision, reason: 'entry-altered' }]);
    const alone = await open.ledger.verify(stream);
    expect(alone.broken.map(({ facts }) => facts)).toEqual([{ stream, revision, reason: 'entry-altered' }]);
  });

  test('an entry taken out of the middle is missed', async () => {
    tamper('delete from entry where position = 2');
    expect(await found()).toContainEqual({ stream: 'rug/a', revision: 2, reason: 'entry-missing' });
  });

  test('the last entry of a stream taken out is missed', async () => {
    tamper('delete from entry where position = 5');
    expect(await found()).toContainEqual({ stream: 'client/k', revision: 1, reason: 'order-altered' });
  });

  test('a whole stream taken out is missed', async () => {
    tamper(`delete from entry where stream = 'rug/b'`);
    expect(await found()).toContainEqual({ stream: 'client/k', revision: 1, reason: 'order-altered' });
  });

  test('a tail cut off is missed, and stays missed after more is recorded', async () => {
    tamper('delete from entry where position = 7');
    const cut = { stream: '', revision: 7, reason: 'end-missing' };
    expect(await found()).toEqual([cut]);
    await recorded(open.ledger, notes('rug/a', 3, 'in its place'));
    expect(await found()).toEqual([cut]);
    const [broken] = (await open.ledger.verify()).broken;
    expect(broken === undefined ? '' : problemWords(broken).happened).toContain('no longer holds it');
  });

  test('a record sealed anew from a changed entry on is found by the head outside', async () => {
    const database = new Sqlite(join(folder, 'wefthouse.db'));
    database.exec('drop trigger entry_is_never_changed');
    const seals = new Map<string, string>();
    let link = '';
    for (const entry of database
      .prepare('select *, recorded_by as "by" from entry order by position')
      .all()) {
      const { position, ...frame } = entry as Parameters<typeof sealOfText>[0] & {
        position: number;
        body: string;
      };
      const body = frame.body.replace('two', 'TWO');
      const seal = sealOfText(frame, body, seals.get(frame.stream) ?? '');
      seals.set(frame.stream, seal);
      link = linkOf(link, seal);
      database
        .prepare('update entry set body = ?, seal = ?, link = ? where position = ?')
        .run(body, seal, link, position);
    }
    database.close();
    expect(await found()).toEqual([{ stream: '', revision: 7, reason: 'end-missing' }]);
  });
});

test('the database itself refuses to change, remove or replace an entry', async () => {
  await recorded(open.ledger, notes('rug/a', 0, 'one'));
  const attempt = (sql: string) => () => open.database.exec(sql);
  expect(attempt('update entry set body = body')).toThrow('an entry is never changed');
  expect(attempt('delete from entry')).toThrow('an entry is never removed');
  expect(attempt('insert or replace into entry select * from entry')).toThrow('an entry is never removed');
  expect(await open.ledger.read('rug/a')).toHaveLength(1);
});

test('after a restart everything is there, and clients are found by name', async () => {
  await recorded(open.ledger, notes('client/k', 0, 'Zeynep Çelebi'), notes('rug/a', 0, 'red'));
  await recorded(open.ledger, {
    stream: 'rug/b',
    expectedRevision: 0,
    drafts: [note('rug/b', 'blue', { client: 'k' })],
  });
  const before = canonicalJson([await open.ledger.read('client/k'), await open.ledger.read('rug/b')]);
  const ledger = await reopened();
  expect(canonicalJson([await ledger.read('client/k'), await ledger.read('rug/b')])).toBe(before);
  expect((await ledger.list({ kind: 'rug', find: 'zey', limit: 9 })).map(({ stream }) => stream)).toEqual([
    'rug/b',
  ]);
  expect((await ledger.verify()).broken).toEqual([]);
});

test('no file ever holds a client’s name readable, and none holds the key once the client is erased', async () => {
  const streams = Array.from({ length: 200 }, (_, at) => `client/${at}`);
  for (const stream of streams) {
    await recorded(open.ledger, notes(stream, 0, 'Zeynep Çelebi'), notes(`rug/${stream.slice(7)}`, 0, 'red'));
  }
  const keys = open.database.prepare('select stream, secret from client_key').all() as {
    stream: string;
    secret: Buffer;
  }[];
  expect(keys).toHaveLength(200);
  const everyThird = keys.filter((_, at) => at % 3 === 0);
  expect(everyThird.every(({ secret }) => filesHold(secret).length > 0)).toBe(true);
  for (const { stream } of everyThird) {
    expect((await open.ledger.eraseClient(stream)).ok).toBe(true);
  }
  expect(filesHold(Buffer.from('Zeynep'))).toEqual([]);
  expect(everyThird.filter(({ secret }) => filesHold(secret).length > 0)).toEqual([]);
  const ledger = await reopened();
  expect((await ledger.read('client/0'))[0]?.fact).toEqual({ type: 'ClientErased' });
  expect((await ledger.list({ kind: 'client', find: 'zeynep', limit: 500 })).length).toBe(
    200 - everyThird.length,
  );
  expect((await ledger.verify()).broken).toEqual([]);
});

test('while another program still reads the log, erasing says that it is not done, and can be asked again', async () => {
  await recorded(open.ledger, notes('client/k', 0, 'Zeynep Çelebi'));
  open.database.pragma('busy_timeout = 50');
  const reader = new Sqlite(join(folder, 'wefthouse.db'));
  reader.exec('begin');
  reader.prepare('select count(*) from entry').get();
  expect((await open.ledger.eraseClient('client/k')).ok).toBe(false);
  expect((await open.ledger.read('client/k'))[0]?.fact).toEqual({ type: 'ClientErased' });
  reader.exec('commit');
  reader.close();
  expect(await open.ledger.eraseClient('client/k')).toEqual({ ok: true, value: null });
});

test('rows made anew equal the kept rows byte for byte, whatever had become of them', async () => {
  for (let at = 0; at < 60; at += 1) {
    const stream = `${['rug', 'room', 'client'][at % 3]}/${at}`;
    await recorded(open.ledger, notes(stream, 0, `word${at}`, 'ö “x”'));
    if (at % 2 === 0) await recorded(open.ledger, notes(stream, 2, 'later'));
  }
  const dump = () =>
    JSON.stringify(open.database.prepare('select * from list_row order by stream').raw().all());
  const kept = dump();
  expect(kept).toContain('word57');
  expect(kept).not.toContain('word2"');
  open.database.exec(`delete from list_row where stream < 'rug/3'; update list_row set words = 'wrong'`);
  expect(await open.ledger.rebuild()).toEqual({ rows: 40 });
  expect(dump()).toBe(kept);
  expect(await open.ledger.list({ kind: 'rug', find: 'wrong', limit: 5 })).toEqual([]);
  expect(await open.ledger.list({ kind: 'rug', find: 'word57', limit: 5 })).toHaveLength(1);
});

test('two programs on one folder see each other’s entries and conflict like two tablets', async () => {
  const other = openInFolder(folder, rowOfNotes);
  await recorded(open.ledger, notes('rug/a', 0, 'ours'));
  expect((await other.ledger.list({ kind: 'rug', find: 'ours', limit: 1 })).length).toBe(1);
  expect((await other.ledger.append([notes('rug/a', 0, 'theirs')])).ok).toBe(false);
  await recorded(other.ledger, notes('rug/a', 1, 'theirs'));
  expect(await open.ledger.read('rug/a')).toHaveLength(2);
  await recorded(open.ledger, notes('rug/a', 2, 'ours again'));
  expect((await other.ledger.verify()).broken).toEqual([]);
  await other.done();
});

describe('when the store cannot be written, nothing is recorded and the reason is said:', () => {
  const refusedWith = (reason: string) => ({
    ok: false,
    problem: { code: 'record-unavailable', facts: { reason } },
  });

  test('another program holds the database', async () => {
    open.database.pragma('busy_timeout = 50');
    const other = new Sqlite(join(folder, 'wefthouse.db'));
    other.exec('begin immediate');
    expect(await open.ledger.append([notes('rug/a', 0, 'one')])).toEqual(refusedWith('locked'));
    other.exec('rollback');
    other.close();
    expect((await open.ledger.append([notes('rug/a', 0, 'one')])).ok).toBe(true);
  });

  test('the disk is full', async () => {
    await recorded(open.ledger, notes('rug/a', 0, 'one'));
    const pages = Number(open.database.pragma('page_count', { simple: true }));
    open.database.pragma(`max_page_count = ${pages}`);
    const long = 'x'.repeat(100_000);
    const both = await Promise.all(
      [notes('rug/a', 1, 'short'), notes('rug/b', 0, long)].map((each) => open.ledger.append([each])),
    );
    expect(both).toEqual([refusedWith('disk-full'), refusedWith('disk-full')]);
    expect(await open.ledger.read('rug/a')).toHaveLength(1);
    open.database.pragma('max_page_count = 1000000');
    await recorded(open.ledger, notes('rug/b', 0, long));
    expect((await open.ledger.verify()).broken).toEqual([]);
  });

  test('the file is no database, or is from a later version, or the folder is a file', async () => {
    await open.done();
    const opened = (path: string, ...more: Parameters<typeof openDatabase>[1][]) =>
      openDatabase(path, ...more);
    expect(opened(folder, [])).toEqual(refusedWith('newer-version'));
    const file = join(folder, 'file');
    writeFileSync(file, 'x');
    expect(opened(file)).toEqual(refusedWith('not-writable'));
    rmSync(join(folder, 'wefthouse.db'));
    writeFileSync(join(folder, 'wefthouse.db'), 'this is no database at all '.repeat(400));
    expect(opened(folder)).toEqual(refusedWith('damaged'));
  });
});

test('a step of the schema that fails leaves the steps before it and nothing of itself', () => {
  const { folder: other, remove: removeOther } = throwAwayFolder();
  const steps = [
    { number: 1, name: 'first', sql: 'create table first (a text)' },
    { number: 2, name: 'second', sql: 'create table second (a text); create table first (a text)' },
  ];
  expect(() => openDatabase(other, steps)).toThrow('already exists');
  const repaired = openDatabase(other, [
    ...steps.slice(0, 1),
    { number: 2, name: 'second', sql: 'create table second (b text)' },
  ]);
  expect(repaired.ok).toBe(true);
  if (repaired.ok) {
    const made = repaired.value.database
      .prepare('select number, name from migration order by number')
      .raw()
      .all();
    expect(made).toEqual([
      [1, 'first'],
      [2, 'second'],
    ]);
    repaired.value.database.close();
  }
  removeOther();
});

/** Commits in the write-ahead log: frames whose header gives the size of the database (SQLite file format, 4.1). */
function commitsInLog(): number {
  const log = readFileSync(join(folder, 'wefthouse.db-wal'));
  const frameBytes = 24 + log.readUInt32BE(8);
  let commits = 0;
  for (let at = 32; at + frameBytes <= log.length; at += frameBytes) {
    if (log.readUInt32BE(at + 4) > 0) commits += 1;
  }
  return commits;
}

test('what one turn of the event loop asks for shares one commit, each with its own outcome', async () => {
  const before = commitsInLog();
  const many = Array.from({ length: 50 }, (_, at) => notes(`rug/${at % 40}`, 0, `${at}`));
  const answers = await Promise.all(many.map((each) => open.ledger.append([each])));
  expect(answers.map(({ ok }) => ok)).toEqual(many.map((_, at) => at < 40));
  expect(commitsInLog()).toBe(before + 1);
  expect((await open.ledger.verify()).entries).toBe(40);
});
