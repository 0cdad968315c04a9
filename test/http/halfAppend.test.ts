import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { listRowOf } from '../../src/app/listRow.ts';
import { type RugEntry, shelfStanding, standingOf } from '../../src/dossier/index.ts';
import type { Ledger } from '../../src/ports/ledger.ts';
import { dustingBegun } from '../support/dustingBegun.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import { openInFolder, throwAwayFolder } from '../support/openInFolder.ts';

/** What a record says of the step and of the stock it took. */
async function recorded(ledger: Ledger, rug: string, step: string) {
  const [visit] = standingOf((await ledger.read(`rug/${rug}`)) as readonly RugEntry[]).visits;
  const [agent] = shelfStanding(await ledger.read('shelf')).agents;
  return {
    isDone: visit?.steps.find((one) => one.step === step)?.done != null,
    left: agent?.lots.find(({ lot }) => lot === 'K-1')?.amount,
    broken: (await ledger.verify()).broken,
  };
}

const before = { isDone: false, left: 5000, broken: [] };
const after = { isDone: true, left: 4880, broken: [] };

/** A step begun in a house on disk, and what happens once its entry is written and its stock is not. */
async function betweenStepAndStock(happen: (folder: string) => void) {
  const { folder, remove } = throwAwayFolder();
  const { ledger, done, database } = openInFolder(folder, listRowOf);
  onTestFinished(async () => {
    await done();
    remove();
  });
  const begun = await dustingBegun(memoryHouse({ ledger }));
  let times = 0;
  database.function('between_step_and_stock', () => {
    times += 1;
    if (times === 1) happen(folder);
    return null;
  });
  database.exec(
    `create temp trigger between_step_and_stock before insert on entry when new.stream = 'shelf'
     begin select between_step_and_stock(); end`,
  );
  return { ...begun, ledger, times: () => times };
}

test('a disk full between a step and the stock it took leaves neither, and the same again records both once', async () => {
  const { ledger, rug, step, finish, times } = await betweenStepAndStock(() => {
    throw Object.assign(new Error('database or disk is full'), { code: 'SQLITE_FULL' });
  });
  const refused = await finish('K-1');
  expect(times()).toBe(1);
  expect(refused).toMatchObject({ status: 503, body: { code: 'record-unavailable' } });
  expect(await recorded(ledger, rug, step)).toEqual(before);
  expect(await finish('K-1')).toMatchObject({ status: 200 });
  expect(await recorded(ledger, rug, step)).toEqual(after);
});

test('a process that dies between a step and the stock it took leaves neither in what lies on the disk', async () => {
  const dead = throwAwayFolder();
  const { ledger, rug, step, finish } = await betweenStepAndStock((folder) => {
    // What a process killed at this instant leaves behind is what the files hold now.
    for (const file of ['wefthouse.db', 'wefthouse.db-wal', 'wefthouse.head']) {
      cpSync(join(folder, file), join(dead.folder, file));
    }
  });
  expect(await finish('K-1')).toMatchObject({ status: 200 });
  expect(await recorded(ledger, rug, step)).toEqual(after);
  const risen = openInFolder(dead.folder, listRowOf);
  expect(await recorded(risen.ledger, rug, step)).toEqual(before);
  await risen.done();
  dead.remove();
});
