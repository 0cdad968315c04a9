import { problemWords } from '../text/problemWords.ts';
import type { Problem, Result } from '../units/index.ts';
import { problemStatus } from './problemStatus.ts';

const noStore = { 'cache-control': 'no-store' };

export const jsonAnswer = (body: unknown, status = 200): Response =>
  Response.json(body, { status, headers: noStore });

/** A refusal as problem details of RFC 9457; `entries` of a clash stand beside the facts. */
export function problemAnswer(problem: Problem): Response {
  const { happened, matters, now } = problemWords(problem);
  const { entries, ...facts } = problem.facts as Readonly<Record<string, unknown>>;
  const status = problemStatus(problem.code);
  const body = {
    ...{ type: `/problems/${problem.code}`, title: happened, detail: matters, status },
    ...{ now, code: problem.code, facts },
    ...(problem.code === 'stream-moved-on' ? { entries } : {}),
  };
  const retry =
    problem.code === 'sign-in-locked'
      ? { 'retry-after': String(Number(facts['minutes']) * 60) }
      : problem.code === 'sensor-too-often'
        ? { 'retry-after': String(facts['seconds']) }
        : {};
  return new Response(JSON.stringify(body), {
    status,
    headers: { ...noStore, ...retry, 'content-type': 'application/problem+json' },
  });
}

/** A result as an answer. */
export const answerOf = <Value>(
  result: Result<Value>,
  body: (value: Value) => unknown = (value) => value,
): Response => (result.ok ? jsonAnswer(body(result.value)) : problemAnswer(result.problem));

export const pdfAnswer = (bytes: Uint8Array<ArrayBuffer>, name: string): Response =>
  new Response(bytes, {
    headers: {
      ...noStore,
      'content-type': 'application/pdf',
      'content-disposition': `inline; filename="${name}.pdf"`,
    },
  });

/** A file to keep, sent as it is made. */
export const zipAnswer = (body: ReadableStream<Uint8Array>, name: string): Response =>
  new Response(body, {
    headers: {
      ...noStore,
      'content-type': 'application/zip',
      'content-disposition': `attachment; filename="${name}.zip"`,
    },
  });
