import { parseArgs } from 'node:util';
import { changeSecret } from '../app/people.ts';
import { personNamed } from '../app/signIn.ts';
import { readWorkshop } from '../app/workshop.ts';
import { problemWords } from '../text/problemWords.ts';
import { type Command, printRefusal, WrongCall } from './command.ts';
import { type OpenStoreIn, usualFolder } from './openStore.ts';

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
    const [name, ...more] = positionals;
    if (name === undefined || more.length > 0) throw new WrongCall('Name one person.');
    const opened = await openStore(values.data, { serving: false });
    if (!opened.ok) return printRefusal(opened.problem, problemWords, values.json, terminal);
    const { house, close } = opened.value;
    try {
      const person = personNamed(await readWorkshop(house), name);
      const passphrase = `${house.secrets.spokenCode()}-${house.secrets.spokenCode()}`;
      const changed =
        person === undefined
          ? ({ ok: false, problem: { code: 'person-unknown', facts: { person: name } } } as const)
          : await changeSecret(house, person.person, null, { passphrase });
      if (!changed.ok) return printRefusal(changed.problem, problemWords, values.json, terminal);
      terminal.print(
        values.json
          ? JSON.stringify({ name, passphrase })
          : `${name} now signs in with:  ${passphrase}\nChange it on the page People after signing in.`,
      );
      return 0;
    } finally {
      await close();
    }
  },
});
