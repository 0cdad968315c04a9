import { createHash, randomUUID } from 'node:crypto';
import { open, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { KeptPapers } from '../../ports/keptPapers.ts';
import { decryptPaper, encryptPaper } from '../record/clientCipher.ts';
import { makeFolder, syncFolder } from './folder.ts';

const isId = (text: string): boolean => /^[0-9A-Za-z][0-9A-Za-z_-]{0,63}$/.test(text);

const unlessMissing = (error: NodeJS.ErrnoException): null => {
  if (error.code === 'ENOENT') return null;
  throw error;
};

/**
 * Papers in one folder per client, each under the hash of its bytes. They name the client, so they are encrypted
 * under the client's key: once it is destroyed, what a disk may still hold of a removed file says nothing.
 *
 * @param keyOf - the key of a client's stream; null when it was destroyed
 */
export function diskKeptPapers(folder: string, keyOf: (stream: string) => Uint8Array | null): KeptPapers {
  makeFolder(folder);
  return {
    async keep(client, bytes) {
      if (!isId(client)) throw new Error(`${client} is no client's id`);
      const name = createHash('sha256').update(bytes).digest('hex');
      const stream = `client/${client}`;
      const key = keyOf(stream);
      if (key === null) throw new Error(`client ${client} was erased`);
      const beside = join(folder, client);
      makeFolder(beside);
      const onItsWay = join(beside, `.${randomUUID()}`);
      const file = await open(onItsWay, 'wx', 0o600);
      try {
        await file.writeFile(encryptPaper(bytes, key, { stream, id: name }));
        await file.sync();
      } finally {
        await file.close();
      }
      await rename(onItsWay, join(beside, `${name}.sealed`));
      syncFolder(beside);
      return name;
    },
    async read(client, sha256) {
      if (!isId(client) || !/^[0-9a-f]{64}$/.test(sha256)) return null;
      const path = join(folder, client, sha256);
      const sealed = await readFile(`${path}.sealed`).catch(unlessMissing);
      // Papers kept before they were encrypted lie there as they were shown.
      const file = sealed ?? (await readFile(`${path}.pdf`).catch(unlessMissing));
      if (file === null) return null;
      const stream = `client/${client}`;
      const key = keyOf(stream);
      // Of an erased client nothing is shown, also where a file could not be removed.
      if (key === null) return null;
      return sealed === null ? file : decryptPaper(sealed, key, { stream, id: sha256 });
    },
    async erase(client) {
      if (!isId(client)) return;
      await rm(join(folder, client), { recursive: true, force: true });
      syncFolder(folder);
    },
  };
}
