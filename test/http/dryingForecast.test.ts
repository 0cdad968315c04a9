import { expect, test } from 'vitest';
import type { RoomAlarmsTold, RoomAnswer } from '../../src/contract/index.ts';
import { dryForecast } from '../../src/core/drying/index.ts';
import {
  type Entry,
  forecastInstant,
  hangingOf,
  roomAheadHours,
  roomAlarms,
  roomScenario,
  standingOf,
} from '../../src/dossier/index.ts';
import { roomAlarmWords } from '../../src/text/roomAlarmWords.ts';
import { inventedRoom } from '../support/dryingRoomFacts.ts';
import { consignmentOf, draft, measured, newId } from '../support/intake.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import { openedHouse } from '../support/tablet.ts';

async function rugAndRoom() {
  const house = memoryHouse();
  const { owner } = await openedHouse(house);
  const request = consignmentOf('41');
  await owner.post('/api/consignments', request);
  const rug = request.rugs[0]?.rug ?? '';
  const room = (...facts: readonly { readonly type: string }[]) =>
    owner.post('/api/rooms/attic/entries', {
      expectedRevision: 0,
      drafts: facts.map((fact) => ({ id: newId(), fact })),
    });
  const forecast = () => owner.post(`/api/rugs/${rug}/drying-forecast`, { room: 'attic' });
  const measure = () =>
    owner.post(`/api/rugs/${rug}/entries`, { expectedRevision: 2, drafts: [draft(measured)] });
  // Nobody can put a rug to water here without tests and consent; how it came to be wet is not what this is about.
  const wetted = async (wet: string) => {
    const facts = [
      { type: 'StepStarted', step: '1-wet-out', wets: true },
      { type: 'DryingStarted', posture: 'flat on floor', place: 'floor', room: 'attic' },
    ];
    const stream = `rug/${wet}`;
    const { revision } = await house.ledger.head(stream);
    const drafts = facts.map((fact) => ({
      ...{ id: newId(), stream, at: house.clock.now(), by: 'tobin', version: 1 },
      fact,
    }));
    expect((await house.ledger.append([{ stream, expectedRevision: revision, drafts }])).ok).toBe(true);
  };
  return { owner, rug, room, forecast, measure, wetted };
}

const air = { type: 'AirRead', where: 'room', airC: 28, rh: 0.45 };
const outside = { type: 'AirRead', where: 'outside', airC: 6, rh: 0.8 };
const on = (machine: string) => ({ type: 'MachineSwitched', machine, on: true });

test('a forecast is made by the server and kept with all it was made from; the same record gives the same hours', async () => {
  const { room, forecast, measure } = await rugAndRoom();
  expect((await forecast()).body['code']).toBe('room-unknown');
  await room(inventedRoom, outside, on('dry-1'), on('fan-1'));
  expect((await forecast()).body['code']).toBe('size-not-measured');
  await measure();
  expect((await forecast()).body['code']).toBe('room-air-unknown');
  await room(air);
  const made = await forecast();
  expect(made.status).toBe(200);
  const factOf = ({ body }: typeof made) =>
    ({ ...(body['entries'] as readonly Entry[])[0]?.fact }) as Readonly<Record<string, unknown>>;
  const fact = factOf(made);
  expect(fact).toMatchObject({
    type: 'DryingForecast',
    room: 'attic',
    share: 0.9,
    lookedHours: 120,
    among: [],
  });
  expect(Number(fact['hours'])).toBeGreaterThanOrEqual(Number(fact['medianHours']));
  expect(fact['scenario']).toMatchObject({ room: { volumeM3: 90 }, rugs: [{ areaM2: expect.any(Number) }] });
  expect(factOf(await forecast())['hours']).toBe(fact['hours']);
});

