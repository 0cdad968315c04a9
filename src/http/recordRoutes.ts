import { Hono } from 'hono';
import { addClient, eraseClient, findClients, readClient, recordClient } from '../app/clients.ts';
import type { House } from '../app/house.ts';
import { lendHand } from '../app/lendHand.ts';
import { receiveConsignment } from '../app/receiveConsignment.ts';
import { recordEntries } from '../app/recordEntries.ts';
import { listRugs, readRug, rugsOfClient } from '../app/rugs.ts';
import { openStops } from '../app/stops.ts';
import { today } from '../app/today.ts';
import {
  clientEntriesRequest,
  clientRequest,
  consignmentRequest,
  eraseRequest,
  handRequest,
  readShape,
  recordRequest,
  rowsQuery,
} from '../contract/index.ts';
import { answerOf, jsonAnswer, problemAnswer } from './answers.ts';
import { type Guarded, ownersOnly } from './guard.ts';
import { readJsonBody } from './readBody.ts';

/** Rugs, consignments, clients, Today: reading and recording. */
export function recordRoutes(house: House) {
  const routes = new Hono<Guarded>();

  routes.get('/stops', async () => jsonAnswer(await openStops(house)));
  routes.get('/today', async () => jsonAnswer(await today(house)));

  routes.get('/rugs', async (route) => {
    const query = readShape(rowsQuery, route.req.query());
    return query.ok ? jsonAnswer({ rows: await listRugs(house, query.value) }) : problemAnswer(query.problem);
  });

  routes.get('/rugs/:rug', async (route) => answerOf(await readRug(house, route.req.param('rug'))));

  routes.post('/rugs/:rug/entries', async (route) => {
    const request = await readJsonBody(route.req.raw, recordRequest);
    if (!request.ok) return problemAnswer(request.problem);
    const recorded = await recordEntries(house, route.get('actor'), route.req.param('rug'), request.value);
    return answerOf(recorded, (entries) => ({ entries }));
  });

  routes.post('/rugs/:rug/hands', async (route) => {
    const request = await readJsonBody(route.req.raw, handRequest);
    if (!request.ok) return problemAnswer(request.problem);
    const lent = await lendHand(house, route.req.param('rug'), request.value);
    return answerOf(lent, (entries) => ({ entries }));
  });

  routes.post('/consignments', async (route) => {
    const request = await readJsonBody(route.req.raw, consignmentRequest);
    return request.ok
      ? answerOf(await receiveConsignment(house, route.get('actor'), request.value))
      : problemAnswer(request.problem);
  });

  routes.get('/clients', async (route) =>
    jsonAnswer({ rows: await findClients(house, route.req.query('find') ?? '') }),
  );

  routes.post('/clients', async (route) => {
    const request = await readJsonBody(route.req.raw, clientRequest);
    return request.ok
      ? answerOf(await addClient(house, route.get('actor'), request.value), (entries) => ({ entries }))
      : problemAnswer(request.problem);
  });

  routes.get('/clients/:client', async (route) => {
    const client = route.req.param('client');
    return answerOf(await readClient(house, client, await rugsOfClient(house, client)));
  });

  routes.post('/clients/:client/entries', async (route) => {
    const request = await readJsonBody(route.req.raw, clientEntriesRequest);
    if (!request.ok) return problemAnswer(request.problem);
    const recorded = await recordClient(house, route.get('actor'), route.req.param('client'), request.value);
    return answerOf(recorded, (entries) => ({ entries }));
  });

  routes.post('/clients/:client/erase', ownersOnly, async (route) => {
    const request = await readJsonBody(route.req.raw, eraseRequest);
    if (!request.ok) return problemAnswer(request.problem);
    const { reason } = request.value;
    return answerOf(
      await eraseClient(house, route.get('actor'), route.req.param('client'), reason),
      () => ({}),
    );
  });
  return routes;
}
