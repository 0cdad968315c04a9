import type { Residue } from '../core/wash/index.ts';
import { goesHomeWith } from '../dossier/index.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import { notice } from './parts.ts';
import { markWords } from './stainParts.ts';
import { visitNumber } from './visitWords.ts';

const lineOf = (context: PaperContext, { agent, where, clears, byOthers }: Residue): string => {
  const place = `${agent}, ${markWords(context, where ?? undefined)}`;
  const from = byOthers === true ? ', used by others before it came' : '';
  return clears === 'airing'
    ? `${place}${from}: nobody has noted that its smell is gone. Keep it aired, away from flame and heat, until no smell is left.`
    : `${place}${from}: no reading has shown it to be rinsed out.`;
};

/**
 * What goes home in the rug without having been shown to be out, in words for whoever lives with it. It warns;
 * the rug may go home so.
 *
 * @source common-practice, through goesHomeWith
 */
export function leftInItParts(context: PaperContext): readonly PaperPart[] {
  const { rug, workshop } = context;
  // A paper of an earlier visit tells of that visit's end, not of what was done since.
  const then = { ...rug, visits: rug.visits.slice(0, visitNumber(context)) };
  const left = goesHomeWith(then, workshop.settings);
  if (left.length === 0) return [];
  return [
    notice('caution', 'Something may still be in it', [
      ...left.map((residue) => lineOf(context, residue)),
      'Put no cleaner of any kind on it, tell whoever cleans it next, and ask us if it feels sticky, smells or changes colour.',
    ]),
  ];
}