test('nobody may bring a forecast of their own', async () => {
  const { owner, rug, measure } = await rugAndRoom();
  await measure();
  const brought = {
    ...{ type: 'DryingForecast', room: 'attic', hours: 3, medianHours: 2, share: 0.9, lookedHours: 9 },
    ...{ among: [], scenario: {} },
  };
  const answer = await owner.post(`/api/rugs/${rug}/entries`, {
    expectedRevision: 3,
    drafts: [{ id: newId(), fact: brought }],
  });
  expect(answer).toMatchObject({ status: 422, body: { code: 'body-wrong-shape' } });
});

test('Today is told of a room before it happens: a still machine, a rug past its 48 hours; an empty room says nothing', async () => {
  const { owner, rug, room, measure, wetted } = await rugAndRoom();
  await room(inventedRoom, outside, air);
  expect((await owner.get('/api/drying-alarms')).body['rooms']).toEqual([]);
  await measure();
  await wetted(rug);
  const { body } = await owner.get('/api/drying-alarms');
  const [told] = body['rooms'] as readonly RoomAlarmsTold[];
  const codes = told?.alarms.map(({ code }) => code);
  expect(codes).toContain('machine-off');
  expect(codes).toContain('wet-past-red');
  const { body: shown } = await owner.get('/api/rooms/attic');
  expect(shown['hanging']).toMatchObject([{ rug, room: 'attic' }]);
  // The page works its own forecast out: of one record both say the same, to the last chance.
  const page = shown as unknown as RoomAnswer;
  const hanging = hangingOf(page.hanging.map((one) => ({ ...one, standing: standingOf(one.entries) })));
  const built = roomScenario(page.standing, hanging.rugs, forecastInstant(page.now), roomAheadHours);
  const answer = built.ok ? dryForecast(built.value.scenario) : null;
  if (answer?.ok !== true) throw new Error('no forecast');
  const onPage = roomAlarms(page.standing, { ...hanging, unmeasured: [] }, answer.value, page.now);
  expect(told?.alarms).toEqual(JSON.parse(JSON.stringify(onPage)));
});

test('a wet rug nobody measured is told of, and no rug is wetted by a forecast that lacks its water', async () => {
  const { owner, room, measure, forecast, wetted } = await rugAndRoom();
  await room(inventedRoom, outside, air, on('dry-1'), on('fan-1'));
  await measure();
  expect((await forecast()).status).toBe(200);
  const request = consignmentOf('42');
  await owner.post('/api/consignments', request);
  const other = request.rugs[0]?.rug ?? '';
  await wetted(other);
  const { body } = await owner.get('/api/drying-alarms');
  const [told] = body['rooms'] as readonly RoomAlarmsTold[];
  expect(told?.alarms).toContainEqual({ code: 'size-missing', rug: other });
  expect(told?.names[other]).toBe('42 Runner with three medallions');
  expect((await forecast()).body).toMatchObject({
    code: 'neighbour-not-measured',
    facts: { rugs: ['42 Runner with three medallions'] },
  });
});

test('where the room’s heat cannot be reckoned Today says so first, in place of silence', async () => {
  const { owner, rug, room, measure, wetted } = await rugAndRoom();
  const furnace = { kind: 'heater', machine: 'heat-1', name: 'Heater 1', watts: 50_000 };
  await room(
    { ...inventedRoom, wallsWPerK: 20, machines: [furnace] } as typeof inventedRoom,
    air,
    on('heat-1'),
  );
  await measure();
  await wetted(rug);
  const { body } = await owner.get('/api/drying-alarms');
  const [told] = body['rooms'] as readonly RoomAlarmsTold[];
  expect(told?.alarms[0]).toMatchObject({
    code: 'no-forecast',
    problem: { code: 'drying-room-runs-away', facts: { airC: expect.any(Number) } },
  });
  const words = told?.alarms.map((alarm) =>
    roomAlarmWords(alarm, { rug: String, at: String, instant: String }),
  )[0];
  expect(words).toMatch(/^No forecast of this room, so go by the clock\. .*°C by hour .*untilC/);
});
