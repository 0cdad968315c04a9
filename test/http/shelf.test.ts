import { describe, expect, test } from 'vitest';
import { newId } from '../support/intake.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import { openedHouse } from '../support/tablet.ts';

const crystals = {
  ...{ type: 'AgentShelved', agent: 'c1', name: 'Hearth crystals', serves: ['citric acid'], unit: 'g' },
  parts: [{ kind: 'acid', chemical: 'citric acid, anhydrous', value: 99.5, unit: '% w/w' }],
  ...{ signal: 'Warning', hazards: ['H319'] },
};
const drafts = (...facts: readonly object[]) => ({ drafts: facts.map((fact) => ({ id: newId(), fact })) });

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

  test('a strength of 120 % and one below nothing are refused by field', async () => {
    const { owner } = await openedHouse(memoryHouse());
    for (const value of [120, -3]) {
      const parts = [{ kind: 'acid', value, unit: '% w/w' }];
      const answer = await owner.post('/api/shelf/entries', drafts({ ...crystals, parts }));
      expect(answer.status).toBe(422);
      expect(JSON.stringify(answer.body)).toContain('value');
    }
  });

  test('nobody draws stock by hand: a step does', async () => {
    const { owner } = await openedHouse(memoryHouse());
    const draw = { type: 'StockDrawn', agent: 'c1', lot: 'K-1', amount: 5, rug: 'r', step: 's', entry: 'e' };
    expect((await owner.post('/api/shelf/entries', drafts(draw))).status).toBe(422);
  });
});
