import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { readWorkshop } from '../app/workshop.ts';
import type { Result } from '../units/index.ts';
import { type Command, type ExitCode, printRefusal, type Terminal, WrongCall } from './command.ts';
import { type OpenStore, type OpenStoreIn, usualFolder } from './openStore.ts';

/** What a server is started with. */
export interface ServeWish {
  readonly store: OpenStore;
  readonly host: string;
  readonly port: number;
  readonly setUpCode: string | null;
  /** `none`: plain http; `given`: PEM files; `own`: the workshop's own authority, kept in this folder. */
  readonly tls:
    | { readonly kind: 'none' }
    | { readonly kind: 'given'; readonly certificateFile: string; readonly keyFile: string }
    | { readonly kind: 'own'; readonly folder: string };
  readonly complain: (text: string) => void;
}

export interface Serving {
  /** Addresses at which it answers, the best first. */
  readonly addresses: readonly string[];
  /** Fingerprint of the workshop's own authority, where tablets must be told to trust it. */
  readonly fingerprint: string | null;
  readonly close: () => Promise<void>;
}

export type StartServer = (wish: ServeWish) => Promise<Result<Serving>>;

/** Answers when the process is asked to stop. */
export type UntilStopped = () => Promise<void>;

const usualPort = 8470;
export const isLoopback = (host: string): boolean => /^(localhost|127(\.\d+){3}|::1)$/.test(host);

const help = `wefthouse serve [--data DIR] [--port N] [--host ADDR] [--tls-cert FILE --tls-key FILE] [--no-tls] [--json]

Starts the workshop's server and prints its address. Ctrl+C stops it.

--data DIR      folder of the store, made when missing (usual: ${usualFolder})
--port N        port (usual: ${usualPort}; 0 takes any that is free)
--host ADDR     address to answer at. Usual is this machine alone (localhost); 0.0.0.0 is the whole network,
                and then with TLS, so that passphrases and cameras work on tablets
--tls-cert FILE certificate (PEM) and --tls-key FILE its key, for example from your own authority. Without
                them a network server makes an authority of its own in the store's folder and prints how
                tablets are told to trust it
--no-tls        plain http on the network: everybody on it can read along. Only behind a proxy that adds TLS
--json          print the address as JSON

The first start prints a one-time code, which makes the owner's account.`;

export const asPort = (text: string): number => {
  const port = Number(text);
  if (!/^\d+$/.test(text) || port > 65_535)
    throw new WrongCall(`--port is “${text}”, not a number from 0 to 65535.`);
  return port;
};

function tlsOf(
  host: string,
  directory: string,
  cert: string | undefined,
  key: string | undefined,
  plain: boolean,
): ServeWish['tls'] {
  if ((cert === undefined) !== (key === undefined)) {
    throw new WrongCall('--tls-cert and --tls-key only go together.');
  }
  if (cert !== undefined && key !== undefined) {
    if (plain) throw new WrongCall('--no-tls does not go with a certificate.');
    return { kind: 'given', certificateFile: cert, keyFile: key };
  }
  return plain || isLoopback(host) ? { kind: 'none' } : { kind: 'own', folder: resolve(directory, 'tls') };
}

const trustSteps = (address: string, fingerprint: string): string => `
Tablets must be told once to trust this workshop's own authority:
  1. On the tablet open ${address}/trust and go on past the warning, this once.
  2. Compare the fingerprint shown there with this one, letter by letter:
     ${fingerprint}
  3. Take the certificate from that page and install it as the page says; then load ${address} anew.
The authority can vouch for private addresses and this machine's names only.`;

/** The text a started server is announced with. */
export function announcement(
  { addresses, fingerprint }: Serving,
  setUpCode: string | null,
  stored: string,
): string {
  const [best = ''] = addresses;
  return [
    `Wefthouse is at ${addresses.join('  or  ')}`,
    stored,
    ...(setUpCode === null
      ? []
      : [`\nNobody has an account yet. Open the address and give this code:  ${setUpCode}`]),
    ...(fingerprint === null ? [] : [trustSteps(best, fingerprint)]),
    '\nCtrl+C stops it.',
  ].join('\n');
}

/** Runs a server until the process is asked to stop. */
export async function serveUntilStopped(
  start: () => Promise<Result<Serving>>,
  untilStopped: UntilStopped,
  announce: (serving: Serving) => void,
  json: boolean,
  terminal: Terminal,
): Promise<ExitCode> {
  const started = await start();
  if (!started.ok) return printRefusal(started.problem, json, terminal);
  announce(started.value);
  await untilStopped();
  await started.value.close();
  return 0;
}

export const serveCommand = (
  openStore: OpenStoreIn,
  startServer: StartServer,
  untilStopped: UntilStopped,
): Command => ({
  name: 'serve',
  summary: 'start the workshop’s server',
  help,
  async run(args, terminal) {
    const { values } = parseArgs({
      args: [...args],
      options: {
        data: { type: 'string', default: usualFolder },
        port: { type: 'string', default: String(usualPort) },
        host: { type: 'string', default: 'localhost' },
        'tls-cert': { type: 'string' },
        'tls-key': { type: 'string' },
        'no-tls': { type: 'boolean', default: false },
        json: { type: 'boolean', default: false },
      },
    });
    const { data, host, json } = values;
    const port = asPort(values.port);
    const tls = tlsOf(host, data, values['tls-cert'], values['tls-key'], values['no-tls']);
    const opened = await openStore(data, { serving: true });
    if (!opened.ok) return printRefusal(opened.problem, json, terminal);
    const store = opened.value;
    try {
      const hasPeople = Object.keys((await readWorkshop(store.house)).people).length > 0;
      const setUpCode = hasPeople ? null : store.house.secrets.spokenCode();
      const { complain } = terminal;
      return await serveUntilStopped(
        () => startServer({ store, host, port, tls, setUpCode, complain }),
        untilStopped,
        (serving) =>
          terminal.print(
            json
              ? JSON.stringify({
                  address: serving.addresses[0],
                  addresses: serving.addresses,
                  setUpCode,
                  fingerprint: serving.fingerprint,
                })
              : announcement(serving, setUpCode, `Its store is ${resolve(data)}`),
          ),
        json,
        terminal,
      );
    } finally {
      await store.close();
    }
  },
});
