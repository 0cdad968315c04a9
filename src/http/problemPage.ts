import { problemCodes, problemWords } from '../text/problemWords.ts';
import { escaped, plainPage } from './plainPage.ts';
import { problemExamples } from './problemExamples.ts';

/** Stands for every fact of a problem, whatever is read from it or called on it, and prints as an ellipsis. */
const anyFact: unknown = new Proxy(() => anyFact, {
  get(_target, name) {
    if (name === Symbol.toPrimitive) return (wish: string) => (wish === 'number' ? Number.NaN : '…');
    if (name === Symbol.iterator) return [][Symbol.iterator];
    if (name === 'toString') return () => '…';
    return anyFact;
  },
});

/** The page of a problem in its own words; null for a code that is none. */
export function problemPage(code: string, nonce: string): string | null {
  if (!problemCodes.includes(code)) return null;
  const example = problemExamples[code];
  const facts = example ?? (anyFact as Readonly<Record<string, unknown>>);
  const { happened, matters, now } = problemWords({ code, facts });
  const hasGap = [happened, matters, now].some((text) => text.includes('…'));
  const note =
    example !== undefined
      ? 'The values here are an example; the message itself names the true ones.'
      : 'Where … stands, the message itself names the value.';
  const body = [
    `<h1>${escaped(happened)}</h1>`,
    ...[matters, now].map((text) => `<p>${escaped(text)}</p>`),
    ...(example !== undefined || hasGap ? [`<p><small>${note}</small></p>`] : []),
    `<p><code>${code}</code></p>`,
  ];
  return plainPage(happened, body.join('\n'), nonce);
}

/** All problems with what happened in each. */
export const problemList = (nonce: string): string =>
  plainPage(
    'What can be refused, and why',
    `<h1>What can be refused, and why</h1><ul>${problemCodes
      .map((code) => `<li><a href="/problems/${code}">${code}</a></li>`)
      .join('\n')}</ul>`,
    nonce,
  );
