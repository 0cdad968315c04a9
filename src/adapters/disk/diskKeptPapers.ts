import { createHash, randomUUID } from 'node:crypto';
import { open, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { KeptPapers } from '../../ports/keptPapers.ts';
import { makeFolder, syncFolder } from './folder.ts';

const isId = (text: string): boolean => /^[0-9A-Za-z][0-9A-Za-z_-]{0,63}$/.test(text);

/** Papers in one folder per client, each under the hash of its bytes, so that erasing a client takes them all. */
export function diskKeptPapers(folder: string): KeptPapers {
  makeFolder(folder);
  return {
    async keep(client, bytes) {
      if (!isId(client)) throw new Error(`${client} is no client's id`);
      const name = createHash('sha256').update(bytes).digest('hex');
      const beside = join(folder, client);
      makeFolder(beside);
      const onItsWay = join(beside, `.${randomUUID()}`);
      const file = await open(onItsWay, 'wx', 0o600);
      try {
        await file.writeFile(bytes);
        await file.sync();
      } finally {
        await file.close();
      }
      await rename(onItsWay, join(beside, `${name}.pdf`));
      syncFolder(beside);
      return name;
    },
    async read(client, sha256) {
      if (!isId(client) || !/^[0-9a-f]{64}$/.test(sha256)) return null;
      return readFile(join(folder, client, `${sha256}.pdf`)).catch((error: NodeJS.ErrnoException) => {
        if (error.code === 'ENOENT') return null;
        throw error;
      });
    },
    async erase(client) {
      if (!isId(client)) return;
      await rm(join(folder, client), { recursive: true, force: true });
      syncFolder(folder);
    },
  };
}
