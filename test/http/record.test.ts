import { describe, expect, test } from 'vitest';
import type { House } from '../../src/app/house.ts';
import type { Entry } from '../../src/dossier/entry.ts';
import { consignmentOf, draft, halide, measured, newId } from '../support/intake.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import { type Answered, openedHouse, type Tablet } from '../support/tablet.ts';

const entriesIn = ({ body }: Answered): readonly Entry[] => body['entries'] as readonly Entry[];

async function received(tag = '41', house: House = memoryHouse()) {
  const opened = await openedHouse(house);
  const request = consignmentOf(tag);
  const answer = await opened.owner.post('/api/consignments', request);
  expect(answer.status).toBe(200);
  const rug = request.rugs[0]?.rug ?? '';
  return { ...opened, house, request, rug, client: request.client.client };
}

const record = (
  tablet: Tablet,
  rug: string,
  expectedRevision: number,
  ...facts: readonly Parameters<typeof draft>[0][]
) => tablet.post(`/api/rugs/${rug}/entries`, { expectedRevision, drafts: facts.map(draft) });

describe('receiving', () => {
  test('a client, a signature and two rugs come in together, each with its own number', async () => {
    const { owner } = await openedHouse(memoryHouse());
    const one = consignmentOf('41');
    const two = consignmentOf('42', { consignment: one.consignment, client: one.client });
    const signature = {
      type: 'SignatureTaken',
      signature: newId(),
      name: 'Halide Örn',
      statement: 'Handed over.',
      strokes: [],
    };
    const answer = await owner.post('/api/consignments', {
      ...one,
      signature,
      rugs: [...one.rugs, ...two.rugs],
    });
    expect(answer.status).toBe(200);
    expect(answer.body['rugs']).toMatchObject([{ number: 1 }, { number: 2 }]);
    const { body } = await owner.get(`/api/rugs?consignment=${one.consignment}`);
    expect(body['rows']).toMatchObject([
      { tag: '42', clientName: 'Halide Örn', inHouse: true, body: { number: 2 } },
      { tag: '41', clientName: 'Halide Örn', inHouse: true, body: { number: 1 } },
    ]);
    const client = await owner.get(`/api/clients/${one.client.client}`);
    expect(client.body).toMatchObject({
      standing: { kind: 'known', name: 'Halide Örn', signatures: { [signature.signature]: {} } },
    });
    expect(client.body['rugs']).toHaveLength(2);
  });

  test('sent again after a lost answer, it is recorded once and answered the same', async () => {
    const { owner, request, rug } = await received();
    const again = await owner.post('/api/consignments', request);
    expect(again).toMatchObject({ status: 200, body: { rugs: [{ rug, number: 1 }] } });
    expect(entriesIn(await owner.get(`/api/rugs/${rug}`))).toHaveLength(2);
  });

  test('a tag that hangs on another rug in the house is refused with that rug, and nothing of it is recorded', async () => {
    const { owner, house } = await received('41');
    const second = consignmentOf('41');
    const answer = await owner.post('/api/consignments', second);
    expect(answer).toMatchObject({
      status: 409,
      body: { code: 'tag-in-use', facts: { tag: '41', number: 1 } },
    });
    expect(answer.body['title']).toBe(
      'Tag 41 hangs on another rug in the house: dossier 1, Runner with three medallions.',
    );
    expect(await house.ledger.streams('rug')).toHaveLength(1);
    expect(await house.ledger.streams('client')).toHaveLength(1);
  });

  test('two tablets that give the same tag in the same moment: one of them is told', async () => {
    const { owner } = await openedHouse(memoryHouse());
    const answers = await Promise.all(
      ['7', '7'].map((tag) => owner.post('/api/consignments', consignmentOf(tag))),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
  });

  test('many consignments at once get numbers without a gap', async () => {
    const { owner } = await openedHouse(memoryHouse());
    const answers = await Promise.all(
      Array.from({ length: 8 }, (_, index) =>
        owner.post('/api/consignments', consignmentOf(String(index + 1))),
      ),
    );
    const numbers = answers.map(({ body }) => (body['rugs'] as readonly { number: number }[])[0]?.number);
    expect(numbers.sort()).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  });

  test('an unknown client, a rug of another consignment, and one tag twice are refused by field', async () => {
    const { owner } = await openedHouse(memoryHouse());
    const nobody = consignmentOf('41', { client: { client: 'nobody' } });
    expect(await owner.post('/api/consignments', nobody)).toMatchObject({
      status: 404,
      body: { code: 'client-unknown' },
    });
    const foreign = consignmentOf('41', {}, { consignment: 'another' });
    expect((await owner.post('/api/consignments', foreign)).body).toMatchObject({
      ...{ code: 'body-wrong-shape', facts: { field: 'rugs[0] RugReceived.consignment', value: 'another' } },
    });
    const one = consignmentOf('41');
    const twice = consignmentOf('41', { consignment: one.consignment, client: one.client });
    const both = await owner.post('/api/consignments', { ...one, rugs: [...one.rugs, ...twice.rugs] });
    expect(both.body).toMatchObject({ facts: { field: 'rugs[1] RugReceived.tag', value: '41' } });
  });

  test('a rug that is in the house cannot be received a second time', async () => {
    const { owner, client, rug } = await received();
    const again = consignmentOf('42', { client: { client } });
    const drafts = again.rugs[0]?.drafts.slice(1) ?? [];
    const answer = await owner.post('/api/consignments', { ...again, rugs: [{ rug, drafts }] });
    expect(answer).toMatchObject({ status: 409, body: { code: 'visit-under-way' } });
  });
});

describe('recording', () => {
  test('an entry is answered with who, when, revision and seal, and the same draft twice is one entry', async () => {
    const { owner, rug, person } = await received();
    const body = { expectedRevision: 2, drafts: [draft(measured)] };
    const [entry] = entriesIn(await owner.post(`/api/rugs/${rug}/entries`, body));
    expect(entry).toMatchObject({ by: person, at: '2026-03-02T08:00:00.000Z', revision: 3, fact: measured });
    expect(entry?.seal).toMatch(/^[0-9a-f]{64}$/);
    expect(entriesIn(await owner.post(`/api/rugs/${rug}/entries`, body))).toEqual([entry]);
    expect(entriesIn(await owner.get(`/api/rugs/${rug}`))).toHaveLength(3);
  });

  test('one refused fact keeps all of its batch out', async () => {
    const { owner, rug } = await received();
    const answer = await record(
      owner,
      rug,
      2,
      { type: 'NoteAdded', note: 'Fringe is loose.' },
      { type: 'CameBack', condition: 'As it went.' },
    );
    expect(answer).toMatchObject({ status: 409, body: { code: 'not-out' } });
    expect(entriesIn(await owner.get(`/api/rugs/${rug}`))).toHaveLength(2);
  });

  test('two tablets that write of different things both get through', async () => {
    const { owner, rug } = await received();
    const answers = await Promise.all([
      record(owner, rug, 2, { type: 'NoteAdded', note: 'One.' }),
      record(owner, rug, 2, { type: 'NoteAdded', note: 'Two.' }),
      record(owner, rug, 2, measured),
    ]);
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 200]);
    const revisions = answers.flatMap((answer) => entriesIn(answer).map(({ revision }) => revision));
    expect(revisions.sort()).toEqual([3, 4, 5]);
  });

  test('two tablets that say different things of one colour: the second is shown what the first said', async () => {
    const { owner, rug } = await received();
    const naming = (name: string) => ({
      type: 'ColoursNamed' as const,
      colours: [{ colour: 'c1', name, kind: 'field colour' as const, dyeClass: 'unknown' as const }],
    });
    const first = await record(owner, rug, 2, naming('madder red'));
    expect(first.status).toBe(200);
    const second = await record(owner, rug, 2, naming('brick red'));
    expect(second).toMatchObject({
      status: 409,
      body: { code: 'stream-moved-on', facts: { expectedRevision: 2, actualRevision: 3 } },
    });
    expect(second.body['entries']).toMatchObject([
      { revision: 3, fact: { colours: [{ name: 'madder red' }] } },
    ]);
    expect((await record(owner, rug, 3, naming('brick red') as never)).status).toBe(200);
  });

  test('a withdrawal takes an entry out of the standing by whoever wrote it, and never the receipt', async () => {
    const { owner, rug } = await received();
    const [entry] = entriesIn(await record(owner, rug, 2, measured));
    const withdrawn = await record(owner, rug, 3, {
      type: 'EntryWithdrawn',
      entry: entry?.id ?? '',
      reason: 'Wrong rug.',
    });
    expect(withdrawn.status).toBe(200);
    const { body } = await owner.get('/api/rugs?tag=41');
    expect(body['rows']).toMatchObject([{ body: { sizeMm: null } }]);
    const first = entriesIn(await owner.get(`/api/rugs/${rug}`))[1];
    const never = await record(owner, rug, 4, {
      type: 'EntryWithdrawn',
      entry: first?.id ?? '',
      reason: 'No.',
    });
    expect(never.body['code']).toBe('entry-not-withdrawable');
  });

  test('an entry cannot name a photograph, a signature or a paper that is not there', async () => {
    const { owner, rug } = await received();
    const hash = 'ab'.repeat(32);
    const photo = {
      type: 'PhotographTaken',
      photo: hash,
      widthPx: 10,
      heightPx: 10,
      shows: 'face',
      occasion: 'intake',
    } as const;
    expect((await record(owner, rug, 2, photo)).body).toMatchObject({
      code: 'photograph-unknown',
      facts: { photo: hash },
    });
    const incident = {
      type: 'IncidentReported' as const,
      what: 'Pulled thread.',
      action: 'Secured.',
      clientTold: true,
      photos: [hash],
    };
    expect((await record(owner, rug, 2, incident)).body['code']).toBe('photograph-unknown');
    const client = await received('43');
    const signed = consignmentOf('44', { client: { client: client.client } }, { signature: 'never-taken' });
    expect((await client.owner.post('/api/consignments', signed)).body['code']).toBe('signature-unknown');
  });

  test('an unknown rug is 404, in words', async () => {
    const { owner } = await openedHouse(memoryHouse());
    expect(await owner.get('/api/rugs/none')).toMatchObject({
      status: 404,
      body: { code: 'rug-unknown', type: '/problems/rug-unknown' },
    });
    expect((await record(owner, 'none', 0, measured)).status).toBe(404);
  });
});

