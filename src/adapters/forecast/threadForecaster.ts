import { Worker } from 'node:worker_threads';
import type { DryAnswer, DryingProblem } from '../../core/drying/index.ts';
import type { Forecaster } from '../../ports/forecaster.ts';
import type { Result } from '../../units/index.ts';
import type { ForecastAsked, ForecastTold } from './forecastTalk.ts';

type Answer = Result<DryAnswer, DryingProblem>;
interface Waiting {
  readonly resolve: (answer: Answer) => void;
  readonly reject: (error: Error) => void;
}

/**
 * Forecasts in a thread of their own: two hundred draws of a full room take a second, in which a server of one
 * thread would answer no tablet. The thread is begun when it is first asked, and anew should it ever fall.
 *
 * @param script - the thread's own bundle
 */
export function threadForecaster(script: URL): Forecaster {
  let thread: Worker | null = null;
  let asked = 0;
  const waiting = new Map<number, Waiting>();

  const fallen = (error: Error): void => {
    thread = null;
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  };

  const begun = (): Worker => {
    if (thread !== null) return thread;
    const fresh = new Worker(script);
    // It never keeps a process alive that has nothing else to do.
    fresh.unref();
    fresh.on('message', ({ question, answer }: ForecastTold) => {
      waiting.get(question)?.resolve(answer);
      waiting.delete(question);
    });
    fresh.on('error', fallen);
    fresh.on('exit', (code) => {
      if (thread === fresh) fallen(new Error(`The forecasting thread ended with ${code}.`));
    });
    thread = fresh;
    return fresh;
  };

  return {
    forecast: (scenario) =>
      new Promise<Answer>((resolve, reject) => {
        asked += 1;
        waiting.set(asked, { resolve, reject });
        begun().postMessage({ question: asked, scenario } satisfies ForecastAsked);
      }),
    async close() {
      await thread?.terminate();
    },
  };
}
