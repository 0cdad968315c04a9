import { createHash } from 'node:crypto';
import type { KeptPapers } from '../../ports/keptPapers.ts';

/** Kept papers that last as long as the process. */
export function memoryKeptPapers(): KeptPapers {
  const papers = new Map<string, Uint8Array>();
  return {
    async keep(client, bytes) {
      const name = createHash('sha256').update(bytes).digest('hex');
      papers.set(`${client}/${name}`, bytes);
      return name;
    },
    read: async (client, sha256) => papers.get(`${client}/${sha256}`) ?? null,
    async erase(client) {
      for (const name of papers.keys()) if (name.startsWith(`${client}/`)) papers.delete(name);
    },
  };
}
