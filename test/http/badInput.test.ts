import { describe, expect, test } from 'vitest';
import { consignmentOf, draft, halide, measured } from '../support/intake.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import { openedHouse, type Tablet } from '../support/tablet.ts';

async function rugIn() {
  const house = memoryHouse();
  const { owner } = await openedHouse(house);
  const request = consignmentOf('41');
  await owner.post('/api/consignments', request);
  const rug = request.rugs[0]?.rug ?? '';
  const revision = async () => (await house.ledger.head(`rug/${rug}`)).revision;
  return { owner, rug, revision };
}

const send = (tablet: Tablet, rug: string, fact: unknown) =>
  tablet.post(`/api/rugs/${rug}/entries`, { expectedRevision: 2, drafts: [{ id: 'bad', fact }] });

const fact = 'drafts[0].fact';
const shapes: readonly (readonly [what: string, fact: unknown, facts: Readonly<Record<string, string>>])[] = [
  [
    'a negative size',
    { ...measured, lengthsMm: [-5, 2900, 2900] },
    { field: `${fact}.lengthsMm[0]`, value: '-5', allowed: 'a number of at least 1' },
  ],
  [
    'an absurd size',
    { ...measured, widthsMm: [800, 800, 9e9] },
    { field: `${fact}.widthsMm[2]`, value: '9000000000', allowed: 'a number of at most 50000' },
  ],
  [
    'two lengths instead of three',
    { ...measured, lengthsMm: [1, 2] },
    { field: `${fact}.lengthsMm`, value: '[1,2]', allowed: 'a list of exactly 3' },
  ],
  [
    'a shape that is none',
    { ...measured, shape: 'star' },
    {
      field: `${fact}.shape`,
      value: '"star"',
      allowed: 'one of: rectangle, runner, square, round, oval, irregular',
    },
  ],
  [
    'a text for a number',
    { ...measured, uncertaintyMm: '5' },
    { field: `${fact}.uncertaintyMm`, value: '"5"', allowed: 'a number' },
  ],
  ['a missing field', { type: 'RugMoved' }, { field: `${fact}.place`, value: 'missing', allowed: 'a text' }],
  [
    'a field nobody asked for',
    { type: 'RugMoved', place: 'rack', room: 1 },
    {
      field: `${fact}.room`,
      value: '1',
      allowed: 'one of the names known there: type, happenedAt, place',
    },
  ],
  [
    'a day no calendar has',
    { type: 'StorageDue', from: '2026-02-31' },
    { field: `${fact}.from`, value: '"2026-02-31"', allowed: 'a day the calendar has' },
  ],
  [
    'an hour no clock has',
    { type: 'NoteAdded', note: 'x', happenedAt: '2026-11-25T25:00:00Z' },
    {
      field: `${fact}.happenedAt`,
      value: '"2026-11-25T25:00:00Z"',
      allowed: 'an instant such as 2026-11-25T09:00:00.000Z',
    },
  ],
  [
    'a day that is none',
    { type: 'StorageDue', from: '25.11.2026' },
    { field: `${fact}.from`, value: '"25.11.2026"', allowed: 'a day such as 2026-11-25' },
  ],
  [
    'an instant without its zone',
    { type: 'RugMoved', place: 'rack', happenedAt: '2026-03-02T08:00' },
    {
      field: `${fact}.happenedAt`,
      value: '"2026-03-02T08:00"',
      allowed: 'an instant such as 2026-11-25T09:00:00.000Z',
    },
  ],
  [
    'an empty note',
    { type: 'NoteAdded', note: '   ' },
    { field: `${fact}.note`, value: '"   "', allowed: 'a text of at least 1 character' },
  ],
];

describe('a body of wrong shape is refused with the field, what it was, and what is allowed', () => {
  test.each(shapes)('%s', async (_, wrong, facts) => {
    const { owner, rug, revision } = await rugIn();
    const { status, body } = await send(owner, rug, wrong);
    expect(status).toBe(422);
    expect(body).toMatchObject({ code: 'body-wrong-shape', facts });
    expect(await revision()).toBe(2);
  });

  test('a type of entry that is none is answered with those there are', async () => {
    const { owner, rug } = await rugIn();
    const { body } = await send(owner, rug, { type: 'RugBurnt' });
    expect(body).toMatchObject({
      code: 'body-wrong-shape',
      facts: { field: `${fact}.type`, value: '"RugBurnt"' },
    });
    expect(body['now']).toMatch(/RugMeasured.*RugReturned/);
  });

  test('no object at all', async () => {
    const { owner, rug } = await rugIn();
    const answer = await owner.post(`/api/rugs/${rug}/entries`, []);
    expect(answer.body).toMatchObject({
      code: 'body-wrong-shape',
      facts: { field: 'the body', allowed: 'an object' },
    });
  });
});

