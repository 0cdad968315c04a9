import { existsSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { folderBackup } from './adapters/backup/folderBackup.ts';
import { systemClock } from './adapters/clock/systemClock.ts';
import { uuidv7 } from './adapters/clock/uuidv7.ts';
import { zxingCodes } from './adapters/codes/zxingCodes.ts';
import { diskKeptPapers } from './adapters/disk/diskKeptPapers.ts';
import { DiskPhotos } from './adapters/disk/diskPhotos.ts';
import { threadForecaster } from './adapters/forecast/threadForecaster.ts';
import { sharpPictures } from './adapters/images/sharpPictures.ts';
import { makePrinter } from './adapters/pdf/makePrinter.ts';
import { argonSecrets } from './adapters/secrets/argonSecrets.ts';
import { sqliteAccounts } from './adapters/sqlite/accounts.ts';
import { clientKeyIn } from './adapters/sqlite/clientKeys.ts';
import { openDatabase } from './adapters/sqlite/database.ts';
import { servingLock } from './adapters/sqlite/servingLock.ts';
import { SqliteLedger } from './adapters/sqlite/sqliteLedger.ts';
import { givenIdentity } from './adapters/tls/givenIdentity.ts';
import { localIdentity, ownHosts } from './adapters/tls/localAuthority.ts';
import { yazlArchiver } from './adapters/zip/yazlArchiver.ts';
import { rememberingListRowOf } from './app/listRow.ts';
import { blotCommand } from './cli/blot.ts';
import { cardCommand } from './cli/card.ts';
import type { Terminal } from './cli/command.ts';
import { compareCommand } from './cli/compare.ts';
import { convertCommand } from './cli/convert.ts';
import { demoCommand } from './cli/demo.ts';
import { dryCommand } from './cli/dry.ts';
import { exportCommand } from './cli/export.ts';
import { mixCommand } from './cli/mix.ts';
import type { OpenStoreIn } from './cli/openStore.ts';
import { passphraseCommand } from './cli/passphrase.ts';
import { planCommand } from './cli/plan.ts';
import { rebuildCommand } from './cli/rebuild.ts';
import { runCli } from './cli/runCli.ts';
import { isLoopback, type StartServer, serveCommand } from './cli/serve.ts';
import { verifyCommand } from './cli/verify.ts';
import { weaveCommand } from './cli/weave.ts';
import { listen } from './http/listen.ts';
import { makeApp } from './http/makeApp.ts';
import { readScreens } from './http/screens.ts';
import { done, refused } from './units/index.ts';

/** The screens' bundle lies beside the server's. */
const screensFolder = fileURLToPath(new URL('../ui', import.meta.url));

/** The thread that works out forecasts is a bundle of its own, beside the server's. */
const forecastScript = new URL('./forecastThread.js', import.meta.url);

const terminal: Terminal = {
  print: (text) => void process.stdout.write(`${text}\n`),
  complain: (text) => void process.stderr.write(`${text}\n`),
  readBytes: (path) => readFile(path),
  writeBytes: (path, bytes) => writeFile(path, bytes),
};

/** The store of a folder: the record and the accounts in SQLite, photographs and kept papers beside it. */
const openStore: OpenStoreIn = async (directory, { serving }) => {
  if (!serving && !existsSync(join(directory, 'wefthouse.db'))) {
    return refused('store-missing', { folder: directory });
  }
  const opened = openDatabase(directory);
  if (!opened.ok) return opened;
  const { database } = opened.value;
  const lock = serving ? servingLock(directory) : undefined;
  if (lock === null) {
    database.close();
    return refused('store-in-use', { folder: directory });
  }
  const ledger = new SqliteLedger(opened.value, rememberingListRowOf());
  const photos = new DiskPhotos(join(directory, 'photographs'));
  const keptPapers = diskKeptPapers(join(directory, 'shown-papers'), clientKeyIn(database));
  const forecaster = threadForecaster(forecastScript);
  const house = {
    ...{ ledger, photos, keptPapers, forecaster },
    ...{ accounts: sqliteAccounts(database), secrets: argonSecrets(), printer: makePrinter(photos) },
    ...{ codes: zxingCodes, archiver: yazlArchiver, clock: systemClock, ids: uuidv7() },
    timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  };
  return done({
    house,
    backup: folderBackup(directory, database, yazlArchiver, systemClock),
    async close() {
      await forecaster.close();
      await ledger.close();
      database.close();
      lock?.release();
    },
  });
};

/** Hosts a tablet on the network may try: addresses first, since not every network knows names. */
const announcedHosts = (hosts: readonly string[]): readonly string[] => {
  const reachable = hosts.filter((host) => !isLoopback(host) && !host.includes(':'));
  const isNumber = (host: string): boolean => /^[\d.]+$/.test(host);
  return [...reachable.filter(isNumber), ...reachable.filter((host) => !isNumber(host))];
};

const startServer: StartServer = async ({ store, host, port, tls, setUpCode, complain }) => {
  const screens = await readScreens(screensFolder);
  if (screens === null) return refused('screens-missing', { folder: screensFolder });
  const own = tls.kind === 'own' ? await localIdentity(tls.folder, new Date()) : null;
  const given = tls.kind === 'given' ? await givenIdentity(tls.certificateFile, tls.keyFile) : null;
  if (given?.ok === false) return given;
  const app = makeApp(store.house, {
    ...{ screens, setUpCode, backup: store.backup, secure: tls.kind !== 'none' },
    authority: own?.authority ?? null,
    complain: (error) => complain(error instanceof Error ? (error.stack ?? error.message) : String(error)),
  });
  const listening = await listen(app.fetch, { host, port, tls: own ?? given?.value ?? null });
  if (!listening.ok) return listening;
  const scheme = tls.kind === 'none' ? 'http' : 'https';
  const everywhere = host === '0.0.0.0' || host === '::';
  const best = everywhere ? announcedHosts(own?.hosts ?? ownHosts()) : [host];
  return done({
    addresses: best.map(
      (one) => `${scheme}://${one.includes(':') ? `[${one}]` : one}:${listening.value.port}`,
    ),
    fingerprint: own?.authority.fingerprint ?? null,
    close: listening.value.close,
  });
};

/** A drawing of the demo as a picture. */
const rasterise = async (svg: string): Promise<Uint8Array> =>
  sharp(Buffer.from(svg)).jpeg({ quality: 84 }).toBuffer();

const untilStopped = (): Promise<void> =>
  new Promise((stopped) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => stopped());
  });

const commands = [
  serveCommand(openStore, startServer, untilStopped),
  verifyCommand(openStore),
  rebuildCommand(openStore),
  exportCommand(openStore),
  passphraseCommand(openStore),
  demoCommand(openStore, startServer, untilStopped, rasterise, sharpPictures),
  planCommand,
  convertCommand,
  weaveCommand(sharpPictures, zxingCodes),
  cardCommand(sharpPictures, zxingCodes),
  blotCommand(sharpPictures, zxingCodes),
  compareCommand(sharpPictures, zxingCodes),
  mixCommand,
  dryCommand,
];

process.exitCode = await runCli(commands, process.argv.slice(2), terminal);
