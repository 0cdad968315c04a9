import type { Words } from '../../text/words.ts';
import type { Problem } from '../../units/index.ts';

/** A problem that arrived with its three sentences, as the server words it. */
export interface ShownProblem extends Problem, Words {
  /** HTTP status; 0 when no answer came. */
  readonly status: number;
  /** With `stream-moved-on`: what others have recorded meanwhile. */
  readonly entries?: readonly unknown[] | undefined;
}

export const isShown = (problem: Problem | ShownProblem): problem is ShownProblem => 'happened' in problem;

/** No answer came: the network is away, or the server is not running. */
export const notReached = (): ShownProblem => ({
  code: 'server-not-reached',
  facts: {},
  status: 0,
  happened: 'The workshop’s server did not answer.',
  matters:
    'Whether it was recorded is not known; sending it again records it only once. What you typed is kept on this device.',
  now: 'Check the network and that the server runs, then press the same button again.',
});

/** An answer came that is none of ours, e.g. from something between this device and the server. */
export const notReadable = (status: number): ShownProblem => ({
  code: 'answer-not-readable',
  facts: { status },
  status,
  happened: `The server answered in a way this page cannot read (status ${status}).`,
  matters: 'Whether it was recorded is not known. Sending it again records it only once.',
  now: 'Press the same button again; if it stays, reload the page. What you typed is kept.',
});

const text = (value: unknown): string => (typeof value === 'string' ? value : '');

/** Reads problem details of RFC 9457 as this server writes them. */
export function problemIn(status: number, body: unknown): ShownProblem {
  if (typeof body !== 'object' || body === null) return notReadable(status);
  const fields = body as Readonly<Record<string, unknown>>;
  const code = text(fields['code']) || text(fields['type']).replace('/problems/', '');
  const happened = text(fields['title']);
  if (code === '' || happened === '') return notReadable(status);
  const { facts, entries } = fields;
  return {
    code,
    status,
    facts: typeof facts === 'object' && facts !== null ? (facts as Problem['facts']) : {},
    happened,
    matters: text(fields['detail']),
    now: text(fields['now']),
    ...(Array.isArray(entries) ? { entries } : {}),
  };
}
