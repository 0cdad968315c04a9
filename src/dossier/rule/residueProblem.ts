import { type NextLiquid, type Residue, residueBlock } from '../../core/wash/index.ts';
import { agreedPlan, planFactsOf } from '../planFacts.ts';
import type { RugProblem } from '../rugProblem.ts';
import type { RugStanding } from '../standing.ts';
import { isCarried, residuesIn } from '../workEvents.ts';
import type { Asked } from './rule.ts';

/** What an earlier visit or others left may be answered for; nobody answers for what this visit laid. */
const orAnswer = 'Or say, with a reason, that it is no longer there.';

const markWords = ({ marks }: RugStanding, mark: string): string =>
  `mark ${marks.findIndex((known) => known.mark === mark) + 1}`;

const residueWords = (standing: RugStanding, residue: Residue): string => {
  const { agent, where } = residue;
  const place = where === null ? '' : ` at ${markWords(standing, where)}`;
  return `${agent}${place}${isCarried(standing, residue) ? ', from before this visit' : ''}`;
};

/**
 * What forbids a liquid, or heat, because of what is still in the rug. Nobody may override it.
 *
 * @param own - what of the residues is the liquid itself, already begun
 * @source data/wash/mixtures.json through residueBlock
 */
export function residueProblem(
  standing: RugStanding,
  next: NextLiquid,
  { settings, now }: Asked,
  own: (residue: Residue) => boolean = () => false,
): RugProblem | null {
  const facts = planFactsOf(standing, settings, now);
  const bounds = agreedPlan(standing)?.bounds ?? { forbiddenPairs: [] };
  if (!facts.ok) return null;
  const residues = residuesIn(standing, settings).filter((residue) => !own(residue));
  const block = residueBlock(facts.value, residues, next, bounds);
  if (block === null) return null;
  const { what, rule, hazard, clear } = block;
  const words = [...new Set(block.residues.map((residue) => residueWords(standing, residue)))];
  const isAnswerable = block.residues.every((residue) => isCarried(standing, residue));
  return {
    code: 'residue-forbidden',
    facts: { what, rule, hazard, clear: isAnswerable ? [...clear, orAnswer] : clear, residues: words },
  };
}

/** Heat on a rug that may still hold solvent; unknown heat counts as heat. */
export const solventProblem = (
  standing: RugStanding,
  heated: boolean | undefined,
  asked: Asked,
): RugProblem | null =>
  residueProblem(standing, { what: 'heated drying', agents: [], isHeatedDrying: heated !== false }, asked);
