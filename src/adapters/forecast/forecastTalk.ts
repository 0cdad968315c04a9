import type { DryAnswer, DryingProblem, DryScenario } from '../../core/drying/index.ts';
import type { Result } from '../../units/index.ts';

/** What the thread is asked; the number tells which question an answer is for. */
export interface ForecastAsked {
  readonly question: number;
  readonly scenario: DryScenario;
}

export interface ForecastTold {
  readonly question: number;
  readonly answer: Result<DryAnswer, DryingProblem>;
}
