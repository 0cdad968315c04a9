import type { DryAnswer, DryingProblem, DryScenario } from '../core/drying/index.ts';
import type { Result } from '../units/index.ts';

/** Works out drying forecasts without keeping waiting whoever asks for something else meanwhile. */
export interface Forecaster {
  /** The same scenario gives the same answer. */
  forecast(scenario: DryScenario): Promise<Result<DryAnswer, DryingProblem>>;
  close(): Promise<void>;
}
