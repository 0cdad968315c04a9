import { expect, test } from 'vitest';
import { setUpHouse, signIn } from './support/door.ts';
import { goToWash, inSheet } from './support/dossier.ts';
import type { Hand } from './support/hand.ts';
import { addColleague, proveAndAgree, takeIn } from './support/seed.ts';
import { openWorkshop, tabletSized } from './support/workshop.ts';

const workshop = openWorkshop();
const tobinsPassphrase = 'weld and alum in the copper';

const writeNote = async (hand: Hand, note: string) => {
  await hand.press('Write a note');
  await inSheet(hand, 'Write a note', async (sheet) => {
    await sheet.fill('Note', note);
    await sheet.press('Record');
  });
};

test('two tablets on one dossier show what the other records, lose nothing, and share a dwell timer', async () => {
  const mirela = await workshop.device(tabletSized);
  await setUpHouse(mirela, workshop.server());
  await addColleague(mirela, 'Tobin Hale', tobinsPassphrase);
  const rug = await takeIn(mirela, '12', 'Blue runner with a lattice');
  await proveAndAgree(mirela, rug);
  const tobin = await workshop.device(tabletSized);
  await signIn(tobin, 'Tobin Hale', tobinsPassphrase);
  await tobin.heading(/^\w+day \d/);
  for (const hand of [mirela, tobin]) {
    await hand.page.goto(`/rugs/${rug}`);
    await hand.heading('Blue runner with a lattice');
  }

  // What one records stands on the other, which is not reloaded.
  await writeNote(mirela, 'The client calls on Friday.');
  await tobin.within('region', 'Where it is').see('The client calls on Friday.');

  // Both press Record at the same moment.
  await mirela.press('Write a note');
  await mirela.within('dialog', 'Write a note').fill('Note', 'A loose knot at the far end.');
  await tobin.press('Move it');
  await tobin.within('dialog', 'Move it').scope.getByRole('textbox').fill('wash floor');
  await Promise.all([mirela.press('Record'), tobin.press('Record')]);
  for (const hand of [mirela, tobin]) {
    await hand.scope.getByRole('dialog').waitFor({ state: 'detached' });
    const history = hand.within('region', 'History');
    await history.see('A loose knot at the far end.');
    await history.see('wash floor');
    await history.see('The client calls on Friday.');
    expect(await hand.scope.getByRole('alert').count()).toBe(0);
  }

  // A dwell begun on one tablet runs on the other's Today.
  await tobin.follow('Today');
  await tobin.heading(/^\w+day \d/);
  await goToWash(mirela);
  await mirela.press('Start: dusting');
  await mirela.press('Done, wet out next');
  await mirela.press('Start: wet out');
  await mirela.scope.getByRole('timer', { name: /^dwell, 3 min, left 0[0-2]:/ }).waitFor();
  await tobin.scope.getByRole('timer', { name: /^left 0[0-2]:/ }).waitFor();
  await tobin.see('End the dwell: wet out');
});
