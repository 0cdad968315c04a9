import type { RugRow } from '../../dossier/rugRow.ts';
import type { Stage } from '../../dossier/stage.ts';

/** What is still to be done at the stage a rug stands at; a stage is named after what it will be then. */
const ahead: { readonly [S in Stage]: string } = {
  received: 'to measure',
  identified: 'to identify',
  tested: 'to test',
  agreed: 'to agree',
  washed: 'to wash',
  dried: 'to dry',
  finished: 'to inspect',
  returned: 'to hand back',
};

const isStage = (word: string): word is Stage => word in ahead;

/** Where a rug stands in words nobody can take for what has been done. */
export const stageWords = ({ stage, inHouse }: Pick<RugRow, 'stage' | 'inHouse'>): string => {
  if (stage === null) return '';
  return inHouse && isStage(stage) ? ahead[stage] : stage;
};

/** What a list may be narrowed to. */
export const stageOptions = [
  ...Object.entries(ahead).map(([value, words]) => ({
    value,
    words: value === 'returned' ? `${words}, or returned` : words,
  })),
  { value: 'declined', words: 'declined' },
];
