import type { PaperHasNoGround, PaperNotPrinted } from '../papers/index.ts';
import { paperKinds } from '../papers/index.ts';
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
  'paper-has-no-ground': ({ paper, missing, because }) => {
    const title = paperKinds.find(({ code }) => code === paper)?.title ?? paper;
    return missing === 'incident'
      ? {
          happened: `There is no “${title}” to print: no incident was reported in this visit.`,
          matters: 'An empty report would look as if one had been written and left blank.',
          now: 'Report what happened first, then print.',
        }
      : {
          happened: `There is no “${title}” to print: the rug has no wash plan. ${because}`.trim(),
          matters: 'A paper about the work must not name a method or a limit that was never worked out.',
          now: 'Record what the plan asks for, then print.',
        };
  },
} satisfies WordsFor<PaperHasNoGround | PaperNotPrinted>;
