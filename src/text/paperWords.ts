import type { PaperNotPrinted } from '../papers/paperProblem.ts';
import type { WordsFor } from './words.ts';

export const paperWords = {
  'paper-not-printed': ({ title, cause, reason }) => ({
    happened:
      cause === 'too-long'
        ? `The paper “${title}” took too long to typeset and was stopped.`
        : `The paper “${title}” could not be typeset: ${reason.split('\n')[0] ?? ''}`,
    matters: 'There is no PDF of it yet; everything recorded is safe and unchanged.',
    now: 'Try once more. If it fails again, show the owner this message; the record itself can still be exported.',
  }),
} satisfies WordsFor<PaperNotPrinted>;
