import type { ReadingVerdict } from './ReadingPad.tsx';

const signs = { ok: '●', caution: '◆', stop: '▲' } as const;

/** What a reading is worth, in colour, sign and words; quiet where nobody is typing it just now. */
export function VerdictLine(props: { readonly verdict: ReadingVerdict; readonly isQuiet?: boolean }) {
  const { verdict, isQuiet = false } = props;
  return (
    <p className={`verdict ${verdict.tone}`} {...(isQuiet ? {} : { role: 'status' })}>
      <span aria-hidden="true">{signs[verdict.tone]} </span>
      {verdict.words}
    </p>
  );
}
