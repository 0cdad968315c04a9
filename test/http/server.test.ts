import { get } from 'node:http';
import { createServer } from 'node:net';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, expect, test } from 'vitest';
import { type Listening, listen } from '../../src/http/listen.ts';
import { consignmentOf } from '../support/intake.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import { openedHouse } from '../support/tablet.ts';

const open: Listening[] = [];
afterEach(async () => {
  await Promise.all(open.splice(0).map(({ close }) => close()));
});

async function served(answer: Parameters<typeof listen>[0]): Promise<Listening> {
  const listening = await listen(answer, { host: '127.0.0.1', port: 0, tls: null });
  if (!listening.ok) throw new Error(listening.problem.code);
  open.push(listening.value);
  return listening.value;
}

/** Reads events as they come until one of them satisfies; `opened` is told once the server listens for them. */
function events(
  port: number,
  cookie: string,
  enough: (text: string) => boolean,
  opened: () => void,
): Promise<string> {
  return new Promise((answer, fail) => {
    let text = '';
    const request = get(
      { port, host: '127.0.0.1', path: '/api/changes', headers: { cookie } },
      (response) => {
        response.setEncoding('utf8').on('data', (part: string) => {
          if (text === '') opened();
          text += part;
          if (!enough(text)) return;
          request.destroy();
          answer(`${response.headers['content-type']}\n${text}`);
        });
      },
    );
    request.on('error', fail);
  });
}

test('an open tablet hears of every stream that moves, as soon as it is recorded', async () => {
  const { app, owner } = await openedHouse(memoryHouse());
  const { port } = await served(app.fetch);
  const request = consignmentOf('41');
  // Recorded only once the stream is open: on a busy machine that takes as long as it takes.
  const text = await events(
    port,
    owner.cookie,
    (told) => told.includes('event: moved'),
    () => void owner.post('/api/consignments', request),
  );
  expect(text).toMatch(/^text\/event-stream/);
  const data = /event: moved\ndata: (.*)\n/.exec(text)?.[1] ?? '{}';
  expect(JSON.parse(data)).toEqual({
    streams: [`client/${request.client.client}`, `rug/${request.rugs[0]?.rug}`],
  });
});

test('a stranger hears nothing', async () => {
  const { app } = await openedHouse(memoryHouse());
  const { port } = await served(app.fetch);
  const answer = await fetch(`http://127.0.0.1:${port}/api/changes`);
  expect(answer.status).toBe(401);
});

test('a port in use is said in words, with another to try', async () => {
  const other = createServer();
  await new Promise<void>((ready) => other.listen(0, '127.0.0.1', ready));
  const { port } = other.address() as { readonly port: number };
  try {
    const refused = await listen(() => new Response(), { host: '127.0.0.1', port, tls: null });
    expect(refused).toEqual({
      ok: false,
      problem: { code: 'address-in-use', facts: { address: '127.0.0.1', port } },
    });
  } finally {
    other.close();
  }
});

test('an address that is not this machine’s is said in words', async () => {
  const refused = await listen(() => new Response(), { host: '203.0.113.9', port: 0, tls: null });
  expect(refused).toMatchObject({ ok: false, problem: { code: 'address-not-here' } });
});

test('asked to stop, the server lets a request under way finish and ends an event stream', async () => {
  const { app, owner } = await openedHouse(memoryHouse());
  const listening = await served((request) => {
    const isSlow = new URL(request.url).pathname === '/slow';
    return isSlow ? sleep(300).then(() => new Response('finished')) : app.fetch(request);
  });
  const streaming = fetch(`http://127.0.0.1:${listening.port}/api/changes`, {
    headers: { cookie: owner.cookie },
  });
  const slow = fetch(`http://127.0.0.1:${listening.port}/slow`).then((answer) => answer.text());
  const reader = (await streaming).body?.getReader();
  await reader?.read();
  const begun = performance.now();
  await listening.close();
  expect(await slow).toBe('finished');
  expect(performance.now() - begun).toBeLessThan(6000);
  await expect(reader?.read()).rejects.toThrow();
  await expect(fetch(`http://127.0.0.1:${listening.port}/`)).rejects.toThrow();
});

test('a tablet speaks to the real server as to the app in memory: sign in, then read', async () => {
  const { app } = await openedHouse(memoryHouse());
  const { port } = await served(app.fetch);
  const address = `http://127.0.0.1:${port}`;
  const stranger = await fetch(`${address}/api/today`);
  expect(stranger.status).toBe(401);
  const signedIn = await fetch(`${address}/api/sign-in`, {
    method: 'POST',
    headers: { origin: address, 'content-type': 'application/json' },
    body: JSON.stringify({ name: 'Mirela', passphrase: 'madder indigo weld walnut' }),
  });
  expect(signedIn.status).toBe(200);
  const cookie = signedIn.headers.get('set-cookie')?.split(';')[0] ?? '';
  expect((await fetch(`${address}/api/today`, { headers: { cookie } })).status).toBe(200);
});
