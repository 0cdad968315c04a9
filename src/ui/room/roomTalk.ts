import type { DryAnswer, DryingProblem, DryScenario } from '../../core/drying/index.ts';
import type { Result } from '../../units/index.ts';

/** What the page asks of the worker; the number tells which question an answer is for. */
export interface RoomAsked {
  readonly question: number;
  readonly scenario: DryScenario;
}

export interface RoomTold {
  readonly question: number;
  readonly answer: Result<DryAnswer, DryingProblem>;
  readonly ms: number;
}
