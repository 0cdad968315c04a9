import { dryForecast } from '../../core/drying/index.ts';
import type { RoomAsked, RoomTold } from './roomTalk.ts';

addEventListener('message', ({ data }: MessageEvent<RoomAsked>) => {
  const began = performance.now();
  const answers = data.scenarios.map((scenario) => dryForecast(scenario));
  postMessage({ question: data.question, answers, ms: performance.now() - began } satisfies RoomTold);
});
