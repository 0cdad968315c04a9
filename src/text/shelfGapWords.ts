import type { ShelfGap } from '../dossier/index.ts';
import { problemWords } from './problemWords.ts';

/** What a plan on record lacks, for which step, and what to do about it. */
export interface ShelfGapWords {
  readonly title: string;
  readonly happened: string;
  readonly now: readonly string[];
}

const titles: { readonly [C in ShelfGap['problem']['code']]: string } = {
  'agent-not-on-shelf': 'is not on the shelf',
  'agent-off-shelf': 'was taken off the shelf',
  'agent-ran-out': 'ran out',
  'lot-expired': 'is past its day',
  'stock-may-end': 'may not reach',
};

/**
 * The words of a gap. The plan names a kind of agent, not a product: another product of that kind keeps plan and
 * consent, another kind needs both anew.
 *
 * @param gap - what is lacking
 * @param isWet - whether the rug is wet already
 * @source none: wording of this project
 */
export function shelfGapWords({ agent, order, kind, problem }: ShelfGap, isWet: boolean): ShelfGapWords {
  const mend =
    problem.code === 'agent-not-on-shelf'
      ? `Put a product that serves as ${agent} on the shelf.`
      : problem.code === 'agent-off-shelf'
        ? `Put another product that serves as ${agent} on the shelf.`
        : `Receive a lot in date, or put another product that serves as ${agent} on the shelf.`;
  return {
    title: `${agent.charAt(0).toUpperCase()}${agent.slice(1)} ${titles[problem.code]}; step ${order}, ${kind}, needs it`,
    happened: problemWords(problem).happened,
    now: [
      `${mend} Plan and consent stay, and its amounts are worked out anew; make one blot with a product not used on this rug before.`,
      'Any other agent is another bath: test the dyes with it, put the new plan on record and ask for consent again.',
      ...(isWet
        ? ['The rug is wet: do not let it wait for this. Rinse and extract; they are never held back.']
        : ['Do not wet the rug before it is there.']),
    ],
  };
}
