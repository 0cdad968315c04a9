import table from '../../../data/wash/differential.json' with { type: 'json' };
import { type StainClass, stainClasses } from './planFacts.ts';
import type { SourceKey } from './washPlan.ts';

export interface StainQuestion {
  readonly id: string;
  readonly ask: string;
  readonly how: string;
  readonly answers: readonly {
    readonly id: string;
    readonly words: string;
    readonly keeps: readonly StainClass[];
  }[];
  readonly source: SourceKey;
}

/** The questions in their order: light, pH, what lifts it, place, colour. */
export const stainQuestions = table.rows as unknown as readonly StainQuestion[];

export interface StainAnswer {
  readonly question: string;
  readonly answer: string;
}

/** How far an unknown stain has been narrowed. */
export interface Differential {
  /** Classes that fit every answer; all of them while nothing was answered. */
  readonly candidates: readonly StainClass[];
  /** The one class left, once enough was asked; `unknown` until then and whenever answers contradict. */
  readonly class: StainClass;
  /** Ids of questions whose answers leave nothing between them; empty where they agree. */
  readonly contradicted: readonly string[];
  /** What to ask next; null when every question is answered. */
  readonly next: StainQuestion | null;
}

const known = stainClasses.filter((one) => one !== 'unknown');

const keptBy = ({ question, answer }: StainAnswer): readonly StainClass[] | null =>
  stainQuestions.find(({ id }) => id === question)?.answers.find(({ id }) => id === answer)?.keeps ?? null;

/** Whether a question has this answer. */
export const isStainAnswer = (given: StainAnswer): boolean => keptBy(given) !== null;

/**
 * Narrows an unknown stain by what was answered so far. Every further answer leaves the same classes or fewer.
 *
 * @param answers - in any order, one per question; what is no answer of the table says nothing
 * @returns the classes left; `unknown` as class until one is left, the light and the pH were looked at, and
 * at least three questions were answered
 * @source common-practice (data/wash/differential.json)
 */
export function differentialOf(answers: readonly StainAnswer[]): Differential {
  const kept = answers.flatMap((given) => {
    const keeps = keptBy(given);
    return keeps === null ? [] : [{ question: given.question, keeps }];
  });
  const candidates = known.filter((one) => kept.every(({ keeps }) => keeps.includes(one)));
  const answered = new Set(kept.map(({ question }) => question));
  const isEnough =
    answered.size >= table.leastAnswers && table.mustAnswer.every((question) => answered.has(question));
  const [only] = candidates;
  return {
    candidates,
    class: isEnough && only !== undefined && candidates.length === 1 ? only : 'unknown',
    contradicted: candidates.length === 0 ? contradicting(kept) : [],
    next: stainQuestions.find(({ id }) => !answered.has(id)) ?? null,
  };
}

type Kept = readonly { readonly question: string; readonly keeps: readonly StainClass[] }[];

/** Two answers that share no class, else all of them together. */
function contradicting(kept: Kept): readonly string[] {
  for (const [index, one] of kept.entries()) {
    const other = kept
      .slice(index + 1)
      .find(({ keeps }) => !keeps.some((candidate) => one.keeps.includes(candidate)));
    if (other !== undefined) return [one.question, other.question];
  }
  return kept.map(({ question }) => question);
}
