import { parseArgs } from 'node:util';
import type { Command } from './command.ts';
import { inStore, type OpenStoreIn, usualFolder } from './openStore.ts';

const help = `wefthouse rebuild [--data DIR] [--json]

Makes all lists anew from the entries. Nothing recorded is touched; lists that were sound stay the same.

--data DIR  folder of the store (usual: ${usualFolder})
--json      print JSON`;

export const rebuildCommand = (openStore: OpenStoreIn): Command => ({
  name: 'rebuild',
  summary: 'make all lists anew from the entries',
  help,
  async run(args, terminal) {
    const { values } = parseArgs({
      args: [...args],
      options: {
        data: { type: 'string', default: usualFolder },
        json: { type: 'boolean', default: false },
      },
    });
    return inStore(openStore, values, terminal, async (house) => {
      const rebuilt = await house.ledger.rebuild();
      terminal.print(values.json ? JSON.stringify(rebuilt) : `${rebuilt.rows} rows made anew.`);
      return 0;
    });
  },
});
