import { parseArgs } from 'node:util';
import { exportRug } from '../app/exportRug.ts';
import { findRug } from '../app/findRug.ts';
import type { Actor } from '../app/house.ts';
import { type Command, printRefusal } from './command.ts';
import { inStore, type OpenStoreIn, usualFolder } from './openStore.ts';
import { theOnly } from './readArguments.ts';

const help = `wefthouse export RUG [--out FILE] [--data DIR] [--json]

Writes everything of one rug into a ZIP archive: its entries with their seals, its photographs, its papers,
and a small script that checks the seals without Wefthouse.

RUG         dossier number, the tag the rug wears, or its id
--out FILE  file to write (usual: dossier-NUMBER.zip here)
--data DIR  folder of the store (usual: ${usualFolder})
--json      print JSON`;

/** Who stands behind papers made from the terminal: nobody signed in there. */
const terminalActor: Actor = { person: 'terminal', name: 'the terminal', roles: [], proof: 'passphrase' };

export const exportCommand = (openStore: OpenStoreIn): Command => ({
  name: 'export',
  summary: 'write everything of one rug into an archive',
  help,
  async run(args, terminal) {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        out: { type: 'string' },
        data: { type: 'string', default: usualFolder },
        json: { type: 'boolean', default: false },
      },
    });
    const named = theOnly(positionals, 'Name one rug.');
    return inStore(openStore, values, terminal, async (house) => {
      const rug = await findRug(house, named);
      const exported = rug.ok ? await exportRug(house, terminalActor, rug.value) : rug;
      if (!exported.ok) return printRefusal(exported.problem, values.json, terminal);
      const parts: Uint8Array[] = [];
      for await (const part of exported.value.bytes) parts.push(part);
      const bytes = Buffer.concat(parts);
      const file = values.out ?? `${exported.value.name}.zip`;
      await terminal.writeBytes(file, bytes);
      terminal.print(
        values.json
          ? JSON.stringify({ file, bytes: bytes.byteLength })
          : `${file} written, ${(bytes.byteLength / 1e6).toFixed(1)} MB.`,
      );
      return 0;
    });
  },
});