describe('finding', () => {
  test('rugs are found by tag, by words of their title whatever the accents, and by their client’s name', async () => {
    const { owner } = await received('41');
    for (const query of [
      'tag=41',
      'find=medall',
      'find=RUNNER%20med',
      'find=orn',
      'find=halide%20runner',
      'inHouse=true&limit=5',
    ]) {
      const { body } = await owner.get(`/api/rugs?${query}`);
      expect({ query, rows: (body['rows'] as readonly unknown[]).length }).toEqual({ query, rows: 1 });
    }
    for (const query of ['tag=4', 'find=kilim', 'inHouse=false']) {
      expect({ query, ...(await owner.get(`/api/rugs?${query}`)).body }).toEqual({ query, rows: [] });
    }
  });

  test('Today lists what is in the house with what it waits for', async () => {
    const { owner, rug } = await received();
    const { body } = await owner.get('/api/today');
    expect(body).toMatchObject({
      now: '2026-03-02T08:00:00.000Z',
      rows: [{ rug, tag: '41', clientName: 'Halide Örn' }],
    });
    const [row] = body['rows'] as readonly {
      readonly next: readonly { readonly deed: { readonly code: string } }[];
    }[];
    expect(row?.next[0]?.deed.code).toBe('measure');
  });
});

describe('clients', () => {
  test('a client is added, found, changed on the newest version only, and erased for good', async () => {
    const { owner, rug, client, house } = await received();
    expect(
      (await owner.post('/api/clients', { client, added: { ...halide, name: 'Another' } })).body['code'],
    ).toBe('client-added-already');
    expect((await owner.get('/api/clients?find=hal')).body['rows']).toMatchObject([
      { client, name: 'Halide Örn' },
    ]);
    const change = { type: 'ClientChanged', name: 'Halide Örn-Vale', phone: '0555 0143' };
    const changed = await owner.post(`/api/clients/${client}/entries`, {
      expectedRevision: 1,
      drafts: [{ id: newId(), fact: change }],
    });
    expect(changed.status).toBe(200);
    const stale = await owner.post(`/api/clients/${client}/entries`, {
      expectedRevision: 1,
      drafts: [{ id: newId(), fact: change }],
    });
    expect(stale).toMatchObject({ status: 409, body: { code: 'stream-moved-on' } });
    expect((await owner.get(`/api/rugs/${rug}`)).body).toMatchObject({ client: { name: 'Halide Örn-Vale' } });

    expect((await owner.post(`/api/clients/${client}/erase`, { reason: 'Asked for it.' })).status).toBe(200);
    expect((await owner.get(`/api/clients/${client}`)).body).toMatchObject({ standing: { kind: 'erased' } });
    expect((await owner.get(`/api/rugs/${rug}`)).body).toMatchObject({ client: { client, erased: true } });
    expect((await owner.get('/api/rugs?find=halide')).body).toEqual({ rows: [] });
    expect((await house.ledger.verify()).broken).toEqual([]);
    const workshop = await house.ledger.read('workshop');
    expect(workshop.at(-1)?.fact).toEqual({ type: 'ClientErased', client, reason: 'Asked for it.' });
    const back = await owner.post('/api/consignments', consignmentOf('50', { client: { client } }));
    expect(back).toMatchObject({ status: 409, body: { code: 'client-erased' } });
  });
});
