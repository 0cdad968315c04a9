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

const lotOf = (days: object) => ({ type: 'LotReceived', agent: 'c1', lot: 'K-7', amount: 500, ...days });
const water = (read: object) => ({ type: 'WaterMeasured', on: '2026-01-15', ...read });

test.each([
  [
    'a last day before the receipt',
    lotOf({ receivedOn: '2026-01-20', expires: '2026-01-10' }),
    'lot-expired-before-receipt',
    ['K-7', '2026-01-10', '2026-01-20'],
  ],
  [
    'parts that are more than the whole',
    {
      ...crystals,
      parts: [...crystals.parts, { kind: 'acid', chemical: 'acetic acid', value: 20, unit: '% w/w' }],
    },
    'strength-above-whole',
    ['Hearth crystals', '119.5 %', '100 %'],
  ],
  [
    'a chemical nobody computes with',
    { ...crystals, parts: [{ kind: 'acid', chemical: 'moonlight', value: 20, unit: '% w/w' }] },
    'agent-unknown',
    ['moonlight', 'citric acid, anhydrous'],
  ],
  [
    'hardness read in another unit',
    water({ hardness: { value: 286, unit: '°dH' } }),
    'water-not-believed',
    ['hardness', '286 °dH', '112 °dH'],
  ],
  [
    'hardness as acid capacity',
    water({ hardness: { value: 5, unit: 'mmol/L acid' } }),
    'hardness-unit-wrong',
    ['mmol/L acid', '°dH'],
  ],
  [
    'bleach under another name',
    {
      ...{ ...crystals, serves: ['neutral detergent'] },
      parts: [{ kind: 'oxidiser', chemical: 'sodium hypochlorite', value: 3, unit: '% w/w' }],
    },
    'agent-hidden',
    ['sodium hypochlorite', 'neutral detergent', 'hypochlorite'],
  ],
])('%s is refused in words that name it and what is allowed', async (_what, fact, code, words) => {
  const { owner } = await openedHouse(memoryHouse());
  await owner.post('/api/shelf/entries', drafts(crystals));
  const { status, body } = await owner.post('/api/shelf/entries', drafts(fact));
  expect([status, body['code']]).toEqual([422, code]);
  for (const word of words) expect(JSON.stringify(body)).toContain(word);
});

test.each([
  ['a unit nobody measures hardness in', { hardness: { value: 16, unit: 'dH' } }, 'hardness.unit', '°dH'],
  ['pH 15', { ph: 15 }, 'ph', '14'],
  ['a negative alkalinity', { alkalinity: { value: -5, unit: '°dH' } }, 'alkalinity.value', '0'],
])('water with %s is refused by field, with what is allowed', async (_what, read, field, allowed) => {
  const { owner } = await openedHouse(memoryHouse());
  const { status, body } = await owner.post('/api/shelf/entries', drafts(water(read)));
  expect(status).toBe(422);
  const facts = body['facts'] as Readonly<Record<string, unknown>>;
  expect(String(facts['field'])).toContain(field);
  expect(String(facts['allowed'])).toContain(allowed);
});

test('a price below nothing, and a data sheet without an address, are refused by field', async () => {
  const { owner } = await openedHouse(memoryHouse());
  const sent = async (wrong: object) =>
    JSON.stringify((await owner.post('/api/shelf/entries', drafts({ ...crystals, ...wrong }))).body);
  expect(await sent({ price: { amountMinor: -1, currency: 'EUR' } })).toContain('fact.price.amountMinor');
  expect(await sent({ safetySheet: 'in the drawer' })).toContain('fact.safetySheet');
});

test('no plan is told to be mixed from what none is mixed from', async () => {
  const { owner } = await dustingBegun();
  for (const agent of ['c1', 'nobody']) {
    expect((await owner.get(`/api/shelf/${agent}/uses`)).body).toEqual({ uses: [] });
  }
});
