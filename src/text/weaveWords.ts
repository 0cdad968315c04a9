import type { DensityProblem } from '../core/weave/index.ts';
import type { WordsFor } from './words.ts';

export const weaveWords = {
  'unknown-notation': ({ given, allowed }) => ({
    happened: `“${given}” is not a way of writing a knot density that is known here.`,
    matters: 'The same number means very different rugs in different notations.',
    now: `Choose one of: ${allowed.join(', ')}.`,
  }),
  'knot-density-not-readable': ({ given, notation, form }) => ({
    happened: `The knot density “${given}” cannot be read as ${notation}.`,
    matters: 'A misread density changes every total made from it.',
    now: `Write ${form}.`,
  }),
} satisfies WordsFor<Exclude<DensityProblem, { code: 'out-of-range' }>>;
