import { expect, test } from 'vitest';
import { setUpHouse } from './support/door.ts';
import { takeIn } from './support/seed.ts';
import { openWorkshop, tabletSized } from './support/workshop.ts';

const workshop = openWorkshop();

// Rule of this project: bad input gets a clear error, and nothing typed is lost or half recorded.
test('a figure that is none and a note too long stop the record, stay in their fields, and are said', async () => {
  const hand = await workshop.device(tabletSized);
  await setUpHouse(hand, workshop.server());
  const rug = await takeIn(hand, '12', 'Blue runner with a lattice');
  await hand.page.goto(`/rugs/${rug}`);
  await hand.heading('Blue runner with a lattice');
  const place = hand.within('region', 'Where it is');

  await place.scope.getByText('More', { exact: true }).click();
  await place.press('Storage is due');
  const storage = hand.within('dialog', 'Storage is due');
  await storage.scope.getByLabel('From').fill('2026-12-20');
  await storage.fill('Charge', '-5');
  await storage.press('Record');
  await storage.see('“-5” is not an amount in EUR.');
  expect(await storage.field('Charge').inputValue()).toBe('-5');
  await storage.fill('Charge', '12.50');
  await storage.press('Record');
  await place.see('Storage is due from 20 Dec 2026');

  await place.press('Write a note');
  const note = hand.within('dialog', 'Write a note');
  await note.fill('Note', 'n'.repeat(20_001));
  await note.press('Record');
  await note.see('This is 20001 characters long.');
  await note.fill('Note', 'The client calls on Friday.');
  await note.press('Record');
  await place.see('The client calls on Friday.');
});
