import { done, type Result } from '../../units/index.ts';
import { learnServerTime } from './serverClock.ts';
import { notReached, notReadable, problemIn, type ShownProblem } from './shownProblem.ts';
import { type SignInReason, signInDesk } from './signInDesk.ts';

export type Answered<Answer> = Result<Answer, ShownProblem>;

/** Refusals that signing in settles. */
const reasons: Readonly<Record<string, SignInReason>> = {
  'signed-out': 'ended',
  'passphrase-needed': 'by PIN',
};

interface CallInit {
  readonly method?: 'GET' | 'POST' | 'PUT';
  /** Sent as JSON. */
  readonly body?: unknown;
  /** False where being signed out is an answer, not an interruption. */
  readonly asksToSignIn?: boolean;
  readonly signal?: AbortSignal;
}

async function once<Answer>(path: string, init: CallInit): Promise<Answered<Answer>> {
  const { method = 'GET', body, signal } = init;
  let response: Response;
  try {
    response = await fetch(path, {
      method,
      credentials: 'same-origin',
      headers: {
        accept: 'application/json',
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      ...(signal === undefined ? {} : { signal }),
    });
  } catch {
    return { ok: false, problem: notReached() };
  }
  learnServerTime(response.headers.get('date'));
  let answer: unknown = null;
  try {
    const text = await response.text();
    answer = text === '' ? null : JSON.parse(text);
  } catch {
    return { ok: false, problem: notReadable(response.status) };
  }
  return response.ok ? done(answer as Answer) : { ok: false, problem: problemIn(response.status, answer) };
}

/**
 * Asks the server. An expired session opens the sign-in sheet over the page and then asks again, so no form
 * has to know of it and nothing typed is lost.
 *
 * @param path - such as `/api/rugs`
 * @returns the answer, or a problem in its three sentences; never throws
 */
export async function call<Answer>(path: string, init: CallInit = {}): Promise<Answered<Answer>> {
  const first = await once<Answer>(path, init);
  if (first.ok || init.asksToSignIn === false) return first;
  const reason = reasons[first.problem.code];
  if (reason === undefined) return first;
  return (await signInDesk.ask(reason)) ? once<Answer>(path, init) : first;
}
