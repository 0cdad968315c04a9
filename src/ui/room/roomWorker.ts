import { dryForecast } from '../../core/drying/index.ts';
import type { RoomAsked, RoomTold } from './roomTalk.ts';

addEventListener('message', ({ data }: MessageEvent<RoomAsked>) => {
  const began = performance.now();
  const answer = dryForecast(data.scenario);
  postMessage({ question: data.question, answer, ms: performance.now() - began } satisfies RoomTold);
});
