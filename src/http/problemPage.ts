import { problemCodes, problemWords } from '../text/problemWords.ts';
import { escaped, plainPage } from './plainPage.ts';

/** Stands for every fact of a problem, whatever is read from it or called on it, and prints as an ellipsis. */
const anyFact: unknown = new Proxy(() => anyFact, {
  get(_target, name) {
    if (name === Symbol.toPrimitive) return (wish: string) => (wish === 'number' ? Number.NaN : '…');
    if (name === Symbol.iterator) return [][Symbol.iterator];
    if (name === 'toString') return () => '…';
    return anyFact;
  },
});

/** The page of a problem, in its own words; an ellipsis stands where the message names a value. Null for no code. */
export function problemPage(code: string, nonce: string): string | null {
  if (!problemCodes.includes(code)) return null;
  const { happened, matters, now } = problemWords({
    code,
    facts: anyFact as Readonly<Record<string, unknown>>,
  });
  const paragraphs = [matters, now].map((text) => `<p>${escaped(text)}</p>`).join('\n');
  const note = [happened, matters, now].some((text) => text.includes('…'))
    ? '<p><small>Where … stands, the message itself names the value.</small></p>'
    : '';
  return plainPage(
    happened,
    `<h1>${escaped(happened)}</h1>\n${paragraphs}\n${note}<p><code>${code}</code></p>`,
    nonce,
  );
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
