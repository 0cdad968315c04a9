import { expect, test } from 'vitest';
import { findRug } from '../../src/app/findRug.ts';
import { listRowOf } from '../../src/app/listRow.ts';
import type { Terminal } from '../../src/cli/command.ts';
import { exportCommand } from '../../src/cli/export.ts';
import type { OpenStoreIn } from '../../src/cli/openStore.ts';
import { passphraseCommand } from '../../src/cli/passphrase.ts';
import { rebuildCommand } from '../../src/cli/rebuild.ts';
import { runCli } from '../../src/cli/runCli.ts';
import { type ServeWish, serveCommand } from '../../src/cli/serve.ts';
import { verifyCommand } from '../../src/cli/verify.ts';
import type { Entry } from '../../src/dossier/entry.ts';
import { done, refused } from '../../src/units/index.ts';
import { consignmentOf, draft, measured } from '../support/intake.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import { openInFolder, throwAwayFolder } from '../support/openInFolder.ts';
import { openedHouse, ownersPassphrase, Tablet } from '../support/tablet.ts';
import { unzip } from '../support/unzip.ts';

/** A terminal that remembers, and a store in memory that stays open between commands. */
function atTerminal(house = memoryHouse()) {
  const said: string[] = [];
  const complained: string[] = [];
  const written = new Map<string, Uint8Array>();
  const wishes: ServeWish[] = [];
  const terminal: Terminal = {
    print: (text) => said.push(text),
    complain: (text) => complained.push(text),
    readBytes: () => Promise.reject(new Error('no files here')),
    writeBytes: async (path, bytes) => void written.set(path, bytes),
  };
  const openStore: OpenStoreIn = async (directory) =>
    directory === 'missing'
      ? refused('store-missing', { folder: directory })
      : done({ house, backup: null, close: async () => {} });
  const commands = [
    verifyCommand(openStore),
    rebuildCommand(openStore),
    exportCommand(openStore),
    passphraseCommand(openStore),
    serveCommand(
      openStore,
      async (wish) => {
        wishes.push(wish);
        return done({ addresses: ['http://localhost:1'], fingerprint: null, close: async () => {} });
      },
      async () => {},
    ),
  ];
  const run = (...args: readonly string[]) => runCli(commands, args, terminal);
  return { house, run, said, complained, written, wishes };
}

async function withRug(house = memoryHouse()) {
  const { owner, app } = await openedHouse(house);
  const request = consignmentOf('41');
  await owner.post('/api/consignments', request);
  const rug = request.rugs[0]?.rug ?? '';
  await owner.post(`/api/rugs/${rug}/entries`, { expectedRevision: 2, drafts: [draft(measured)] });
  return { ...atTerminal(house), app, rug };
}

test('verify says what it checked and ends with 0 when all is sound', async () => {
  const { run, said } = await withRug();
  expect(await run('verify')).toBe(0);
  expect(said.join('\n')).toMatch(
    /^6 entries in 3 streams and 0 photographs checked; .*\nAll is as it was sealed\.$/,
  );
  expect(await run('verify', '41', '--json')).toBe(0);
  expect(JSON.parse(said.at(-1) ?? '')).toMatchObject({ sound: true, entries: 3, streams: 1 });
});

test('verify ends with 1 and names the entry when the record was changed behind its back', async () => {
  const { folder, remove } = throwAwayFolder();
  const { ledger, database, done: close } = openInFolder(folder, listRowOf);
  try {
    const { run, said, rug } = await withRug(memoryHouse({ ledger }));
    database.exec('drop trigger entry_is_never_changed');
    database
      .prepare("update entry set body = replace(body, 'General wash.', 'Repair only.') where stream = ?")
      .run(`rug/${rug}`);
    expect(await run('verify')).toBe(1);
    expect(said.join('\n')).toMatch(new RegExp(`Entry 2 of rug/${rug} is not what was sealed`));
    expect(said.join('\n')).toMatch(/NOT as it was sealed\.$/);
  } finally {
    await close();
    remove();
  }
});

test('verify names a photograph that an entry speaks of and the store no longer holds', async () => {
  const house = memoryHouse();
  const { rug, run, said } = await withRug(house);
  const photo = 'ab'.repeat(32);
  const fact = {
    type: 'PhotographTaken',
    photo,
    widthPx: 1,
    heightPx: 1,
    shows: 'face',
    occasion: 'intake',
  } as const;
  const entry: Omit<Entry, 'revision' | 'seal'> = {
    ...{ id: 'lost', stream: `rug/${rug}`, at: house.clock.now(), by: 'x', version: 1, fact },
  };
  await house.ledger.append([{ stream: `rug/${rug}`, expectedRevision: 3, drafts: [entry] }]);
  expect(await run('verify')).toBe(1);
  expect(said.join('\n')).toContain(`The photograph ${photo} is missing.`);
});

