import { expect, test } from 'vitest';
import { blotPicture } from './support/blots.ts';
import { setUpHouse, signIn } from './support/door.ts';
import { inSheet } from './support/dossier.ts';
import { type Hand, textOf } from './support/hand.ts';
import { rugPicture } from './support/pictures.ts';
import { proveColours, record, takeIn } from './support/seed.ts';
import { openWorkshop, phone } from './support/workshop.ts';

const workshop = openWorkshop();

/** Reads the blot of a cell of the matrix again, from a photograph. */
async function readPhotograph(
  hand: Hand,
  cell: RegExp,
  picture: Buffer,
  seen: (sheet: Hand) => Promise<void>,
): Promise<void> {
  await hand.within('region', 'Dye tests').scope.getByRole('button', { name: cell }).click();
  await inSheet(hand, /./, async (sheet) => {
    await sheet.press('Read it now');
    await sheet.choose('How it is read', 'By photograph');
    await sheet.photograph('Photograph the blot', picture);
    await sheet.see('Blot, graded with the ISO 105-A04 formula.');
    await seen(sheet);
    await sheet.press('Record');
  });
}

test('a red that grades 3 in the planned bath at pH 7.5 turns the plan from full immersion to a flow wash', async () => {
  const hand = await workshop.device(phone);
  await setUpHouse(hand, workshop.server());
  const rug = await takeIn(hand, '7', 'Runner with three medallions');
  await record(hand, rug, {
    type: 'ColoursNamed',
    colours: ['red', 'blue'].map((colour) => ({
      ...{ colour, name: colour, kind: 'field colour', dyeClass: 'acid' },
      ...{ besideLightField: false, atUrinePlace: false },
    })),
  });
  await proveColours(hand, rug, { bathPh: 7.5 });
  await hand.page.goto(`/rugs/${rug}`);
  const tests = hand.within('region', 'Dye tests');
  await tests.see('full immersion');

  await readPhotograph(hand, /^red, cold water/, await blotPicture(), async (sheet) => {
    await sheet.see(/^Grade 5/);
    await sheet.fill('How long it lay', '10');
    await sheet.see('full immersion, as before');
  });
  await readPhotograph(
    hand,
    /^red, planned bath/,
    await blotPicture({ stained: '#e5cdca' }),
    async (sheet) => {
      await sheet.see(/^Grade 3/);
      await sheet.tick('It was made otherwise');
      await sheet.fill('pH', '7.5');
      await sheet.fill('Lay for', '20');
      await sheet.see('stable → controlled');
      await sheet.see('full immersion → flow wash');
    },
  );

  await tests.see('3, measured, fails');
  await tests.see(/decided by planned bath, face: grade 3/);
  expect(await textOf(hand.within('region', 'What it can bear').scope)).toContain('flow wash');
  expect(await hand.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
});

test('a blot that is found wrongly is measured where the person says; a picture without a card is refused', async () => {
  const hand = await workshop.device(phone);
  await signIn(hand);
  await hand.see('Runner with three medallions');
  await hand.page.goto('/bench/blot');
  const taken = 'Photograph of the blot';
  await hand.photograph(taken, await blotPicture({ stained: '#e5cdca' }));
  await hand.see(/^Grade 3/);
  await hand.press('The places lie wrong: move them');
  await hand.choose('Which place to move', 'Blot');
  // Moved wholly onto clean cloth, the same picture shows no stain.
  for (let times = 0; times < 9; times += 1) await hand.press('Down');
  for (let times = 0; times < 9; times += 1) await hand.press('Left');
  await hand.see(/^Grade (5|4-5)/);
  await hand.press('Find the places again');
  await hand.see(/^Grade 3/);
  await hand.photograph('Another photograph of the blot', await rugPicture());
  await hand.see('No weave card in this picture.');
});
