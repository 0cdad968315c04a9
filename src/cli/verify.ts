import { parseArgs } from 'node:util';
import { findRug } from '../app/findRug.ts';
import { isSound, type StoreVerification, verifyStore } from '../app/verifyStore.ts';
import { problemWords } from '../text/problemWords.ts';
import { type Command, printRefusal } from './command.ts';
import { inStore, type OpenStoreIn, usualFolder } from './openStore.ts';

const help = `wefthouse verify [RUG] [--data DIR] [--json]

Checks every seal of the record, and every photograph that an entry names.

RUG         check one dossier only: its number, the tag it wears, or its id
--data DIR  folder of the store (usual: ${usualFolder})
--json      print JSON

Ends with 0 when all is as it was sealed, with 1 when it is not.`;

function lines({ streams, entries, headSeal, broken, photographs }: StoreVerification): readonly string[] {
  return [
    `${entries} entries in ${streams} streams and ${photographs.checked} photographs checked; last link ${headSeal || 'none'}`,
    ...broken.map((problem) => {
      const { happened, now } = problemWords(problem);
      return `${happened} ${now}`;
    }),
    ...photographs.missing.map((photo) => `The photograph ${photo} is missing.`),
    ...photographs.altered.map((photo) => `The photograph ${photo} is not what it was.`),
  ];
}

export const verifyCommand = (openStore: OpenStoreIn): Command => ({
  name: 'verify',
  summary: 'check all seals and photographs of a store',
  help,
  async run(args, terminal) {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        data: { type: 'string', default: usualFolder },
        json: { type: 'boolean', default: false },
      },
    });
    return inStore(openStore, values, terminal, async (house) => {
      const [named] = positionals;
      const rug = named === undefined ? undefined : await findRug(house, named);
      if (rug?.ok === false) return printRefusal(rug.problem, values.json, terminal);
      let saidAt = performance.now();
      const verified = await verifyStore(house, rug?.value, ({ doing, done, of }) => {
        if (performance.now() - saidAt < 1000) return;
        saidAt = performance.now();
        terminal.complain(
          `${doing === 'seals' ? 'entries' : 'dossiers with their photographs'}: ${done} of ${of}`,
        );
      });
      const sound = isSound(verified);
      terminal.print(
        values.json
          ? JSON.stringify({ sound, ...verified })
          : [...lines(verified), sound ? 'All is as it was sealed.' : 'NOT as it was sealed.'].join('\n'),
      );
      return sound ? 0 : 1;
    });
  },
});
