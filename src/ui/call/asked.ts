import type { Answered } from './call.ts';
import type { ShownProblem } from './shownProblem.ts';

/** What the query cache throws and catches again; pages see the problem inside. */
export class Unanswered extends Error {
  readonly problem: ShownProblem;
  constructor(problem: ShownProblem) {
    super(problem.happened);
    this.problem = problem;
  }
}

export async function asked<Answer>(answering: Promise<Answered<Answer>>): Promise<Answer> {
  const answer = await answering;
  if (answer.ok) return answer.value;
  throw new Unanswered(answer.problem);
}

export const problemOf = (error: unknown): ShownProblem | null =>
  error instanceof Unanswered ? error.problem : null;
