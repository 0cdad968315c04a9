import { describe, expect, test } from 'vitest';
import { crystals, drafts, dustingBegun } from '../support/dustingBegun.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import { openedHouse } from '../support/tablet.ts';

describe('the shelf', () => {
  test('a product, a lot and a count are kept, and what is sent again is recorded once', async () => {
    const { owner } = await openedHouse(memoryHouse());
    const lot = { type: 'LotReceived', agent: 'c1', lot: 'K-1', amount: 5000 };
    const request = drafts(crystals, lot);
    await owner.post('/api/shelf/entries', request);
    await owner.post('/api/shelf/entries', request);
    const { body } = await owner.get('/api/shelf');
    expect(body['standing']).toMatchObject({
      agents: [{ agent: 'c1', lots: [{ lot: 'K-1', amount: 5000 }] }],
    });
  });

  test('nobody draws stock by hand: a step does', async () => {
    const { owner } = await openedHouse(memoryHouse());
    const draw = { type: 'StockDrawn', agent: 'c1', lot: 'K-1', amount: 5, rug: 'r', step: 's', entry: 'e' };
    expect((await owner.post('/api/shelf/entries', drafts(draw))).status).toBe(422);
  });
});

describe('a step that takes from the shelf', () => {
  test('draws its stock with the entry, and withdrawing the entry gives it back', async () => {
    const { record, finish, lots } = await dustingBegun();
    const finished = await finish('K-1');
    expect(finished).toMatchObject({ status: 200 });
    expect(await lots()).toEqual({ 'K-1': 4880, 'K-0': 900 });
    const back = await record({ type: 'EntryWithdrawn', entry: finished.id, reason: 'Slip of the thumb.' });
    expect(back).toMatchObject({ status: 200 });
    expect(await lots()).toEqual({ 'K-1': 5000, 'K-0': 900 });
  });

  test('is refused in words for a lot past its day, one nobody received, and a product taken off', async () => {
    const { owner, finish, lots } = await dustingBegun();
    const expired = await finish('K-0');
    expect(expired).toMatchObject({ status: 409, body: { code: 'lot-expired' } });
    expect(JSON.stringify(expired.body)).toContain('expired on 2020-01-31');
    expect(await finish('K-9')).toMatchObject({ body: { code: 'lot-unknown' } });
    await owner.post('/api/shelf/entries', drafts({ type: 'AgentRemoved', agent: 'c1', why: 'Clumped.' }));
    const removed = await finish('K-1');
    expect(removed).toMatchObject({ status: 409, body: { code: 'agent-off-shelf' } });
    expect(JSON.stringify(removed.body)).toContain('Hearth crystals was taken off the shelf: Clumped.');
    expect(await lots()).toEqual({ 'K-1': 5000, 'K-0': 900 });
  });
});

test.each([
  ['a strength below nothing', { parts: [{ kind: 'acid', value: -3, unit: '% w/w' }] }, 'parts', '-3'],
  ['120 % by mass', { parts: [{ kind: 'acid', value: 120, unit: '% w/w' }] }, 'parts', '120'],
  ['pH 15', { ph: { value: 15, gramsPerLitre: 10 } }, 'ph', '15'],
  ['an agent no plan knows', { serves: ['holy water'] }, 'serves', 'holy water'],
])('%s is refused by field and value, with what is allowed', async (_what, wrong, field, value) => {
  const { owner } = await openedHouse(memoryHouse());
  const { status, body } = await owner.post('/api/shelf/entries', drafts({ ...crystals, ...wrong }));
  expect(status).toBe(422);
  const facts = body['facts'] as Readonly<Record<string, unknown>>;
  expect(String(facts['field'])).toContain(field);
  expect(JSON.stringify(facts['value'])).toContain(value);
  expect(facts['allowed'], JSON.stringify(body)).toBeTruthy();
});
