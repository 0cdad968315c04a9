import type { Problem } from '../units/index.ts';
import type { PaperKind } from './paperKinds.ts';

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

/** What the paper would have to say does not stand in the record yet. */
export type PaperHasNoGround = Problem<
  'paper-has-no-ground',
  {
    readonly paper: PaperKind;
    readonly missing: 'wash plan' | 'incident';
    /** Why it is missing, in words, where the record knows: what refused the plan. */
    readonly because: string;
  }
>;
