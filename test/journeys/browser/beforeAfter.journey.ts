import { expect, test } from 'vitest';
import type { PhotographAnswer } from '../../../src/contract/index.ts';
import { readPdf } from '../../support/readPdf.ts';
import { setUpHouse } from './support/door.ts';
import { type Hand, textOf } from './support/hand.ts';
import { matCorners, matPicture } from './support/rugs.ts';
import { record, takeIn } from './support/seed.ts';
import { openWorkshop, tabletSized } from './support/workshop.ts';

const workshop = openWorkshop();

/** A photograph on record, with the rug's corners tapped on it. */
async function photographed(hand: Hand, rug: string, picture: Buffer, occasion: 'intake' | 'after work') {
  const { origin } = new URL(workshop.server().address);
  const answer = await hand.page.request.post('/api/photographs', {
    data: picture,
    headers: { 'content-type': 'image/jpeg', origin },
  });
  const { photo, widthPx, heightPx } = (await answer.json()) as PhotographAnswer;
  await record(
    hand,
    rug,
    { type: 'PhotographTaken', photo, widthPx, heightPx, shows: 'face', occasion },
    { type: 'CornersTapped', photo, corners: matCorners },
  );
}

/** Shows where a colour is, in shares of the picture. */
async function showColour(hand: Hand, name: string, [x, y]: readonly [number, number]): Promise<void> {
  await hand.choose('Colour to show on the picture', name);
  const picture = hand.scope.getByRole('img', { name: /a square where each colour is measured/ });
  await picture.scrollIntoViewIfNeeded();
  const box = await picture.boundingBox();
  if (box === null) throw new Error('There is no picture.');
  // The picture is fitted into its frame, whole and in the middle.
  const share = Math.min(box.width / 1694, box.height / 2100);
  const [left, top] = [(box.width - 1694 * share) / 2, (box.height - 2100 * share) / 2];
  await hand.page.mouse.click(box.x + left + x * 1694 * share, box.y + top + y * 2100 * share);
}

test('the rug before and after: soil went from one colour, another changed its hue, and the paper says so', async () => {
  const hand = await workshop.device(tabletSized);
  await setUpHouse(hand, workshop.server());
  const rug = await takeIn(hand, '9', 'Mat with diamonds');
  await record(hand, rug, {
    type: 'ColoursNamed',
    colours: ['blue', 'green'].map((colour) => ({
      ...{ colour, name: colour, kind: 'field colour', dyeClass: 'acid' },
    })),
  });
  await photographed(hand, rug, await matPicture({ soil: 0.15 }), 'intake');
  await photographed(hand, rug, await matPicture({ soil: 0, green: '#4d5a2c' }), 'after work');

  await hand.page.goto(`/rugs/${rug}`);
  await hand.scope.getByText('Finish, inspect, hand back').click();
  const part = hand.within('region', 'Before and after');
  await part.press('Compare two pictures');
  await part.button('Compare').waitFor();
  await showColour(part, 'blue', [0.364, 0.408]);
  await showColour(part, 'green', [0.44, 0.425]);
  await part.press('Compare');
  await part.see(/The hue moved at green: that is dye, not soil\./);

  const slider = part.scope.getByRole('slider');
  await slider.focus();
  await hand.page.keyboard.press('ArrowRight');
  expect(await slider.getAttribute('aria-valuetext')).toBe('52 % before, 48 % after');

  await part.press('Record the comparison');
  await part.see(/laid over each other by the corners/);
  expect(await textOf(part.scope)).toMatch(/blue: grade /);
  const paper = await hand.page.request.get(`/api/rugs/${rug}/papers/final-inspection.pdf`);
  expect(paper.status()).toBe(200);
  const words = readPdf(await paper.body())
    .words.join(' ')
    .replaceAll(/\s/g, '');
  expect(words).toContain('Coloursbeforeandafter');
  expect(words).toContain('Huemoved:green');
});
