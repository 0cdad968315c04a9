import { useCallback, useEffect, useRef } from 'react';
import type { DryScenario } from '../../core/drying/index.ts';
import type { RoomAsked, RoomTold } from './roomTalk.ts';

interface Question {
  readonly about: string;
  readonly scenarios: readonly DryScenario[];
  readonly take: (told: RoomTold) => void;
}

/**
 * A worker beside the page that runs the drying core, the same the server uses. Of each subject only the
 * newest question waits: one that was asked anew meanwhile is let go, and its answer is not told.
 *
 * @returns asks a question about a subject; null instead of scenarios takes the question back
 */
export function useDryWorker() {
  const worker = useRef<Worker | null>(null);
  const waiting = useRef(new Map<string, Question>());
  const asked = useRef<{ readonly question: number; readonly of: Question } | null>(null);
  const count = useRef(0);

  const next = useCallback(() => {
    if (worker.current === null || asked.current !== null) return;
    const [first] = waiting.current.values();
    if (first === undefined) return;
    waiting.current.delete(first.about);
    count.current += 1;
    asked.current = { question: count.current, of: first };
    worker.current.postMessage({
      ...{ question: count.current, scenarios: first.scenarios },
    } satisfies RoomAsked);
  }, []);

  useEffect(() => {
    const begun = new Worker(new URL('./roomWorker.ts', import.meta.url), { type: 'module' });
    worker.current = begun;
    begun.addEventListener('message', ({ data }: MessageEvent<RoomTold>) => {
      const done = asked.current;
      asked.current = null;
      if (done?.question === data.question) done.of.take(data);
      next();
    });
    next();
    return () => {
      begun.terminate();
      worker.current = null;
      asked.current = null;
    };
  }, [next]);

  return useCallback(
    (about: string, scenarios: readonly DryScenario[] | null, take: Question['take'] = () => {}) => {
      const running = asked.current;
      if (running?.of.about === about) {
        asked.current = { question: running.question, of: { ...running.of, take: () => {} } };
      }
      waiting.current.delete(about);
      if (scenarios === null) return;
      waiting.current.set(about, { about, scenarios, take });
      next();
    },
    [next],
  );
}
