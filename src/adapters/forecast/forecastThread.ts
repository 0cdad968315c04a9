import { parentPort } from 'node:worker_threads';
import { dryForecast } from '../../core/drying/index.ts';
import type { ForecastAsked, ForecastTold } from './forecastTalk.ts';

parentPort?.on('message', ({ question, scenario }: ForecastAsked) => {
  parentPort?.postMessage({ question, answer: dryForecast(scenario) } satisfies ForecastTold);
});
