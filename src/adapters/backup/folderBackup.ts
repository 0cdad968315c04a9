import { createReadStream } from 'node:fs';
import { mkdtemp, readdir, readFile, rm, stat } from 'node:fs/promises';
import { join, relative } from 'node:path';
import type { Database } from 'better-sqlite3';
import type { ArchiveFile, Archiver } from '../../ports/archiver.ts';
import type { Backup } from '../../ports/backup.ts';
import type { Clock } from '../../ports/clock.ts';

const readme = `A backup of a Wefthouse store.

To use it: unpack it into an empty folder, and start Wefthouse on that folder:
  npx wefthouse verify --data FOLDER
  npx wefthouse serve --data FOLDER

It holds everything: the record with its keys, the accounts, all photographs and kept papers. Whoever has it
can read every client's data, so keep it where you would keep the keys of the house. A client erased after
this backup was made is still in it.
`;

/** Names that stand in the folder only while something is under way. */
const passing = (name: string): boolean => /(^|\/)(incoming|backup-[^/]*|\.[^/]*)(\/|$)/.test(name);

/**
 * The folder of a store as one archive. The database is copied by its own online backup; the outside head is
 * read before that, so that the copy holds at least what the head names; photographs only ever get more.
 */
export function folderBackup(
  directory: string,
  database: Database,
  archiver: Archiver,
  clock: Clock,
): Backup {
  return {
    async make() {
      const at = clock.now();
      const text = (name: string, content: string | Uint8Array): ArchiveFile => ({
        ...{ name, at, press: true },
        open: async () => (typeof content === 'string' ? new TextEncoder().encode(content) : content),
      });
      const head = await readFile(join(directory, 'wefthouse.head')).catch(() => null);
      const apart = await mkdtemp(join(directory, 'backup-'));
      try {
        await database.backup(join(apart, 'wefthouse.db'));
      } catch (error) {
        await rm(apart, { recursive: true, force: true });
        throw error;
      }
      const names: string[] = [];
      for (const found of await readdir(directory, { recursive: true, withFileTypes: true })) {
        const name = relative(directory, join(found.parentPath, found.name)).replaceAll('\\', '/');
        if (found.isFile() && name.includes('/') && !passing(name)) names.push(name);
      }
      const files: ArchiveFile[] = [
        text('READ-ME.txt', readme),
        ...(head === null ? [] : [text('wefthouse.head', head)]),
        fileOf(join(apart, 'wefthouse.db'), 'wefthouse.db', at, true),
        ...names.sort().map((name) => fileOf(join(directory, name), name, at, false)),
      ];
      return endingWith(archiver.zip(files), () => rm(apart, { recursive: true, force: true }));
    },
  };
}

const fileOf = (path: string, name: string, at: string, press: boolean): ArchiveFile => ({
  ...{ name, at, press },
  open: async () => {
    await stat(path);
    return createReadStream(path);
  },
});

/** The same pieces, with something done at the end, also when nobody wants them any more. */
async function* endingWith(
  pieces: AsyncIterable<Uint8Array>,
  end: () => Promise<void>,
): AsyncIterable<Uint8Array> {
  try {
    yield* pieces;
  } finally {
    await end();
  }
}