test('rebuild makes the rows anew and they are those that were kept', async () => {
  const { house, run, said } = await withRug();
  const before = await house.ledger.list({ kind: 'rug', limit: 10 });
  expect(await run('rebuild', '--json')).toBe(0);
  expect(JSON.parse(said.at(-1) ?? '')).toEqual({ rows: 1 });
  expect(await house.ledger.list({ kind: 'rug', limit: 10 })).toEqual(before);
});

test('export finds a rug by number, tag or id, and writes what another can check', async () => {
  const { house, run, written, rug, complained } = await withRug();
  for (const named of ['1', '41', rug]) expect(await findRug(house, named)).toEqual(done(rug));
  expect(await run('export', '1')).toBe(0);
  expect([...written.keys()]).toEqual(['dossier-0001.zip']);
  const files = await unzip(written.get('dossier-0001.zip') ?? new Uint8Array());
  expect([...files.keys()]).toContain('check.mjs');
  expect(await run('export', '77')).toBe(1);
  expect(complained.at(-1)).toMatch(/^There is no dossier 77 here\./);
  expect(await run('export')).toBe(2);
});

test('a new passphrase lets in whoever forgot theirs, and nobody with the old one', async () => {
  const { run, said, app } = await withRug();
  expect(await run('passphrase', 'mirela', '--json')).toBe(0);
  const { passphrase } = JSON.parse(said.at(-1) ?? '') as { readonly passphrase: string };
  const signIn = (secret: string) =>
    new Tablet(app).post('/api/sign-in', { name: 'Mirela', passphrase: secret });
  expect((await signIn(passphrase)).status).toBe(200);
  expect((await signIn(ownersPassphrase)).status).toBe(401);
  expect(await run('passphrase', 'Nobody')).toBe(1);
});

test('a store that is not there is refused in words, as JSON where that was asked for', async () => {
  const { run, said, complained } = atTerminal();
  for (const command of ['verify', 'rebuild', 'serve'])
    expect(await run(command, '--data', 'missing')).toBe(1);
  expect(complained[0]).toMatch(/^There is no Wefthouse store in missing\./);
  expect(await run('verify', '--data', 'missing', '--json')).toBe(1);
  expect(JSON.parse(said.at(-1) ?? '')).toMatchObject({ refused: { code: 'store-missing' } });
});

test('serve prints a code only until there is an owner', async () => {
  const empty = atTerminal();
  expect(await empty.run('serve')).toBe(0);
  expect(empty.said[0]).toMatch(/Open the address and give this code: {2}[0-9A-Z]{4}-[0-9A-Z]{4}\n/);
  const { run, said, wishes } = await withRug();
  expect(await run('serve')).toBe(0);
  expect(said[0]).not.toMatch(/code/);
  expect(wishes[0]).toMatchObject({ host: 'localhost', port: 8470, setUpCode: null, tls: { kind: 'none' } });
});

test('serve speaks TLS on the network unless told otherwise, and says which calls make no sense', async () => {
  const { run, wishes, complained } = atTerminal();
  await run('serve', '--host', '0.0.0.0', '--port', '0');
  expect(wishes[0]?.tls).toMatchObject({ kind: 'own' });
  await run('serve', '--host', '0.0.0.0', '--tls-cert', 'c.pem', '--tls-key', 'k.pem');
  expect(wishes[1]?.tls).toEqual({ kind: 'given', certificateFile: 'c.pem', keyFile: 'k.pem' });
  await run('serve', '--host', '0.0.0.0', '--no-tls');
  expect(wishes[2]?.tls).toEqual({ kind: 'none' });
  for (const wrong of [
    ['--tls-cert', 'c.pem'],
    ['--port', 'many'],
    ['--port', '70000'],
    ['--frob'],
    ['--tls-cert', 'c', '--tls-key', 'k', '--no-tls'],
  ]) {
    expect(await run('serve', ...wrong)).toBe(2);
  }
  expect(complained.every((text) => text.endsWith('wefthouse serve --help shows the form.'))).toBe(true);
  expect(wishes).toHaveLength(3);
});

test('every command explains itself', async () => {
  const { run, said } = atTerminal();
  for (const command of ['serve', 'verify', 'rebuild', 'export', 'passphrase']) {
    expect(await run(command, '--help')).toBe(0);
    expect(said.at(-1)).toMatch(new RegExp(`^wefthouse ${command} `));
  }
});
