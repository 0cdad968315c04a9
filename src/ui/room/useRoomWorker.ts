import { useCallback, useEffect, useState } from 'react';
import type { DryAnswer, DryingProblem, DryScenario, LearntDrying } from '../../core/drying/index.ts';
import { type RoomChange, type RugMoved, rugsMoved, whatIfOf } from '../../dossier/index.ts';
import type { Result } from '../../units/index.ts';
import { useDryWorker } from './useDryWorker.ts';

export interface Worked {
  readonly isBusy: boolean;
  readonly answer: Result<DryAnswer, DryingProblem> | null;
  readonly ms: number;
}

/** What a change would do: the likely course at once, how sure it is when two hundred draws are through. */
export interface Tried {
  readonly isBusy: boolean;
  readonly problem: DryingProblem | null;
  readonly moved: readonly RugMoved[] | null;
  readonly ms: number;
  /** With its bands; null until it has come. */
  readonly drawn: DryAnswer | null;
  readonly drawnMs: number;
}

const idle: Worked = { isBusy: false, answer: null, ms: 0 };
const untried: Tried = {
  ...{ isBusy: false, problem: null, moved: null, ms: 0, drawn: null, drawnMs: 0 },
};

/**
 * A room's forecast, and what a change would make of it, worked out beside the page; the last forecast stays
 * on screen until the new one has come. Draws and likely courses have a worker each, so that no question
 * waits for the draws of another.
 */
export function useRoomWorker(scenario: DryScenario | null, learning: LearntDrying | null) {
  const askDraws = useDryWorker();
  const askLikely = useDryWorker();
  const [forecast, setForecast] = useState<Worked>(idle);
  const [tried, setTried] = useState<Tried>(untried);

  useEffect(() => {
    if (scenario === null) {
      askDraws('forecast', null);
      setForecast(idle);
      return;
    }
    setForecast((before) => ({ ...before, isBusy: true }));
    askDraws('forecast', [scenario], ({ answers: [answer = null], ms }) =>
      setForecast({ isBusy: false, answer, ms }),
    );
  }, [scenario, askDraws]);

  const answer = forecast.answer?.ok === true ? forecast.answer.value : null;

  /** Asks what a change would do; null takes the question back. */
  const ask = useCallback(
    (change: RoomChange | null) => {
      if (change === null || scenario === null || answer === null) {
        askLikely('change', null);
        askDraws('change', null);
        setTried(untried);
        return;
      }
      const { before, after, drawn } = whatIfOf(scenario, answer, change, learning);
      setTried((known) => ({ ...known, isBusy: true, drawn: null }));
      askLikely('change', [before, after], ({ answers: [was, is], ms }) => {
        const problem = [was, is].find((one) => one?.ok === false);
        const moved = was?.ok && is?.ok ? rugsMoved(answer, was.value, is.value) : null;
        setTried((known) => ({
          ...{ ...known, isBusy: false, moved, ms },
          problem: problem?.ok === false ? problem.problem : null,
        }));
      });
      askDraws('change', [drawn], ({ answers: [sure], ms }) => {
        if (sure?.ok === true) setTried((known) => ({ ...known, drawn: sure.value, drawnMs: ms }));
      });
    },
    [scenario, answer, learning, askLikely, askDraws],
  );
  return { forecast, tried, ask, answer };
}
