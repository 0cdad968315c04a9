import { clearingWords } from '../../core/wash/index.ts';
import { goesHomeWith, isCarried, type RugStanding, type WorkshopSettings } from '../../dossier/index.ts';
import { stainWords } from '../dossier/figures.ts';

export interface StillInItWords {
  /** Each agent with its place. */
  readonly what: readonly string[];
  readonly matters: string;
  readonly now: readonly string[];
}

/** What was never shown to be out of the rug, and what to do about it; null where there is nothing. */
export function stillInItWords(
  standing: RugStanding,
  settings: Pick<WorkshopSettings, 'ruleChanges'>,
): StillInItWords | null {
  const left = goesHomeWith(standing, settings);
  if (left.length === 0) return null;
  const isWatered = left.some(({ clears }) => clears === 'verified rinse');
  return {
    what: left.map(({ agent, where }) =>
      where === null ? `${agent}, all over the rug` : `${agent}, ${stainWords(standing.marks, where)}`,
    ),
    matters: 'Nothing on record shows it to be out, and what is left in meets whatever is laid on it next.',
    now: [
      ...new Set(left.map(({ clears }) => clearingWords(clears))),
      ...(isWatered ? ['A rug rinsed again is dried and proven dry again.'] : []),
      ...(left.some((residue) => isCarried(standing, residue))
        ? ['What was in it before this visit may also be answered for, with the reason.']
        : []),
      'It may go home as it is: the return paper and the care sheet then tell the client.',
    ],
  };
}
