import { parseArgs } from 'node:util';
import { changeSecret } from '../app/people.ts';
import { personNamed } from '../app/signIn.ts';
import { readWorkshop } from '../app/workshop.ts';
import { type Command, printRefusal } from './command.ts';
import { inStore, type OpenStoreIn, usualFolder } from './openStore.ts';
import { theOnly } from './readArguments.ts';

const help = `wefthouse passphrase NAME [--data DIR] [--json]

Gives a person a new passphrase and prints it, for whoever has forgotten theirs. It ends all their sessions
and opens their name again if it was closed by wrong tries. Whoever can read the store's folder may do this.

NAME        the person's name, in quotes if it has spaces
--data DIR  folder of the store (usual: ${usualFolder})
--json      print JSON`;

export const passphraseCommand = (openStore: OpenStoreIn): Command => ({
  name: 'passphrase',
  summary: 'give a person who forgot theirs a new passphrase',
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
    const name = theOnly(positionals, 'Name one person.');
    return inStore(openStore, values, terminal, async (house) => {
      const person = personNamed(await readWorkshop(house), name);
      const passphrase = `${house.secrets.spokenCode()}-${house.secrets.spokenCode()}`;
      const changed =
        person === undefined
          ? ({ ok: false, problem: { code: 'person-unknown', facts: { person: name } } } as const)
          : await changeSecret(house, person.person, null, { passphrase });
      if (!changed.ok) return printRefusal(changed.problem, values.json, terminal);
      terminal.print(
        values.json
          ? JSON.stringify({ name, passphrase })
          : `${name} now signs in with:  ${passphrase}\nChange it on the page People after signing in.`,
      );
      return 0;
    });
  },
});
