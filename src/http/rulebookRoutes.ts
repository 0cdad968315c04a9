import { Hono } from 'hono';
import type { House } from '../app/house.ts';
import { changeRule, previewRule, readRulebook } from '../app/rulebook.ts';
import { ruleChangeRequest, rulePreviewRequest } from '../contract/index.ts';
import { answerOf, jsonAnswer, problemAnswer } from './answers.ts';
import { type Guarded, ownersOnly } from './guard.ts';
import { readJsonBody } from './readBody.ts';

/** The workshop's rulebook: read by all, tried and changed by an owner. */
export function rulebookRoutes(house: House) {
  const routes = new Hono<Guarded>();
  routes.get('/rulebook', async () => jsonAnswer(await readRulebook(house)));

  routes.post('/rulebook/preview', ownersOnly, async (route) => {
    const request = await readJsonBody(route.req.raw, rulePreviewRequest);
    return request.ok ? answerOf(await previewRule(house, request.value)) : problemAnswer(request.problem);
  });

  routes.post('/rulebook', ownersOnly, async (route) => {
    const request = await readJsonBody(route.req.raw, ruleChangeRequest);
    return request.ok
      ? answerOf(await changeRule(house, route.get('actor'), request.value))
      : problemAnswer(request.problem);
  });
  return routes;
}
