import { problemCodes, problemWords } from '../text/problemWords.ts';

/** Stands for every fact of a problem, whatever is read from it or called on it, and prints as an ellipsis. */
const anyFact: unknown = new Proxy(() => anyFact, {
  get(_target, name) {
    if (name === Symbol.toPrimitive) return (wish: string) => (wish === 'number' ? Number.NaN : '…');
    if (name === Symbol.iterator) return [][Symbol.iterator];
    if (name === 'toString') return () => '…';
    return anyFact;
  },
});

const escaped = (text: string): string => text.replace(/[&<>"']/g, (letter) => `&#${letter.charCodeAt(0)};`);

const style = `
  body { margin: 0 auto; padding: 2rem 1.25rem; max-width: 38rem; font: 1.125rem/1.6 system-ui, sans-serif;
    background: #f7f1e6; color: #2b2622 }
  h1 { font: 600 1.6rem/1.3 Georgia, serif }
  a { color: #2f4d73 }
  @media (prefers-color-scheme: dark) { body { background: #211d1a; color: #efe6d8 } a { color: #a9c3e6 } }`;

const page = (title: string, body: string, nonce: string): string => `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title><style nonce="${nonce}">${style}</style></head>
<body>${body}<p><a href="/">To Wefthouse</a></p></body>
</html>
`;

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
  return page(
    happened,
    `<h1>${escaped(happened)}</h1>\n${paragraphs}\n${note}<p><code>${code}</code></p>`,
    nonce,
  );
}

/** All problems with what happened in each. */
export const problemList = (nonce: string): string =>
  page(
    'What can be refused, and why',
    `<h1>What can be refused, and why</h1><ul>${problemCodes
      .map((code) => `<li><a href="/problems/${code}">${code}</a></li>`)
      .join('\n')}</ul>`,
    nonce,
  );
