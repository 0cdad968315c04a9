import type { Band } from '../../core/wash/index.ts';
import type { ReadingVerdict } from './ReadingPad.tsx';

/** Whether the rest of a plan still fits the wet minutes: with its least, with its most, or not at all. */
export function wetVerdict(used: number, allowed: number, ahead: Band): ReadingVerdict {
  const left = allowed - used;
  if (left <= 0) return { tone: 'stop', words: 'the wet minutes are used up: rinse and extract now' };
  const over = Math.ceil(ahead.least - left);
  if (over > 0) {
    return {
      tone: 'caution',
      words: `${over} min too few for the rest: leave out what can be left out, rinse and extract`,
    };
  }
  return ahead.most > left
    ? { tone: 'caution', words: 'fits only if nothing takes longer than its dwell' }
    : { tone: 'ok', words: 'the rest fits' };
}
