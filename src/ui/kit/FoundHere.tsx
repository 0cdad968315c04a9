import { problemWords } from '../../text/problemWords.ts';
import type { Problem } from '../../units/index.ts';
import { ThreeSentences } from './Notice.tsx';

/** The words of a problem found in this page itself; loaded when the first one is shown. */
export function FoundHere({ problem }: { readonly problem: Problem }) {
  return <ThreeSentences words={problemWords(problem)} />;
}

export function FieldWords({ problem }: { readonly problem: Problem }) {
  const { happened, now } = problemWords(problem);
  return (
    <>
      {happened} {now}
    </>
  );
}
