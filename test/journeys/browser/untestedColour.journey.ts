import { expect, test } from 'vitest';
import { setUpHouse } from './support/door.ts';
import { agree, goToWash, makeEveryBlot, nameColour } from './support/dossier.ts';
import { takeIn } from './support/seed.ts';
import { openWorkshop, tabletSized } from './support/workshop.ts';

const workshop = openWorkshop();

test('a wash is refused for a colour nobody tested, and allowed once it is proven', async () => {
  const hand = await workshop.device(tabletSized);
  await setUpHouse(hand, workshop.server());
  const rug = await takeIn(hand, '7', 'Runner with three medallions');
  await hand.page.goto(`/rugs/${rug}`);
  await nameColour(hand, 'red, field');
  await hand.within('region', 'What it can bear').see('dry only');
  await hand.within('region', 'Dye tests').see('no wet step until tested · nothing graded yet');

  await goToWash(hand);
  await hand.see('The plan allows “dry only”, no wet step.');
  await hand.see('red, field: This colour is not proven for this bath, so it counts as loose.');
  expect(await hand.scope.getByRole('button', { name: /^Start: / }).count()).toBe(0);

  await hand.follow('Open the dossier');
  expect(await makeEveryBlot(hand)).toBeGreaterThan(4);
  await agree(hand);
  await goToWash(hand);
  await hand.press('Start: dusting');
  await hand.press('Done, wet out next');
  await hand.press('Start: wet out');
  await hand.see(/^Step 2 of \d+, started .* by Mirela Ostrand/);
});
