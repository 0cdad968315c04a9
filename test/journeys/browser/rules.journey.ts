import { expect, test } from 'vitest';
import { setUpHouse } from './support/door.ts';
import { inSheet } from './support/dossier.ts';
import { textOf } from './support/hand.ts';
import { proveAndAgree, takeIn } from './support/seed.ts';
import { openWorkshop, tabletSized } from './support/workshop.ts';

const workshop = openWorkshop();

test('an owner cools a limit, sees which open plan changes, finds it changed there, and may not loosen what protects', async () => {
  const hand = await workshop.device(tabletSized);
  await setUpHouse(hand, workshop.server());
  const rug = await takeIn(hand, '12', 'Hall carpet, red border on ivory');
  await proveAndAgree(hand, rug);
  await hand.follow('Rules');
  await hand.heading('Rules');

  // Every group of the tables is there, each row with its source.
  for (const group of ['Flows of their own', 'Finding out what a stain is', 'Waste water', 'Rescue cards']) {
    await hand.heading(group);
  }
  await hand.scope.getByLabel('Find a rule').fill('urine flush');
  await hand.see(/Flush with cool water/);
  await hand.see('common practice, no published source');

  await hand.scope.getByLabel('Find a rule').fill('wool');
  await hand.press('Change wool: Water');
  await inSheet(hand, 'wool', async (sheet) => {
    await sheet.fill('Water', '140');
    await sheet.see(/Water is 140 °C\. It must be between/);
    await sheet.fill('Water', '22');
    await sheet.press('See what it changes');
    await sheet.see('1 of 1 open plans change; 1 wait for a new consent.');
    await sheet.see(/tighter: Water: .* → ≤ 22 °C/);
    await sheet.fill('Why?', 'Two fringes felted here at 28 °C.');
    await sheet.press('Record the change');
  });
  await hand.see(/2026\.\d with 1 change/);
  await hand.within('region', 'Changes made here').see('“Two fringes felted here at 28 °C.”');
  await hand.within('region', 'Changes made here').see(/Mirela Ostrand/);

  await hand.page.goto(`/rugs/${rug}`);
  await hand.within('region', 'What it can bear').see(/≤ 22 °C/);
  await hand.page.goto(`/rugs/${rug}?at=wash`);
  await hand.see(/makes the plan tighter than the one agreed/);

  // What goes down the drain may be held narrower than the law, never wider.
  await hand.page.goto('/rules?find=waste%20water%20lowest');
  await hand.press(/^Change waste water: lowest pH/);
  const sheet = hand.within('dialog', 'waste water: lowest pH');
  await sheet.fill('waste water: lowest pH', '4.5');
  await sheet.see(/It must be between 5 and 7 pH/);
  expect(await sheet.button('See what it changes').isEnabled()).toBe(true);
  await sheet.press('Close');

  await hand.page.goto('/rules?find=acid%20with%20sulfite');
  await hand.press('Change acid with sulfite below pH 4: Blocked below');
  const mixture = hand.within('dialog', 'acid with sulfite below pH 4');
  await mixture.fill('Blocked below', '3');
  await mixture.see(/It may only be tightened|looser/);
  expect(await mixture.button('See what it changes').isEnabled()).toBe(false);
  const refused = await hand.page.request.post('/api/rulebook', {
    data: { address: 'mixtures/acid with sulfite below pH 4/belowPh', value: 3, why: 'Quicker.' },
    headers: { origin: new URL(hand.page.url()).origin },
  });
  expect(refused.status()).toBe(422);
  expect(await textOf(hand.scope)).not.toContain('2 changes');
});
