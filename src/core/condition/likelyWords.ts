import { type ConditionWord, conditionFamilies, conditionWords, type MarkShape } from './conditionWords.ts';

/** What is known of a mark before it has a name. */
export interface Unnamed {
  readonly shape: MarkShape;
  /** True when it touches an end or a side of the rug. */
  readonly atEdge: boolean;
  /** Words already used on this rug, which often come again. */
  readonly used: readonly string[];
}

const contains = (row: ConditionWord, typed: string): boolean =>
  [row.word, row.means, row.family].some((text) => text.toLowerCase().includes(typed));

/**
 * Words for a mark, the likely ones first: those that begin with what was typed, then those drawn in this
 * shape, found at such a place, seen on many rugs, or used on this rug before. Nothing that fits what was typed is left out.
 *
 * @param typed - part of a word, of its meaning or of its family; empty for all
 * @param mark - what was drawn, and where
 * @returns rows of the condition list
 * @source none: order of this project
 */
export function likelyWords(typed: string, mark: Unnamed): readonly ConditionWord[] {
  const sought = typed.trim().toLowerCase();
  const weight = (row: ConditionWord): number =>
    (sought !== '' && row.word.startsWith(sought) ? 16 : 0) +
    (row.shape === mark.shape ? 4 : 0) +
    (row.often ?? 0) +
    (mark.atEdge && row.family === 'ends and sides' ? 3 : 0) +
    (mark.used.includes(row.word) ? 3 : 0);
  const order = (row: ConditionWord): number => conditionFamilies.indexOf(row.family);
  return conditionWords
    .filter((row) => sought === '' || contains(row, sought))
    .map((row, index) => ({ row, index }))
    .sort((a, b) => weight(b.row) - weight(a.row) || order(a.row) - order(b.row) || a.index - b.index)
    .map(({ row }) => row);
}
