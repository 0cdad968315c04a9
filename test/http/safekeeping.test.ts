import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { folderBackup } from '../../src/adapters/backup/folderBackup.ts';
import { systemClock } from '../../src/adapters/clock/systemClock.ts';
import { diskKeptPapers } from '../../src/adapters/disk/diskKeptPapers.ts';
import { DiskPhotos } from '../../src/adapters/disk/diskPhotos.ts';
import { sqliteAccounts } from '../../src/adapters/sqlite/accounts.ts';
import { clientKeyIn } from '../../src/adapters/sqlite/clientKeys.ts';
import { yazlArchiver } from '../../src/adapters/zip/yazlArchiver.ts';
import { listRowOf } from '../../src/app/listRow.ts';
import { verifyStore } from '../../src/app/verifyStore.ts';
import { type RugFact, standingOf } from '../../src/dossier/index.ts';
import { consignmentOf, draft, measured, newId } from '../support/intake.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import { openInFolder, throwAwayFolder } from '../support/openInFolder.ts';
import { twoColours } from '../support/photoPromises.ts';
import { readPdf } from '../support/readPdf.ts';
import { appOf, openedHouse, ownersPassphrase, Tablet } from '../support/tablet.ts';
import { unzip } from '../support/unzip.ts';

let folder: string;
let remove: () => void;
beforeEach(() => {
  ({ folder, remove } = throwAwayFolder());
});
afterEach(() => remove());

/** A house on disk, as the real server has it. */
function diskHouse(directory: string) {
  const { ledger, database, done } = openInFolder(directory, listRowOf);
  const house = memoryHouse({
    ...{ ledger, accounts: sqliteAccounts(database), photos: new DiskPhotos(join(directory, 'photographs')) },
    keptPapers: diskKeptPapers(join(directory, 'shown-papers'), clientKeyIn(database)),
  });
  return { house, done, backup: folderBackup(directory, database, yazlArchiver, systemClock) };
}

async function rugWithPhotograph(owner: Tablet) {
  const sent = await owner.ask('/api/photographs', {
    method: 'POST',
    headers: { 'content-type': 'image/png' },
    body: new Uint8Array(await twoColours(60, 40).png().toBuffer()),
  });
  const { photo } = (await sent.json()) as { readonly photo: string };
  const request = consignmentOf('41');
  await owner.post('/api/consignments', request);
  const rug = request.rugs[0]?.rug ?? '';
  const shown = {
    type: 'PhotographTaken',
    photo,
    widthPx: 60,
    heightPx: 40,
    shows: 'face',
    occasion: 'intake',
  } as const;
  const recorded = await owner.post(`/api/rugs/${rug}/entries`, {
    expectedRevision: 2,
    drafts: [draft(shown), draft(measured)],
  });
  expect(recorded.status).toBe(200);
  return { rug, photo };
}

const bytesOf = async (response: Response) => new Uint8Array(await response.arrayBuffer());

const unpackInto = (directory: string, files: ReadonlyMap<string, Uint8Array>): void => {
  for (const [name, bytes] of files) {
    mkdirSync(dirname(join(directory, name)), { recursive: true });
    writeFileSync(join(directory, name), bytes);
  }
};