describe('a request that is too much or not what it says', () => {
  test('a note of a megabyte is refused by its length, and nothing is recorded', async () => {
    const { owner, rug, revision } = await rugIn();
    const { status, body } = await send(owner, rug, { type: 'NoteAdded', note: 'x'.repeat(1 << 20) });
    expect(status).toBe(422);
    expect(body['title']).toMatch(
      /^drafts\[0\]\.fact\.note is a text of 1048576 characters that begins "xxx/,
    );
    expect(body['now']).toMatch(/a text of at most 20000 characters/);
    expect(await revision()).toBe(2);
  });

  test('a body of many megabytes is not even read to its end', async () => {
    const { owner, rug } = await rugIn();
    const answer = await send(owner, rug, { type: 'NoteAdded', note: 'x'.repeat(5_000_000) });
    expect(answer).toMatchObject({ status: 413, body: { code: 'body-too-large', facts: { most: 4 } } });
    let sent = 0;
    const endless = new ReadableStream<Uint8Array>({
      pull(controller) {
        sent += 1;
        controller.enqueue(new Uint8Array(1_000_000));
      },
    });
    const stopped = await owner.ask('/api/photographs', {
      method: 'POST',
      headers: { 'content-type': 'image/jpeg' },
      body: endless,
      duplex: 'half',
    } as RequestInit);
    expect(stopped.status).toBe(413);
    expect(sent).toBeLessThan(60);
  });

  test('text that is not JSON, and JSON that is not marked as such', async () => {
    const { owner, rug } = await rugIn();
    const path = `/api/rugs/${rug}/entries`;
    const post = (type: string, body: BodyInit) =>
      owner.ask(path, { method: 'POST', headers: { 'content-type': type }, body });
    const broken = await post('application/json', '{"drafts": [');
    expect(broken.status).toBe(400);
    expect(await broken.json()).toMatchObject({ code: 'body-not-json' });
    const form = await post('text/plain', '{}');
    expect(form.status).toBe(415);
    expect(await form.json()).toMatchObject({
      code: 'body-wrong-type',
      facts: { given: 'text/plain' },
    });
    const latin = await post('application/json', new Uint8Array([0x7b, 0x22, 0xe9, 0x22, 0x3a, 0x31, 0x7d]));
    expect(latin.status).toBe(400);
  });

  test('a photograph that is none', async () => {
    const { owner } = await rugIn();
    const answer = await owner.ask('/api/photographs', {
      method: 'POST',
      headers: { 'content-type': 'image/jpeg' },
      body: new TextEncoder().encode('<svg onload="alert(1)">'),
    });
    expect(answer.status).toBe(422);
    expect(await answer.json()).toMatchObject({ code: 'photograph-not-a-picture' });
  });
});

test('a date before the receipt or in the future is refused', async () => {
  const { owner, rug, revision } = await rugIn();
  const early = await send(owner, rug, {
    type: 'NoteAdded',
    note: 'Before.',
    happenedAt: '2026-03-01T08:00:00Z',
  });
  expect(early.body).toMatchObject({ code: 'before-receipt' });
  const late = await send(owner, rug, {
    type: 'NoteAdded',
    note: 'Later.',
    happenedAt: '2026-03-02T09:00:00Z',
  });
  expect(late.body).toMatchObject({ code: 'in-the-future' });
  expect(await revision()).toBe(2);
});

test('script in every text field is kept as the text it is, and answered as JSON only', async () => {
  const { owner } = await rugIn();
  const script = '<script>alert("x")</script><img src=x onerror=alert(1)>';
  const client = { client: 'scripted', added: { ...halide, name: script, address: script, note: script } };
  const request = consignmentOf('66', { client }, { reason: script, place: script });
  const [rug] = request.rugs;
  const drafts = [
    draft({ type: 'DossierOpened', number: 1, title: script }),
    ...(rug?.drafts.slice(1) ?? []),
  ];
  const answer = await owner.post('/api/consignments', { ...request, rugs: [{ rug: rug?.rug, drafts }] });
  expect(answer.status).toBe(200);
  const read = await owner.get(`/api/rugs/${rug?.rug}`);
  expect(read.headers.get('content-type')).toMatch(/^application\/json/);
  expect(read.headers.get('x-content-type-options')).toBe('nosniff');
  expect(read.body).toMatchObject({ client: { name: script } });
  const wrong = await owner.get(`/problems/${encodeURIComponent(script)}`);
  expect(wrong.headers.get('content-type')).toBe('application/problem+json');
});

test('every answer forbids scripts that are not ours', async () => {
  const { owner } = await rugIn();
  for (const path of ['/api/state', '/api/rugs', '/problems/tag-in-use', '/nowhere']) {
    const { headers } = await owner.ask(path);
    const policy = headers.get('content-security-policy') ?? '';
    expect(policy).toMatch(/script-src 'self' 'wasm-unsafe-eval';/);
    expect(policy).not.toMatch(/unsafe-inline|unsafe-eval(?!')/);
    expect(headers.get('x-frame-options')).toBe('DENY');
  }
});
