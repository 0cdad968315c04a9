import { lazy, type ReactNode, Suspense } from 'react';
import type { Problem } from '../../units/index.ts';
import { isShown, type ShownProblem } from '../call/shownProblem.ts';

/** What a field can show under itself: a sentence, a problem as the server worded it, or one found in this page. */
export type FieldProblem = string | Problem | ShownProblem | null | undefined;

const FoundHere = lazy(async () => ({ default: (await import('./FoundHere.tsx')).FieldWords }));

/** What happened and what to do now, or null where nothing is wrong. */
export const fieldSentence = (problem: FieldProblem): ReactNode => {
  if (problem === null || problem === undefined || problem === '') return null;
  if (typeof problem === 'string') return problem;
  if (isShown(problem)) return `${problem.happened} ${problem.now}`;
  return (
    <Suspense fallback="This cannot be right.">
      <FoundHere problem={problem} />
    </Suspense>
  );
};
