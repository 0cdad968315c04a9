import { describe, expect, test } from 'vitest';
import type { RoomLine } from '../../src/dossier/index.ts';
import { inventedRoom } from '../support/dryingRoomFacts.ts';
import { consignmentOf, newId } from '../support/intake.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import { appOf, openedHouse } from '../support/tablet.ts';

type Fact = Readonly<Record<string, unknown>> & { readonly type: string };

async function attic() {
  const house = memoryHouse();
  const { owner, person } = await openedHouse(house);
  const record = async (...facts: readonly Fact[]) => {
    const { revision } = await house.ledger.head('room/attic');
    const drafts = facts.map((fact) => ({ id: newId(), fact }));
    const answer = await owner.post('/api/rooms/attic/entries', { expectedRevision: revision, drafts });
    return { ...answer, ids: drafts.map(({ id }) => id) };
  };
  const lines = async (query = 'part=acts') =>
    (await owner.get(`/api/rooms/attic/record?${query}`)).body as unknown as {
      readonly lines: readonly RoomLine[];
      readonly more: boolean;
    };
  expect((await record({ ...inventedRoom })).status).toBe(200);
  return { house, owner, person, record, lines };
}

/** A wet rug in the room, put there as the ledger would hold it. */
async function wetRugIn({ house, owner }: Awaited<ReturnType<typeof attic>>, room: string): Promise<string> {
  const request = consignmentOf('41');
  await owner.post('/api/consignments', request);
  const stream = `rug/${request.rugs[0]?.rug ?? ''}`;
  const { revision } = await house.ledger.head(stream);
  const facts = [
    { type: 'StepStarted', step: '1-wet-out', wets: true },
    { type: 'DryingStarted', posture: 'flat on floor', place: 'floor', room },
  ];
  const drafts = facts.map((fact) => ({
    ...{ id: newId(), stream, at: house.clock.now(), by: 'tobin', version: 1 },
    fact,
  }));
  expect((await house.ledger.append([{ stream, expectedRevision: revision, drafts }])).ok).toBe(true);
  return stream.slice('rug/'.length);
}

describe('the record of a room', () => {
  test('tells who did what, the newest first; a mistyped reading is withdrawn with its reason and counts no more', async () => {
    const { record, lines, owner, person } = await attic();
    const wrong = await record({ type: 'AirRead', where: 'room', airC: 58, rh: 0.44 });
    await record({ type: 'MachineSwitched', machine: 'dry-1', on: true });
    expect((await lines()).lines.map(({ fact, by }) => [fact.type, by])).toEqual([
      ['MachineSwitched', person],
      ['AirRead', person],
      ['RoomSetUp', person],
    ]);
    const [entry = ''] = wrong.ids;
    expect((await record({ type: 'EntryWithdrawn', entry, reason: 'Typed 58 for 28.' })).status).toBe(200);
    const told = await lines();
    expect(told.lines.find((line) => line.entry === entry)).toMatchObject({
      withdrawn: { by: person, reason: 'Typed 58 for 28.' },
      isWithdrawable: false,
    });
    expect(told.lines.map(({ fact }) => fact.type)).not.toContain('EntryWithdrawn');
    expect((await owner.get('/api/rooms/attic')).body['standing']).toMatchObject({ room: [] });
    const again = await record({ type: 'EntryWithdrawn', entry, reason: 'Once more.' });
    expect(again).toMatchObject({ status: 409, body: { code: 'entry-withdrawn-already' } });
  });

  test('keeps what sensors sent apart, shortened, and tells it page by page', async () => {
    const { house, owner, lines } = await attic();
    const issued = await owner.post('/api/rooms/attic/sensors', { name: 'Probe north', where: 'room' });
    const rows = Array.from({ length: 30 }, (_, minute) => ({
      at: `2026-03-02T07:${String(minute).padStart(2, '0')}:00Z`,
      humidity: 0.5,
    }));
    const sent = await appOf(house).request('/api/rooms/attic/readings', {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        authorization: `Bearer ${String(issued.body['token'])}`,
      },
      body: JSON.stringify({ readings: rows }),
    });
    expect(sent.status).toBe(200);
    const [line] = (await lines('part=sent')).lines;
    expect(line).toMatchObject({ sensor: 'Probe north', rows: 30, isWithdrawable: true });
    expect(line?.fact.type === 'AirLogged' ? line.fact.rows.map(({ at }) => at) : []).toEqual([
      rows[0]?.at,
      rows[29]?.at,
    ]);
    expect((await lines()).lines.map(({ fact }) => fact.type)).toEqual(['SensorIssued', 'RoomSetUp']);
    expect((await lines('part=acts&before=2')).lines.map(({ revision }) => revision)).toEqual([1]);
    const bad = await owner.get('/api/rooms/attic/record?part=all');
    expect(bad).toMatchObject({ status: 422, body: { code: 'body-wrong-shape', facts: { field: 'part' } } });
    expect((await owner.get('/api/rooms/cellar/record?part=acts')).status).toBe(404);
  });
});

describe('closing a room', () => {
  test('is refused while a wet rug is in it, and says which', async () => {
    const told = await attic();
    await wetRugIn(told, 'attic');
    const refused = await told.record({ type: 'RoomClosed' });
    expect(refused).toMatchObject({ status: 409, body: { code: 'room-not-empty' } });
    expect(String(refused.body['title'])).toMatch(/Still wet in this room: 41 /);
  });

  test('takes it out of every choice, keeps its record, and is taken back by its withdrawal', async () => {
    const told = await attic();
    const { record, owner, lines } = told;
    const closing = await record({ type: 'RoomClosed', why: 'The roof leaks.' });
    expect(closing.status).toBe(200);
    expect((await owner.get('/api/rooms')).body['rooms']).toMatchObject([
      { room: 'attic', body: { closedAt: expect.any(String) } },
    ]);
    const read: Fact = { type: 'AirRead', where: 'room', rh: 0.5 };
    expect(await record(read)).toMatchObject({ status: 409, body: { code: 'room-closed' } });
    expect(await record({ ...inventedRoom })).toMatchObject({ body: { code: 'room-closed' } });
    const rug = await wetRugIn(told, 'cellar');
    const { revision } = await told.house.ledger.head(`rug/${rug}`);
    const hang = {
      ...{ type: 'DryingStarted', posture: 'flat on floor', place: 'Drying room', room: 'attic' },
    };
    const hung = await owner.post(`/api/rugs/${rug}/entries`, {
      ...{ expectedRevision: revision, drafts: [{ id: newId(), fact: hang }] },
    });
    expect(hung).toMatchObject({ status: 409, body: { code: 'room-closed' } });
    expect((await lines()).lines[0]).toMatchObject({ fact: { type: 'RoomClosed' }, isWithdrawable: true });
    const [entry = ''] = closing.ids;
    await record({ type: 'EntryWithdrawn', entry, reason: 'The roof is mended.' });
    expect((await record(read)).status).toBe(200);
    expect((await owner.get('/api/rooms')).body['rooms']).toMatchObject([{ body: { windowsOpen: false } }]);
  });
});
