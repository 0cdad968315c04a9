import table from '../../../data/condition/words.json' with { type: 'json' };
import type { FindingCode, StainClass } from '../wash/index.ts';

export const conditionFamilies = [
  'pile',
  'foundation',
  'ends and sides',
  'colour',
  'soil and life',
  'history',
  'inherent',
] as const;
export type ConditionFamily = (typeof conditionFamilies)[number];

export const markShapes = ['point', 'line', 'polygon'] as const;
export type MarkShape = (typeof markShapes)[number];

/** 0 inherent, 1 soil or finish, 2 pile or colour, 3 foundation exposed or edge open, 4 hole, rot, active life. */
export const conditionGrades = [0, 1, 2, 3, 4] as const;
export type ConditionGrade = (typeof conditionGrades)[number];

/** One word of the condition list. */
export interface ConditionWord {
  readonly word: string;
  readonly family: ConditionFamily;
  /** A second family it is looked for in. */
  readonly alsoIn?: ConditionFamily;
  /** The grade it usually has; the person who sees the rug decides. */
  readonly gradeHint: ConditionGrade;
  /** How it is usually drawn. */
  readonly shape: MarkShape;
  /** What it means, in one plain sentence. */
  readonly means: string;
  /** Seen on many rugs, so offered early; the larger, the earlier. */
  readonly often?: number;
  /** For a word that is a stain: the class to begin from; the person who sees it decides. */
  readonly stain?: StainClass;
  /** Findings such a mark speaks for; with several, it is at least one of them. */
  readonly suggests: readonly FindingCode[];
  /** Findings it speaks for as long as nobody has called it stable. */
  readonly suggestsUnlessStable: readonly FindingCode[];
}

/**
 * The condition list, in the order it is shown.
 *
 * @source common-practice (data/condition/words.json); grade hints are a workshop setting
 */
export const conditionWords = table.rows as readonly ConditionWord[];

/** What each grade means, least harm first. @source workshop-setting (data/condition/words.json) */
export const gradeMeanings = table.grades.rows as readonly {
  readonly grade: ConditionGrade;
  readonly title: string;
  readonly means: string;
}[];

export const familyTitles = table.families as readonly {
  readonly family: ConditionFamily;
  readonly title: string;
}[];

const byWord: ReadonlyMap<string, ConditionWord> = new Map(conditionWords.map((row) => [row.word, row]));

/**
 * The list's row for a word; undefined for a word that is not on it.
 *
 * @source common-practice (data/condition/words.json)
 */
export const conditionWord = (word: string): ConditionWord | undefined => byWord.get(word);

/**
 * Findings a mark speaks for, counting an activity nobody knows as active.
 *
 * @param word - word of the condition list; another word speaks for nothing
 * @param activity - stable, slow, active or unknown
 * @source common-practice (data/condition/words.json); unknown as worst case is a rule of this project
 */
export function findingsSuggested(
  word: string,
  activity: 'stable' | 'slow' | 'active' | 'unknown',
): readonly FindingCode[] {
  const row = byWord.get(word);
  if (row === undefined) return [];
  return activity === 'stable' ? row.suggests : [...row.suggests, ...row.suggestsUnlessStable];
}
