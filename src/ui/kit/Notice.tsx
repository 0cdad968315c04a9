import { lazy, type ReactNode, Suspense } from 'react';
import type { Words } from '../../text/words.ts';
import type { Problem } from '../../units/index.ts';
import { isShown, type ShownProblem } from '../call/shownProblem.ts';

const FoundHere = lazy(async () => ({ default: (await import('./FoundHere.tsx')).FoundHere }));

const signs = { ok: '✓', caution: '◆', stop: '▲', plain: '' } as const;

/** Something to know; the tone has a sign of its own besides its colour. */
export function Notice(props: {
  readonly tone: keyof typeof signs;
  readonly title?: string;
  readonly children?: ReactNode;
}) {
  const sign = signs[props.tone];
  return (
    <div className={`note ${props.tone}`} role={props.tone === 'stop' ? 'alert' : undefined}>
      {props.title === undefined ? null : (
        <b className="noteTitle">
          {sign === '' ? null : <span aria-hidden="true">{sign} </span>}
          {props.title}
        </b>
      )}
      {props.children}
    </div>
  );
}

/** A problem in its three sentences: what happened, why it matters, what to do now. */
export function ProblemNotice({ problem }: { readonly problem: Problem | ShownProblem | null | undefined }) {
  if (problem === null || problem === undefined) return null;
  if (isShown(problem)) return <ThreeSentences words={problem} />;
  return (
    <Suspense fallback={<Notice tone="stop" title="This cannot be done." />}>
      <FoundHere problem={problem} />
    </Suspense>
  );
}

export function ThreeSentences({ words }: { readonly words: Words }) {
  return (
    <Notice tone="stop" title={words.happened}>
      <p>{words.matters}</p>
      <p>
        <b>{words.now}</b>
      </p>
    </Notice>
  );
}
