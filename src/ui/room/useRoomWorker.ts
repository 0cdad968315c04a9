import { useCallback, useEffect, useRef, useState } from 'react';
import {
  asLearnt,
  type DryAnswer,
  type DryingProblem,
  type DryScenario,
  type LearntDrying,
} from '../../core/drying/index.ts';
import { changedScenario, type RoomChange } from '../../dossier/index.ts';
import type { Result } from '../../units/index.ts';
import type { RoomAsked, RoomTold } from './roomTalk.ts';

export interface Worked {
  readonly isBusy: boolean;
  readonly answer: Result<DryAnswer, DryingProblem> | null;
  readonly ms: number;
}

const idle: Worked = { isBusy: false, answer: null, ms: 0 };

/**
 * A room's forecast, and what a change would make of it, worked out beside the page by the same core the
 * server uses; the last forecast stays on screen until the new one has come.
 */
export function useRoomWorker(scenario: DryScenario | null, learning: LearntDrying | null) {
  const worker = useRef<Worker | null>(null);
  const asked = useRef({ question: 0, forecast: 0, change: 0 });
  const [forecast, setForecast] = useState<Worked>(idle);
  const [changed, setChanged] = useState<Worked>(idle);

  useEffect(() => {
    const begun = new Worker(new URL('./roomWorker.ts', import.meta.url), { type: 'module' });
    worker.current = begun;
    begun.addEventListener('message', ({ data }: MessageEvent<RoomTold>) => {
      const { question, answer, ms } = data;
      // An answer to a question that was asked anew meanwhile is of no use.
      if (question === asked.current.forecast) setForecast({ isBusy: false, answer, ms });
      if (question === asked.current.change) setChanged({ isBusy: false, answer, ms });
    });
    return () => begun.terminate();
  }, []);

  const put = useCallback((of: DryScenario): number => {
    asked.current.question += 1;
    const { question } = asked.current;
    worker.current?.postMessage({ question, scenario: of } satisfies RoomAsked);
    return question;
  }, []);

  useEffect(() => {
    if (scenario === null) {
      setForecast(idle);
      return;
    }
    setForecast((before) => ({ ...before, isBusy: true }));
    asked.current.forecast = put(scenario);
  }, [scenario, put]);

  /** Asks what a change would do; null takes the question back. */
  const ask = useCallback(
    (change: RoomChange | null) => {
      asked.current.change = 0;
      if (change === null || scenario === null) {
        setChanged(idle);
        return;
      }
      setChanged((before) => ({ ...before, isBusy: true }));
      const other = changedScenario(scenario, change);
      // A rug the change adds is believed as past rugs of its make were.
      asked.current.change = put(learning === null ? other : asLearnt(other, learning));
    },
    [scenario, learning, put],
  );
  return { forecast, changed, ask, answer: forecast.answer?.ok === true ? forecast.answer.value : null };
}
