import { afterEach, describe, expect, test, vi } from 'vitest';
import { call } from './call.ts';
import { signInDesk } from './signInDesk.ts';

const answer = (status: number, body: unknown) => new Response(JSON.stringify(body), { status });
const signedOut = () =>
  answer(401, { code: 'signed-out', title: 'The session has ended.', detail: '', now: '' });
const typed = { method: 'POST', body: { note: 'moth at the fringe' } } as const;

/** Answers requests one after the other, and keeps what was asked. */
function serverSaying(...answers: readonly (() => Response)[]) {
  const asked: string[] = [];
  const waiting = [...answers];
  vi.stubGlobal('fetch', async (_path: string, init: RequestInit) => {
    asked.push(String(init.body));
    const next = waiting.shift();
    if (next === undefined) throw new TypeError('no network');
    return next();
  });
  return asked;
}

const sheetIsOpen = () => vi.waitFor(() => expect(signInDesk.reason()).not.toBeNull());

afterEach(() => vi.unstubAllGlobals());

describe('an expired session in the middle of a form', () => {
  test('after signing in, what was typed is sent again as it was', async () => {
    const asked = serverSaying(signedOut, () => answer(200, { entries: [] }));
    const answering = call('/api/rugs/r1/entries', typed);
    await sheetIsOpen();
    expect(signInDesk.reason()).toBe('ended');
    signInDesk.close(true);
    expect(await answering).toEqual({ ok: true, value: { entries: [] } });
    expect(asked).toEqual([JSON.stringify(typed.body), JSON.stringify(typed.body)]);
  });

  test('without signing in, the refusal comes back and nothing is sent', async () => {
    const asked = serverSaying(signedOut);
    const answering = call('/api/rugs/r1/entries', typed);
    await sheetIsOpen();
    signInDesk.close(false);
    expect(await answering).toMatchObject({ ok: false, problem: { code: 'signed-out' } });
    expect(asked).toHaveLength(1);
  });

  test('two requests at once ask for one sign-in', async () => {
    serverSaying(
      signedOut,
      signedOut,
      () => answer(200, 1),
      () => answer(200, 2),
    );
    const both = Promise.all([call('/api/today'), call('/api/rugs')]);
    await sheetIsOpen();
    await vi.waitFor(() => expect(signInDesk.reason()).toBe('ended'));
    await new Promise((resolve) => setTimeout(resolve));
    signInDesk.close(true);
    expect((await both).every(({ ok }) => ok)).toBe(true);
  });
});

test('a wrong PIN is a refusal, not a reason to sign in anew', async () => {
  serverSaying(() => answer(401, { code: 'sign-in-refused', title: 'They do not belong together.' }));
  expect(await call('/api/switch', typed)).toMatchObject({ ok: false, problem: { status: 401 } });
  expect(signInDesk.reason()).toBeNull();
});

test('work that needs a passphrase asks for it when somebody came in by PIN', async () => {
  serverSaying(
    () => answer(403, { code: 'passphrase-needed', title: 'This needs a passphrase.' }),
    () => answer(200, {}),
  );
  const answering = call('/api/people', typed);
  await sheetIsOpen();
  expect(signInDesk.reason()).toBe('by PIN');
  signInDesk.close(true);
  expect(await answering).toMatchObject({ ok: true });
});

test('without a network it is said that nothing was recorded, and what to do', async () => {
  serverSaying();
  expect(await call('/api/rugs/r1/entries', typed)).toMatchObject({
    ok: false,
    problem: { code: 'server-not-reached', status: 0 },
  });
});
