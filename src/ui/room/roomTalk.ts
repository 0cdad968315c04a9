import type { DryAnswer, DryingProblem, DryScenario } from '../../core/drying/index.ts';
import type { Result } from '../../units/index.ts';

/** What the page asks of a worker; the number tells which question an answer is for. */
export interface RoomAsked {
  readonly question: number;
  readonly scenarios: readonly DryScenario[];
}

export interface RoomTold {
  readonly question: number;
  /** One for each scenario, in its order. */
  readonly answers: readonly Result<DryAnswer, DryingProblem>[];
  readonly ms: number;
}
