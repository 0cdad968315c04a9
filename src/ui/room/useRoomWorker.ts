import { useEffect, useRef, useState } from 'react';
import type { DryAnswer, DryingProblem, DryScenario } from '../../core/drying/index.ts';
import type { Result } from '../../units/index.ts';
import type { RoomAsked, RoomTold } from './roomTalk.ts';

export interface Worked {
  readonly isBusy: boolean;
  readonly answer: Result<DryAnswer, DryingProblem> | null;
  readonly ms: number;
}

const idle: Worked = { isBusy: false, answer: null, ms: 0 };

/**
 * A room's forecast, worked out beside the page by the same core the server uses; the last one stays on
 * screen until the new one has come.
 */
export function useRoomWorker(scenario: DryScenario | null) {
  const worker = useRef<Worker | null>(null);
  const asked = useRef(0);
  const [forecast, setForecast] = useState<Worked>(idle);

  useEffect(() => {
    const begun = new Worker(new URL('./roomWorker.ts', import.meta.url), { type: 'module' });
    worker.current = begun;
    begun.addEventListener('message', ({ data }: MessageEvent<RoomTold>) => {
      if (data.question === asked.current) setForecast({ isBusy: false, answer: data.answer, ms: data.ms });
    });
    return () => begun.terminate();
  }, []);

  useEffect(() => {
    asked.current += 1;
    if (scenario === null) {
      setForecast(idle);
      return;
    }
    setForecast((before) => ({ ...before, isBusy: true }));
    worker.current?.postMessage({ question: asked.current, scenario } satisfies RoomAsked);
  }, [scenario]);

  return { forecast, answer: forecast.answer?.ok === true ? forecast.answer.value : null };
}
