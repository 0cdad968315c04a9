import { describe, expect, test } from 'vitest';
import { inventedRoom } from '../support/dryingRoomFacts.ts';
import { newId } from '../support/intake.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import { appOf, openedHouse } from '../support/tablet.ts';

type Fact = Readonly<Record<string, unknown>> & { readonly type: string };
const draft = (fact: Fact) => ({ id: newId(), fact });

async function roomSetUp() {
  const house = memoryHouse();
  const opened = await openedHouse(house);
  const record = (expectedRevision: number, ...facts: readonly Fact[]) =>
    opened.owner.post('/api/rooms/attic/entries', { expectedRevision, drafts: facts.map(draft) });
  expect((await record(0, { ...inventedRoom })).status).toBe(200);
  const app = appOf(house);
  const send = (token: string | null, body: unknown, type = 'application/json') =>
    app.request('/api/rooms/attic/readings', {
      method: 'POST',
      headers: { 'content-type': type, ...(token === null ? {} : { authorization: `Bearer ${token}` }) },
      body: JSON.stringify(body),
    });
  const issued = await opened.owner.post('/api/rooms/attic/sensors', { name: 'Probe north', where: 'room' });
  return {
    ...opened,
    house,
    record,
    send,
    token: String(issued.body['token']),
    sensor: issued.body['sensor'],
  };
}

describe('a drying room', () => {
  test('is set up, switched and read, and its list row is the same when made anew', async () => {
    const { owner, record, house } = await roomSetUp();
    const facts = [
      { type: 'MachineSwitched', machine: 'dry-1', on: true },
      { type: 'AirRead', where: 'room', airC: 28.5, rh: 0.44 },
      { type: 'WindowSet', open: true },
    ];
    expect((await record(2, ...facts)).status).toBe(200);
    const { body } = await owner.get('/api/rooms');
    expect(body['rooms']).toEqual([
      {
        room: 'attic',
        body: { name: 'Drying room', poles: 2, meshes: 1, machinesOn: 1, machines: 2, windowsOpen: true },
      },
    ]);
    const before = await house.ledger.list({ kind: 'room', limit: 9 });
    await house.ledger.rebuild();
    expect(await house.ledger.list({ kind: 'room', limit: 9 })).toEqual(before);
    const { body: room } = await owner.get('/api/rooms/attic');
    expect(room['standing']).toMatchObject({ room: [{ airC: 28.5, rh: 0.44 }], windows: [{ on: true }] });
    expect(room).toMatchObject({ hanging: [], elsewhere: [] });
  });

  test('what is not there, not measured or not yet is refused with what it was', async () => {
    const { record, owner } = await roomSetUp();
    const refused = async (fact: Fact) => (await record(2, fact)).body['code'];
    expect(await refused({ type: 'MachineSwitched', machine: 'dry-9', on: true })).toBe('machine-unknown');
    expect(await refused({ type: 'AirRead', where: 'room' })).toBe('nothing-measured');
    expect(await refused({ type: 'AirRead', where: 'room', rh: 140 })).toBe('body-wrong-shape');
    const future = { type: 'AirRead', where: 'room', rh: 0.5, happenedAt: '2031-01-01T00:00:00Z' };
    expect(await refused(future)).toBe('in-the-future');
    const [machine] = inventedRoom.machines;
    expect(await refused({ ...inventedRoom, machines: [machine, machine] })).toBe('room-part-named-twice');
    expect(await refused({ type: 'SensorIssued', sensor: 's', name: 'x', where: 'room' })).toBe(
      'body-wrong-shape',
    );
    const elsewhere = await owner.post('/api/rooms/cellar/entries', {
      expectedRevision: 0,
      drafts: [draft({ type: 'WindowSet', open: true })],
    });
    expect(elsewhere.body['code']).toBe('room-not-set-up');
    expect((await owner.get('/api/rooms/cellar')).status).toBe(404);
  });

  test('two descriptions at once: the second is shown the first', async () => {
    const { record } = await roomSetUp();
    expect((await record(2, { ...inventedRoom, volumeM3: 95 })).status).toBe(200);
    const late = await record(2, { ...inventedRoom, volumeM3: 80 });
    expect(late).toMatchObject({ status: 409, body: { code: 'stream-moved-on' } });
  });
});

describe('a sensor', () => {
  test('records with its token alone, and only a hash of the token is kept', async () => {
    const { send, token, owner, house } = await roomSetUp();
    const sent = await send(token, {
      readings: [
        { at: '2026-03-02T07:50:00Z', temperatureC: 29.1, humidity: 0.51 },
        { temperatureC: 29.3, humidity: 0.5 },
      ],
    });
    expect(sent.status).toBe(200);
    expect(await sent.json()).toEqual({ recorded: 2 });
    const { body } = await owner.get('/api/rooms/attic');
    expect(body['standing']).toMatchObject({
      room: [
        { airC: 29.1, rh: 0.51, from: 'Probe north', when: '2026-03-02T07:50:00Z' },
        { airC: 29.3, rh: 0.5, when: '2026-03-02T08:00:00.000Z' },
      ],
    });
    expect(JSON.stringify(await house.ledger.read('room/attic'))).not.toContain(token);
  });

  test('without a token, with a wrong one or a revoked one nothing is recorded', async () => {
    const { send, token, sensor, record, house } = await roomSetUp();
    const reading = { readings: [{ humidity: 0.5 }] };
    expect((await send(null, reading)).status).toBe(401);
    expect((await send(`${token}x`, reading)).status).toBe(401);
    expect((await record(2, { type: 'SensorRevoked', sensor })).status).toBe(200);
    const { revision } = await house.ledger.head('room/attic');
    const refused = await send(token, reading);
    expect(refused.status).toBe(403);
    expect(await refused.json()).toMatchObject({ code: 'sensor-revoked', facts: { sensor: 'Probe north' } });
    expect((await house.ledger.head('room/attic')).revision).toBe(revision);
  });

  test('a value that cannot be right is named, and so is a body that is no JSON', async () => {
    const { send, token } = await roomSetUp();
    const wrong = await send(token, { readings: [{ humidity: 51 }] });
    expect(wrong.status).toBe(422);
    expect(await wrong.json()).toMatchObject({
      code: 'body-wrong-shape',
      facts: { field: 'readings[0].humidity' },
    });
    expect((await send(token, { readings: [{}] })).status).toBe(422);
    expect((await send(token, {}, 'text/plain')).status).toBe(415);
  });

  test('that sends too often is told how long to wait, and is heard again later', async () => {
    const { send, token, house } = await roomSetUp();
    const reading = { readings: [{ humidity: 0.5 }] };
    for (let post = 0; post < 20; post++) expect((await send(token, reading)).status).toBe(200);
    const refused = await send(token, reading);
    expect(refused.status).toBe(429);
    expect(Number(refused.headers.get('retry-after'))).toBe(600);
    house.setClock('2026-03-02T08:10:01.000Z');
    expect((await send(token, reading)).status).toBe(200);
  });
});
