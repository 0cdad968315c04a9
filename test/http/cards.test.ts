import { describe, expect, test } from 'vitest';
import { memoryHouse } from '../support/memoryHouse.ts';
import { openedHouse } from '../support/tablet.ts';

describe('weave cards of the workshop', () => {
  test('a card measured once is known from then on, and measured again it is as measured last', async () => {
    const { owner } = await openedHouse(memoryHouse());
    expect((await owner.get('/api/cards')).body).toEqual({ cards: [] });
    await owner.post('/api/cards', { serial: '7K3M4Q', barMm: 97 });
    const answer = await owner.post('/api/cards', { serial: '7K3M4Q', barMm: 97.5 });
    expect(answer.status).toBe(200);
    expect((await owner.get('/api/cards')).body).toMatchObject({
      cards: [{ serial: '7K3M4Q', barMm: 97.5, measuredAt: expect.any(String), by: expect.any(String) }],
    });
  });

  test('a bar that no printer makes, or a serial that is none, is refused by name', async () => {
    const { owner } = await openedHouse(memoryHouse());
    for (const [body, field] of [
      [{ serial: '7K3M4Q', barMm: 42 }, 'barMm'],
      [{ serial: 'card', barMm: 99 }, 'serial'],
    ] as const)
      expect(await owner.post('/api/cards', body)).toMatchObject({
        status: 422,
        body: { facts: { field } },
      });
  });

  test('the sheet to print is a PDF of the paper asked for, with the tag in capitals', async () => {
    const { owner } = await openedHouse(memoryHouse());
    const sheet = async (query: string) => {
      const answer = await owner.ask(`/api/cards/7K3M4Q.pdf${query}`);
      return { status: answer.status, text: await answer.text() };
    };
    // 1 in = 72 pt = 25.4 mm; A4 is 210 × 297 mm, letter 8.5 × 11 in.
    expect((await sheet('')).text).toMatch(/MediaBox \[0 0 595\.27\d* 841\.88\d*\]/);
    const letter = await sheet('?paper=letter&tag=r-41');
    expect(letter.text).toMatch(/MediaBox \[0 0 612 792\]/);
    expect(letter.text).toContain('(R-41)');
    expect((await sheet('?tag=a%20b')).status).toBe(422);
  });
});
