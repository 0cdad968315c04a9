import type { OutOfRange } from '../units/index.ts';
import type { WordsFor } from './words.ts';

export const quantityWords = {
  'out-of-range': ({ field, value, least, most, symbol }) => ({
    happened: `${field} is ${Number.isNaN(value) ? 'not a number' : `${value} ${symbol}`.trim()}.`,
    matters: 'A value outside what can be real would make every figure after it wrong.',
    now: `Give ${field} between ${least} and ${`${most} ${symbol}`.trim()}.`,
  }),
} satisfies WordsFor<OutOfRange>;
