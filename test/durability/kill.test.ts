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
  expect(survivors.entries).toBeGreaterThan(100);
  expect(survivors.photos).toBeGreaterThan(20);
  remove();
}, 120_000);
