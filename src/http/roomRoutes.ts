import { Hono } from 'hono';
import { dryingAlarms } from '../app/dryingAlarms.ts';
import { forecastDrying } from '../app/forecastDrying.ts';
import type { House } from '../app/house.ts';
import { issueSensor, listRooms, readRoom, readRoomRecord, recordRoom, takeReadings } from '../app/rooms.ts';
import {
  forecastRequest,
  readShape,
  roomEntriesRequest,
  roomRecordRequest,
  sensorReadings,
  sensorRequest,
} from '../contract/index.ts';
import type { RoomFact } from '../dossier/roomFacts.ts';
import { answerOf, jsonAnswer, problemAnswer } from './answers.ts';
import { type Guarded, ownersOnly } from './guard.ts';
import { readJsonBody } from './readBody.ts';

/** Drying rooms: reading and recording, by people. */
export function roomRoutes(house: House) {
  const routes = new Hono<Guarded>();
  routes.get('/rooms', async () => jsonAnswer(await listRooms(house)));
  routes.get('/drying-alarms', async () => jsonAnswer(await dryingAlarms(house)));
  routes.get('/rooms/:room', async (route) => answerOf(await readRoom(house, route.req.param('room'))));
  routes.get('/rooms/:room/record', async (route) => {
    const asked = readShape(roomRecordRequest, route.req.query());
    return asked.ok
      ? answerOf(await readRoomRecord(house, route.req.param('room'), asked.value))
      : problemAnswer(asked.problem);
  });
  routes.post('/rooms/:room/entries', async (route) => {
    const request = await readJsonBody(route.req.raw, roomEntriesRequest);
    if (!request.ok) return problemAnswer(request.problem);
    const { expectedRevision, drafts } = request.value;
    const asked = { expectedRevision, drafts: drafts as readonly { id: string; fact: RoomFact }[] };
    const recorded = await recordRoom(house, route.get('actor'), route.req.param('room'), asked);
    return answerOf(recorded, (entries) => ({ entries }));
  });
  routes.post('/rooms/:room/sensors', ownersOnly, async (route) => {
    const request = await readJsonBody(route.req.raw, sensorRequest);
    return request.ok
      ? answerOf(await issueSensor(house, route.get('actor'), route.req.param('room'), request.value))
      : problemAnswer(request.problem);
  });
  routes.post('/rugs/:rug/drying-forecast', async (route) => {
    const request = await readJsonBody(route.req.raw, forecastRequest);
    if (!request.ok) return problemAnswer(request.problem);
    const { room } = request.value;
    const made = await forecastDrying(house, route.get('actor'), route.req.param('rug'), room);
    return answerOf(made, (entries) => ({ entries }));
  });
  return routes;
}

const tokenIn = (header: string | undefined): string | null =>
  /^Bearer +([A-Za-z0-9_-]{20,200})$/.exec(header ?? '')?.[1] ?? null;

/**
 * Where sensors send what they measure. It stands before the guards for people: a token in a header is never
 * sent by a browser of itself, so no other site can use it.
 */
export function sensorRoutes(house: House) {
  const routes = new Hono();
  routes.post('/rooms/:room/readings', async (route) =>
    answerOf(
      await takeReadings(house, route.req.param('room'), tokenIn(route.req.header('authorization')), () =>
        readJsonBody(route.req.raw, sensorReadings),
      ),
    ),
  );
  return routes;
}
