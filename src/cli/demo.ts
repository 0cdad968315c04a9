import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { demoPassphrase, demoPeople } from '../demo/story/people.ts';
import { demoRugs, tellDemo } from '../demo/tellDemo.ts';
import type { Pictures } from '../ports/pictures.ts';
import { type Command, printRefusal } from './command.ts';
import type { OpenStoreIn } from './openStore.ts';
import { announcement, asPort, type StartServer, serveUntilStopped, type UntilStopped } from './serve.ts';

const help = `wefthouse demo [--port N] [--json]

Starts an invented workshop with invented people and rugs in every state, in a folder that is thrown away
when it stops. Nothing of it ever reaches a real store.

--port N  port (usual: 8471; 0 takes any that is free)
--json    print the address as JSON`;

const people = Object.values(demoPeople)
  .map(({ name, roles, pin }) => `  ${name.padEnd(16)} ${roles.join(', ').padEnd(14)} PIN ${pin}`)
  .join('\n');

const signIn = `Everybody signs in with the passphrase:  ${demoPassphrase}\n${people}`;

/** The demo of an invented workshop. */
export const demoCommand = (
  openStore: OpenStoreIn,
  startServer: StartServer,
  untilStopped: UntilStopped,
  rasterise: (svg: string) => Promise<Uint8Array>,
  pictures: Pictures,
): Command => ({
  name: 'demo',
  summary: 'start an invented workshop with rugs in every state',
  help,
  async run(args, terminal) {
    const { values } = parseArgs({
      args: [...args],
      options: { port: { type: 'string', default: '8471' }, json: { type: 'boolean', default: false } },
    });
    const port = asPort(values.port);
    const folder = await mkdtemp(join(tmpdir(), 'wefthouse-demo-'));
    try {
      const opened = await openStore(folder, { serving: true });
      if (!opened.ok) return printRefusal(opened.problem, values.json, terminal);
      const store = opened.value;
      try {
        let told = 0;
        let instant = store.house.clock.now();
        terminal.complain(`Telling the stories of ${demoRugs.length} rugs …`);
        await tellDemo({
          house: { ...store.house, clock: { now: () => instant } },
          setClock: (next) => {
            instant = next;
          },
          opensAt: instant,
          rasterise,
          pictures,
          told: (words) => {
            told += 1;
            terminal.complain(`${String(told).padStart(3)} of ${demoRugs.length}  ${words}`);
          },
        });
        const { complain } = terminal;
        return await serveUntilStopped(
          () =>
            startServer({ store, host: 'localhost', port, tls: { kind: 'none' }, setUpCode: null, complain }),
          untilStopped,
          (serving) =>
            terminal.print(
              values.json
                ? JSON.stringify({ address: serving.addresses[0], passphrase: demoPassphrase })
                : announcement(serving, null, signIn),
            ),
          values.json,
          terminal,
        );
      } finally {
        await store.close();
      }
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  },
});
