import type { Problem } from '../units/index.ts';

/** The paper could not be typeset; nothing was written and nothing recorded is touched. */
export type PaperNotPrinted = Problem<
  'paper-not-printed',
  {
    readonly title: string;
    /** `too-long`: it took longer than allowed and was stopped; `failed`: the typesetter gave up or fell over. */
    readonly cause: 'too-long' | 'failed';
    /** The typesetter's own words, for whoever mends it. */
    readonly reason: string;
  }
>;