describe('an exported dossier', () => {
  test('can be checked by a stranger with Node alone, and shows when a word in it was changed', async () => {
    const { owner } = await openedHouse(memoryHouse());
    const { rug, photo } = await rugWithPhotograph(owner);
    const answer = await owner.ask(`/api/rugs/${rug}/export.zip`);
    expect(answer.headers.get('content-disposition')).toBe('attachment; filename="dossier-0001.zip"');
    const files = await unzip(await bytesOf(answer));
    expect([...files.keys()]).toEqual(
      expect.arrayContaining([
        'READ-ME.txt',
        'entries.json',
        'check.mjs',
        `photographs/${photo}.png`,
        'papers/receipt.pdf',
        'papers/whole-dossier.pdf',
      ]),
    );
    expect(readPdf(Buffer.from(files.get('papers/receipt.pdf') ?? [])).pages).toBeGreaterThan(0);
    unpackInto(folder, files);
    const check = () => spawnSync(process.execPath, [join(folder, 'check.mjs')], { encoding: 'utf8' });
    expect(check()).toMatchObject({ status: 0 });
    expect(check().stdout).toMatch(
      /^4 entries and their files are as they were sealed; last seal [0-9a-f]{64}/,
    );
    const entries = join(folder, 'entries.json');
    const text = readFileSync(entries, 'utf8');
    writeFileSync(entries, text.replace('General wash.', 'Repair.'));
    expect(check()).toMatchObject({ status: 1, stdout: expect.stringMatching(/^entry 2 was altered/) });
    writeFileSync(entries, text);
    writeFileSync(join(folder, 'photographs', `${photo}.png`), 'painted over');
    expect(check()).toMatchObject({ status: 1, stdout: expect.stringMatching(/png was altered/) });
  });

  test('comes with all the rest where a shown paper was altered on disk, and names that one', async () => {
    const keptPapers = diskKeptPapers(join(folder, 'kept'), () => new Uint8Array(32).fill(7));
    const house = memoryHouse({ keptPapers });
    const { owner } = await openedHouse(house);
    const { rug, photo } = await rugWithPhotograph(owner);
    const stream = `rug/${rug}`;
    const entries = await house.ledger.read(stream);
    const client = standingOf(entries).visits.at(-1)?.received.client ?? '';
    const paper = await keptPapers.keep(client, new TextEncoder().encode('the consent as it was shown'));
    const given: RugFact = {
      ...{ type: 'ConsentGiven', plan: 'a1b2', paper, risks: [] },
      notToExceed: { amountMinor: 9000, currency: 'EUR' },
      agreed: { how: 'letter or e-mail', words: 'I agree to the wash.' },
    };
    const entry = { id: newId(), fact: given, stream, at: house.clock.now(), by: 'mirela', version: 1 };
    const recorded = await house.ledger.append([
      { stream, expectedRevision: entries.length, drafts: [entry] },
    ]);
    expect(recorded.ok).toBe(true);
    const exported = async () => unzip(await bytesOf(await owner.ask(`/api/rugs/${rug}/export.zip`)));
    const shown = `shown/${paper}.pdf`;
    expect(new TextDecoder().decode((await exported()).get(shown))).toBe('the consent as it was shown');

    const sealed = join(folder, 'kept', client, `${paper}.sealed`);
    writeFileSync(sealed, readFileSync(sealed).fill(0, 20, 22));
    const files = await exported();
    expect(files.has(shown)).toBe(false);
    for (const name of [`photographs/${photo}.png`, 'papers/receipt.pdf', 'papers/whole-dossier.pdf'])
      expect(files.get(name)?.byteLength, name).toBeGreaterThan(0);
    const textOf = (name: string) => new TextDecoder().decode(files.get(name));
    expect(textOf('READ-ME.txt')).toContain(`LEFT OUT: ${shown}`);
    expect(JSON.parse(textOf('entries.json'))).toMatchObject({ papers: [], unsound: [shown] });
    unpackInto(folder, files);
    const checked = spawnSync(process.execPath, [join(folder, 'check.mjs')], { encoding: 'utf8' });
    expect(checked).toMatchObject({
      status: 1,
      stdout: expect.stringContaining(`${shown} could not be read`),
    });

    rmSync(sealed);
    writeFileSync(join(folder, 'kept', client, `${paper}.pdf`), 'another paper in its place');
    expect((await exported()).has(shown)).toBe(false);
  });
});

describe('a backup', () => {
  test('unpacked elsewhere it is the whole store: entries, photographs, people and their sign-in', async () => {
    const { house, done, backup } = diskHouse(folder);
    const { owner } = await openedHouse(house, { backup });
    const { rug, photo } = await rugWithPhotograph(owner);
    const answer = await owner.ask('/api/safekeeping/backup.zip');
    expect(answer.status).toBe(200);
    const files = await unzip(await bytesOf(answer));
    await done();
    const elsewhere = throwAwayFolder();
    try {
      unpackInto(elsewhere.folder, files);
      const restored = diskHouse(elsewhere.folder);
      const tablet = new Tablet(appOf(restored.house, { backup: restored.backup }));
      expect(
        (await tablet.post('/api/sign-in', { name: 'Mirela', passphrase: ownersPassphrase })).status,
      ).toBe(200);
      expect((await tablet.get(`/api/rugs/${rug}`)).body).toMatchObject({ client: { name: 'Halide Örn' } });
      expect((await tablet.ask(`/api/photographs/${photo}/original`)).status).toBe(200);
      const verified = await tablet.post('/api/safekeeping/verify');
      expect(verified.body).toMatchObject({ broken: [], photographs: { missing: [] } });
      await restored.done();
    } finally {
      elsewhere.remove();
    }
  });

  test('a long check of the record says how far it is: through the seals, then through the photographs', async () => {
    const { house, done, backup } = diskHouse(folder);
    const { owner } = await openedHouse(house, { backup });
    await rugWithPhotograph(owner);
    expect(await owner.get('/api/safekeeping/verify')).toMatchObject({ status: 200, body: null });
    const heard: unknown[] = [];
    const { entries } = await verifyStore(house, undefined, (progress) => heard.push(progress));
    expect(heard).toContainEqual({ doing: 'seals', done: entries, of: entries });
    expect(heard.at(-1)).toEqual({ doing: 'photographs', done: 0, of: 1 });
    await done();
  });

  test('is only for the owner, and a store in memory has none', async () => {
    const { owner } = await openedHouse(memoryHouse());
    expect(await owner.get('/api/safekeeping/backup.zip')).toMatchObject({
      status: 409,
      body: { code: 'backup-not-possible' },
    });
  });
});

