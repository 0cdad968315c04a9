import type { ReadingVerdict } from './ReadingPad.tsx';

const signs = { ok: '●', caution: '◆', stop: '▲' } as const;

/** What a reading is worth, in colour, sign and words. */
export function VerdictLine({ verdict }: { readonly verdict: ReadingVerdict }) {
  return (
    <p className={`verdict ${verdict.tone}`} role="status">
      <span aria-hidden="true">{signs[verdict.tone]} </span>
      {verdict.words}
    </p>
  );
}
