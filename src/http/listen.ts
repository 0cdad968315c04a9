import { createServer as createPlain } from 'node:http';
import { createServer as createSecure } from 'node:https';
import type { AddressInfo } from 'node:net';
import { createAdaptorServer } from '@hono/node-server';
import type { StartProblem } from '../text/httpWords.ts';
import { done, type Result, refused } from '../units/index.ts';

export interface ListenWish {
  readonly host: string;
  /** 0 for any that is free. */
  readonly port: number;
  /** PEM of certificate and key; null on plain http. */
  readonly tls: { readonly certificate: string; readonly key: string } | null;
}

export interface Listening {
  readonly port: number;
  /** Takes no more requests, lets those under way finish, and ends what never ends by itself. */
  readonly close: () => Promise<void>;
}

type Answer = (request: Request) => Response | Promise<Response>;

/** Long enough for a photograph over a slow network to come in when the server is told to stop. */
const patienceMs = 3000;

const startProblem = (code: string | undefined, { host, port }: ListenWish): StartProblem | null => {
  switch (code) {
    case 'EADDRINUSE':
      return { code: 'address-in-use', facts: { address: host, port } };
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
      return { code: 'address-not-here', facts: { address: host } };
    case 'EACCES':
      return { code: 'address-not-allowed', facts: { port } };
    default:
      return null;
  }
};

/** Answers requests at an address, or says why it cannot. */
export function listen(answer: Answer, wish: ListenWish): Promise<Result<Listening, StartProblem>> {
  const { host, port, tls } = wish;
  const server = createAdaptorServer(
    tls === null
      ? { fetch: answer, createServer: createPlain }
      : {
          fetch: answer,
          createServer: createSecure,
          serverOptions: { cert: tls.certificate, key: tls.key, minVersion: 'TLSv1.2' },
        },
  );
  return new Promise((settle, fail) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      const problem = startProblem(error.code, wish);
      if (problem === null) fail(error);
      else settle(refused(problem.code, problem.facts) as Result<Listening, StartProblem>);
    });
    server.listen(port, host, () =>
      settle(done({ port: (server.address() as AddressInfo).port, close: () => closing(server) })),
    );
  });
}

const closing = (server: ReturnType<typeof createAdaptorServer>): Promise<void> =>
  new Promise((closed) => {
    const late = setTimeout(
      () => 'closeAllConnections' in server && server.closeAllConnections(),
      patienceMs,
    );
    server.close(() => {
      clearTimeout(late);
      closed();
    });
    if ('closeIdleConnections' in server) server.closeIdleConnections();
  });