describe('papers', () => {
  test('receipt, label and condition report are printed; a paper without ground says why; an unknown one names those there are', async () => {
    const { owner } = await openedHouse(memoryHouse());
    const { rug } = await rugWithPhotograph(owner);
    for (const path of ['papers/receipt.pdf', 'papers/condition-report.pdf', 'label.pdf']) {
      const answer = await owner.ask(`/api/rugs/${rug}/${path}`);
      expect(answer.headers.get('content-type')).toBe('application/pdf');
      const pdf = readPdf(Buffer.from(await bytesOf(answer)));
      expect({ path, accessible: pdf.accessible, pages: pdf.pages > 0 }).toEqual({
        path,
        accessible: true,
        pages: true,
      });
    }
    const incident = await owner.get(`/api/rugs/${rug}/papers/incident-report.pdf`);
    expect(incident).toMatchObject({ status: 409, body: { code: 'paper-has-no-ground' } });
    const novel = await owner.get(`/api/rugs/${rug}/papers/novel.pdf`);
    expect(novel).toMatchObject({ status: 404, body: { code: 'paper-unknown' } });
    expect(novel.body['now']).toMatch(/receipt, condition-report/);
  });
});

describe('kept papers', () => {
  test('are kept under their hash until their client is erased, in memory and on disk alike', async () => {
    const bytes = new TextEncoder().encode('a paper');
    const onDisk = diskKeptPapers(join(folder, 'papers'), () => new Uint8Array(32).fill(7));
    for (const papers of [memoryHouse().keptPapers, onDisk]) {
      const name = await papers.keep('c1', bytes);
      // SHA-256 of the two words, by another implementation: the check value of `sha256sum`.
      expect(name).toBe(execFileSync('sha256sum', { input: bytes, encoding: 'utf8' }).slice(0, 64));
      expect(Buffer.from((await papers.read('c1', name)) ?? []).toString()).toBe('a paper');
      expect(await papers.read('c2', name)).toBeNull();
      expect(await papers.read('../c1', name)).toBeNull();
      await papers.erase('c1');
      expect(await papers.read('c1', name)).toBeNull();
    }
  });

  test('lie encrypted under their client’s key, and say nothing once it is destroyed', async () => {
    let key: Uint8Array | null = new Uint8Array(32).fill(7);
    const papers = diskKeptPapers(folder, () => key);
    const name = await papers.keep('c1', new TextEncoder().encode('Ada Lindqvist agrees'));
    const [file = ''] = readdirSync(join(folder, 'c1'));
    expect(readFileSync(join(folder, 'c1', file)).includes('Ada')).toBe(false);
    key = new Uint8Array(32).fill(8);
    await expect(papers.read('c1', name)).rejects.toThrow();
    key = null;
    expect(await papers.read('c1', name)).toBeNull();
    await expect(papers.keep('c1', new Uint8Array(3))).rejects.toThrow('erased');
  });

  test('from before they were encrypted are still read, until their client is erased', async () => {
    const bytes = new TextEncoder().encode('an older paper');
    const name = execFileSync('sha256sum', { input: bytes, encoding: 'utf8' }).slice(0, 64);
    mkdirSync(join(folder, 'c1'));
    writeFileSync(join(folder, 'c1', `${name}.pdf`), bytes);
    let key: Uint8Array | null = new Uint8Array(32).fill(7);
    const papers = diskKeptPapers(folder, () => key);
    expect(Buffer.from((await papers.read('c1', name)) ?? []).toString()).toBe('an older paper');
    key = null;
    expect(await papers.read('c1', name)).toBeNull();
  });
});
