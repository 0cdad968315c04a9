import { describe, expect, test } from 'vitest';
import { consignmentOf, draft, measured } from '../support/intake.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import { openedHouse } from '../support/tablet.ts';

async function oneRug() {
  const opened = await openedHouse(memoryHouse());
  const request = consignmentOf('41');
  await opened.owner.post('/api/consignments', request);
  const rug = request.rugs[0]?.rug ?? '';
  await opened.owner.post(`/api/rugs/${rug}/entries`, { expectedRevision: 2, drafts: [draft(measured)] });
  return { ...opened, rug };
}
const address = 'rules/R40/condition/people';

describe('the rulebook', () => {
  test('a change is tried first, then recorded with who and why, and can be taken back', async () => {
    const { owner, rug } = await oneRug();
    const tried = await owner.post('/api/rulebook/preview', { address, value: 3 });
    expect(tried).toMatchObject({ status: 200, body: { looked: 1, affected: [{ rug }] } });
    expect(JSON.stringify(tried.body)).toContain('"axis":"people"');
    const before = await owner.get('/api/rulebook');
    expect(before.body).toMatchObject({ history: [] });
    const changed = await owner.post('/api/rulebook', { address, value: 3, why: 'Two are not enough here.' });
    expect(changed.status).toBe(200);
    expect(changed.body['version']).toMatch(/with 1 change \([0-9a-f]{8}\)$/);
    expect(changed.body['history']).toMatchObject([
      { address, from: null, to: 3, why: 'Two are not enough here.' },
    ]);
    const state = await owner.get('/api/state');
    expect(state.body['settings']).toMatchObject({ ruleChanges: [{ address, value: 3 }] });
    const back = await owner.post('/api/rulebook', { address, value: null, why: 'Not needed any more.' });
    expect(back.body['version']).toBe(before.body['version']);
    expect(back.body['history']).toHaveLength(2);
  });

  test('nobody loosens a forbidden mixture, and what cannot be is named', async () => {
    const { owner } = await oneRug();
    const looser = await owner.post('/api/rulebook', {
      address: 'mixtures/acid with sulfite below pH 4/belowPh',
      value: 2,
      why: 'quicker',
    });
    expect(looser).toMatchObject({ status: 422, body: { code: 'rule-looser-than-delivered' } });
    const wrong = await owner.post('/api/rulebook', {
      address: 'fibres/wool/bathPh',
      value: { least: 5, most: 15 },
      why: 'x',
    });
    expect(wrong).toMatchObject({ status: 422, body: { code: 'rule-value-wrong' } });
    const unexplained = await owner.post('/api/rulebook', { address, value: 3 });
    expect(unexplained.status).toBe(422);
  });
});
