import { test } from 'vitest';
import { setUpHouse } from './support/door.ts';
import { nameColour } from './support/dossier.ts';
import { takeIn } from './support/seed.ts';
import { openWorkshop, phone } from './support/workshop.ts';

const workshop = openWorkshop();

// Rules of this project: alkali is tried on every colour before it is used, and what a fibre does not bear is refused.
test('an alkaline bath asks for its challenge on every colour, chlorine on wool is not written down, and a bath is dropped', async () => {
  const hand = await workshop.device(phone);
  await setUpHouse(hand, workshop.server());
  const rug = await takeIn(hand, '18', 'Runner with three medallions');
  await hand.page.goto(`/rugs/${rug}`);
  await nameColour(hand, 'red, field');
  const plan = hand.within('region', 'What it can bear');

  await plan.press('Plan a bath of your own');
  const sheet = hand.within('dialog', 'A bath of your own');
  await sheet.fill('What for', 'whitening');
  await sheet.scope.getByText('hypochlorite', { exact: true }).click();
  await sheet.press('Record');
  await sheet.see('“whitening” holds hypochlorite');

  await sheet.fill('What for', 'second wash');
  await sheet.scope.getByText('hypochlorite', { exact: true }).click();
  await sheet.scope.getByText('alkaline detergent', { exact: true }).click();
  await sheet.fill('Its pH', '7.8');
  await sheet.press('Record');
  await plan.see('alkaline detergent; pH 7.8');
  await hand.within('region', 'Dye tests').see('alkali challenge');

  await plan.press('Drop it');
  await plan.scope.getByText('alkaline detergent; pH 7.8').waitFor({ state: 'detached' });
  await hand.within('region', 'Dye tests').scope.getByText('alkali challenge').waitFor({ state: 'detached' });
});
