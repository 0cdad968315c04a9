import { test } from 'vitest';
import type { RugFact } from '../../../src/dossier/index.ts';
import { coloursNamed } from '../../support/rugStory.ts';
import { setUpHouse } from './support/door.ts';
import { inSheet } from './support/dossier.ts';
import { agreePlan, proveColours, record, stockShelf, takeIn } from './support/seed.ts';
import { openWorkshop, phone } from './support/workshop.ts';

const workshop = openWorkshop();

const wine: RugFact = {
  ...{ type: 'MarkRecorded', mark: 'm1', word: 'stain', side: 'face', shape: 'point', stain: 'tannin' },
  ...{ pointsMm: [{ xMm: 300, yMm: 900 }], areaCm2: 80, grade: 1, activity: 'stable', photos: [] },
} as const satisfies RugFact;

test('a spotter is tested from its card, mixed for its place, and held back by what others used before', async () => {
  const hand = await workshop.device(phone);
  await setUpHouse(hand, workshop.server());
  await stockShelf(hand);
  const rug = await takeIn(hand, '14', 'Runner with a wine stain');
  await record(hand, rug, wine, coloursNamed);
  await proveColours(hand, rug);

  // The dossier has no test of this spotter: it is made from here.
  await hand.page.goto(`/rugs/${rug}`);
  await hand.within('region', 'Dye tests').see('Spotters of the stains');
  await hand.press('Test it: citric acid on red, field');
  await inSheet(hand, /spotter citric acid/, async (sheet) => {
    await sheet.see('this spotter is not laid on the rug');
    await sheet.press('Read it now');
    await sheet.choose('Staining of the white cotton', /^5$/);
    await sheet.choose('The control blotter', /^5$/);
    await sheet.choose('Change of the colour itself', /^5$/);
    await sheet.fill('How long it lay', '10');
    await sheet.press('Record');
  });
  await hand.scope.getByText('Spotters of the stains').waitFor({ state: 'detached' });
  await agreePlan(hand, rug);

  // The card for it: a cup for 80 cm², of this shelf and this water.
  await hand.page.goto(`/rugs/${rug}?at=wash`);
  const stains = hand.within('region', 'Stains, in the golden order');
  await stains.press('Next card ›');
  await stains.see('Sponge with citric acid and blot.');
  await stains.see(/Hearth crystals, lot K-214, made up with water to 100 mL, to pH/);
  await stains.see('The place takes up 16 – 40 mL.');
  await stains.see(/● ready/);

  // The client remembers bleach: no acid on chlorine, until somebody answers for it.
  await hand.press('Others treated it before …');
  await inSheet(hand, 'Treated by others before', async (sheet) => {
    await sheet.tick('Chlorine bleach');
    await sheet.choose('Where', /^mark 1/);
    await sheet.choose('Who says so', 'the client');
    await sheet.press('Record it');
  });
  await stains.see(/▲ clear the way first/);
  await stains.see(/Together: chlorine gas/);
  await hand.press('No longer there: hypochlorite');
  await inSheet(hand, 'No longer in the rug: hypochlorite', async (sheet) => {
    await sheet.fill('Why it is held to be out', 'It was another rug: the client looked again.');
    await sheet.press('Record the answer');
  });
  await stains.see(/● ready/);
});
