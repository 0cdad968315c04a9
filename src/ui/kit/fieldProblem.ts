import { problemWords } from '../../text/problemWords.ts';
import type { Problem } from '../../units/index.ts';
import { isShown, type ShownProblem } from '../call/shownProblem.ts';

/** What a field can show under itself: a sentence, or a problem whose words are known. */
export type FieldProblem = string | Problem | ShownProblem | null | undefined;

export const fieldSentence = (problem: FieldProblem): string | null => {
  if (problem === null || problem === undefined || problem === '') return null;
  if (typeof problem === 'string') return problem;
  const words = isShown(problem) ? problem : problemWords(problem);
  return `${words.happened} ${words.now}`;
};
