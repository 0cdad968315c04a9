import { expect, test } from 'vitest';
import { throwAwayFolder } from '../support/openInFolder.ts';
import { killRounds } from './killRounds.ts';

test('a process killed twenty times under load keeps every entry and photograph that it acknowledged', async () => {
  const { folder, remove } = throwAwayFolder();
  let rounds = 0;
  const survivors = await killRounds(folder, 20, () => {
    rounds += 1;
  });
  expect(survivors.wrong).toEqual([]);
  expect(rounds).toBe(20);
  // Each life acknowledges a batch, and every second one a photograph, before it is ended.
  expect(survivors.entries).toBeGreaterThanOrEqual(20 * 3);
  expect(survivors.photos).toBeGreaterThanOrEqual(10);
  remove();
}, 300_000);
