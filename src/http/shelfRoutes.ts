import { Hono } from 'hono';
import type { House } from '../app/house.ts';
import { readShelf, recordShelf } from '../app/shelf.ts';
import { shelfUses } from '../app/shelfUses.ts';
import { shelfEntriesRequest } from '../contract/index.ts';
import { answerOf, jsonAnswer, problemAnswer } from './answers.ts';
import type { Guarded } from './guard.ts';
import { readJsonBody } from './readBody.ts';

/** The shelf and the supply water: reading and recording. */
export function shelfRoutes(house: House) {
  const routes = new Hono<Guarded>();
  routes.get('/shelf', async () => jsonAnswer({ standing: await readShelf(house) }));
  routes.get('/shelf/:agent/uses', async (route) =>
    jsonAnswer(await shelfUses(house, route.req.param('agent'))),
  );
  routes.post('/shelf/entries', async (route) => {
    const request = await readJsonBody(route.req.raw, shelfEntriesRequest);
    return request.ok
      ? answerOf(await recordShelf(house, route.get('actor'), request.value))
      : problemAnswer(request.problem);
  });
  return routes;
}
