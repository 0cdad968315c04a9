import { useId, useState } from 'react';
import { useLocation } from 'wouter';
import type { RowsAnswer } from '../../contract/index.ts';
import { call } from '../call/index.ts';
import { Busy, Notice } from '../kit/index.ts';
import { tagCodeOf } from './tagCode.ts';

type Outcome =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading' }
  | { readonly kind: 'failed'; readonly words: string };

/** Photographs the code on a tag and opens the dossier it belongs to. */
export function TagScan({ onUnknownTag }: { readonly onUnknownTag: (tag: string) => void }) {
  const id = useId();
  const [, go] = useLocation();
  const [outcome, setOutcome] = useState<Outcome>({ kind: 'none' });
  const fail = (words: string) => setOutcome({ kind: 'failed', words });
  const read = async (photograph: File) => {
    setOutcome({ kind: 'reading' });
    const text = await import('./codeTextIn.ts')
      .then(({ codeTextIn }) => codeTextIn(photograph))
      .catch(() => null);
    if (text === null) return fail('No single code could be read in this photograph.');
    const code = tagCodeOf(text);
    if (code === null) return fail(`The code says “${text.slice(0, 60)}”, which is no tag of this workshop.`);
    if (code.kind === 'rug') return go(`/rugs/${code.rug}`);
    const answer = await call<RowsAnswer>(`/api/rugs?tag=${encodeURIComponent(code.tag)}&inHouse=true`);
    if (!answer.ok) return fail(answer.problem.happened);
    const [row, second] = answer.value.rows;
    if (row !== undefined && second === undefined) return go(`/rugs/${row.rug}`);
    setOutcome({ kind: 'none' });
    onUnknownTag(code.tag);
  };
  return (
    <div className="photoTaker">
      <label className="btn ghost" htmlFor={id}>
        Photograph the code on a tag
      </label>
      <input
        id={id}
        className="unseen"
        type="file"
        accept="image/*"
        capture="environment"
        onChange={async ({ target }) => {
          const [photograph] = target.files ?? [];
          if (photograph !== undefined) await read(photograph);
          target.value = '';
        }}
      />
      {outcome.kind === 'reading' ? <Busy words="Reading the code" /> : null}
      {outcome.kind === 'failed' ? (
        <Notice tone="caution" title={outcome.words}>
          <p>
            Photograph it again, straight on and filling half the picture, or type the number under the code.
          </p>
        </Notice>
      ) : null}
    </div>
  );
}
