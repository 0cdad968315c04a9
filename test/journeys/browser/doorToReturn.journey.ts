import { expect, test } from 'vitest';
import { setUpHouse } from './support/door.ts';
import { agree, goToWash, inSheet, makeEveryBlot, nameColour } from './support/dossier.ts';
import { type Hand, textOf } from './support/hand.ts';
import { rugPicture } from './support/pictures.ts';
import { measure, newClient, next, sign } from './support/receive.ts';
import { openWorkshop, phone } from './support/workshop.ts';

const workshop = openWorkshop();

/** A weighing may follow only an hour after another; a meter and a pocket need no such wait. */
async function dryWithoutScale(hand: Hand) {
  await hand.page.goto('/workshop');
  await hand.choose('Dry standard', 'Without a scale');
  await hand.press('Record the settings');
  await hand.see('Recorded. It holds from now on.');
  await hand.page.goto('/');
}

async function receive(hand: Hand) {
  await hand.follow('Receive');
  await newClient(hand, 'Halide Örn');
  await next(hand, 'What for');
  await next(hand, 'Rug and tag');
  await hand.fill('What does it look like?', 'Red rug with a cream medallion');
  await hand.fill('Tag number', '41');
  await next(hand, 'Size');
  await measure(hand, 120, 80);
  await next(hand, 'Mass');
  await hand.fill('Mass as it is', '3.2');
  await hand.fill('Humidity of the air', '50');
  await hand.fill('Temperature of the air', '20');
  await hand.tick('It has lain in this air for a day');
  await next(hand, 'Wishes and value');
  await hand.fill('What does the client want, and why?', 'A general wash; it lay in the hall.');
  await hand.fill('Value the client declares', '900');
  await next(hand, 'Pictures');
  await hand.photograph('Photograph the face', await rugPicture());
  await hand.scope.getByRole('img', { name: 'Face, picture 1' }).waitFor();
  await next(hand, 'Marks');
  await drawMark(hand);
  await hand.choose('Which sides were looked over?', 'Face and back');
  await hand.press('Done with this rug');
  await hand.heading('All rugs');
  await hand.press('Read back and sign');
  await sign(hand);
  await hand.press('Record the receipt');
  await hand.heading('Received');
  await hand.follow('Open the dossier');
}

/** The corners of the picture are tapped, then a worn place is drawn around. */
async function drawMark(hand: Hand) {
  const picture = hand.scope.getByRole('img', { name: /^Picture of the face with/ });
  await hand.press('Tap corners');
  for (const [corner, place] of [
    ['lower left', [0.17, 0.875]],
    ['lower right', [0.83, 0.875]],
    ['upper right', [0.83, 0.125]],
    ['upper left', [0.17, 0.125]],
  ] as const) {
    await hand.see(`Tap the ${corner} corner`);
    await hand.draw(picture, [place]);
  }
  await hand.button('Corners again').waitFor();
  await hand.press('Outline');
  await hand.draw(picture, [
    [0.4, 0.4],
    [0.6, 0.4],
    [0.6, 0.55],
    [0.4, 0.55],
  ]);
  await hand.press('Name this mark');
  await inSheet(hand, 'What is this mark?', async (sheet) => {
    await sheet.scope.getByRole('searchbox', { name: 'Find a word' }).fill('low pile');
    await sheet.scope
      .getByRole('button', { name: /^low pile/ })
      .first()
      .click();
    // Between the tapped corners lie 80 × 120 cm: the outline is 0.2 ÷ 0.66 of one by 0.15 ÷ 0.75 of the other.
    const drawn = await textOf(sheet.scope.getByText(/cm² \(between/));
    expect(Math.abs(Number.parseFloat(drawn) - (0.2 / 0.66) * 80 * (0.15 / 0.75) * 120)).toBeLessThan(30);
    await sheet.choose('Does it grow?', 'Stable');
    await sheet.press('Keep this mark');
  });
}

async function identify(hand: Hand) {
  const say = async (about: string, fill: (sheet: Hand) => Promise<void>) => {
    await hand.press(`Say: ${about}`);
    await inSheet(hand, about, async (sheet) => {
      await fill(sheet);
      await sheet.choose('What shows it', 'Seen');
      await sheet.choose('How sure', 'Certain');
      await sheet.press('Record');
    });
  };
  await say('Construction', (sheet) => sheet.choose('Construction', 'knotted pile'));
  await say('Pile', (sheet) => sheet.tick('wool'));
  await say('Warp', (sheet) => sheet.choose('Fibre of the warp', 'cotton'));
  await say('Weft', (sheet) => sheet.choose('Fibre of the weft', 'cotton'));
}

async function enterDryingHours(hand: Hand) {
  await hand.within('region', 'What it can bear').press('Forecast or enter');
  await inSheet(hand, 'Hours until dry', async (sheet) => {
    await sheet.fill('Hours', '20');
    await sheet.press('Record');
  });
}

async function wash(hand: Hand): Promise<number> {
  await goToWash(hand);
  const toDry = hand.scope.getByRole('link', { name: 'Go on to drying' });
  const start = hand.scope.getByRole('button', { name: /^Start: / });
  for (let done = 0; done < 40; done += 1) {
    await toDry.or(start).waitFor();
    if (await toDry.isVisible()) return done;
    await start.click();
    const finish = hand.scope.getByRole('button', { name: /^Done(,|$)(?! with )/ });
    const isEarly = (await textOf(finish)).includes('before the dwell');
    await finish.click();
    if (isEarly) {
      await inSheet(hand, 'Before the dwell is over', async (sheet) => {
        await sheet.choose('Why it ends now', 'The place is clean already');
        await sheet.press('End it now');
      });
    }
    await finish.waitFor({ state: 'detached' });
  }
  throw new Error('The plan has more steps than a wash takes.');
}

/** Lays it to dry and takes the reading that meets the standard of a workshop without a scale. */
async function dry(hand: Hand) {
  await hand.follow('Go on to drying');
  await hand.press('Lay or hang it to dry');
  await inSheet(hand, 'Lay or hang it to dry', async (sheet) => {
    await sheet.choose('How it lies or hangs', 'flat on mesh');
    await sheet.fill('Place', 'mesh 1');
    await sheet.press('Drying has begun');
  });
  await hand.press('Take a reading');
  await inSheet(hand, 'Drying reading', async (sheet) => {
    await sheet.fill(/^Pocket/, '55');
    await sheet.fill(/^Dry reference/, '8');
    await sheet.scope.getByText('Meter points: pile, foundation, fringe').click();
    for (const point of ['pile, middle', 'foundation, back', 'fringe'])
      await sheet.fill(new RegExp(`^${point} `), '9');
    await sheet.choose('Touch', 'dry');
    await sheet.choose('Smell', 'none');
    await sheet.choose('White cloth', 'clean');
    await sheet.press('Record the reading');
  });
  await hand.press('Accept it as dry');
  await inSheet(hand, 'Accept it as dry', (sheet) => sheet.press('Accept as dry'));
  await hand.see('Accepted as dry.');
  await hand.follow('‹ Dossier');
}

async function finishAndInspect(hand: Hand) {
  const finish = hand.within('region', 'Finish');
  await finish.press('Write down finishing work');
  await finish.tick('Pile set');
  await finish.press('Record');
  await finish.button('Write down finishing work').waitFor();
  const inspection = hand.within('region', 'Inspection');
  await inspection.press('Begin the inspection');
  await inspection.choose('Mark 1 now', 'Unchanged');
  await measure(inspection, 120, 80, ' now');
  await inspection.choose('Smell', 'None');
  await inspection.choose('Colour', 'Cleaner');
  await inspection.choose('Which sides were looked over?', 'Face and back');
  await inspection.press('Record the inspection');
  await inspection.button('Inspect again').waitFor();
}

async function handBack(hand: Hand) {
  const back = hand.within('region', 'Hand back');
  await back.tick('The tag reads 41');
  await back.tick('It measures 120 × 80 cm');
  await back.tick('It is the rug in the picture');
  await back.choose('The mass', 'Not weighed');
  await sign(back);
  await back.press('Hand it back');
  await hand.heading('Handed back');
}

/** Every paper offered opens as a PDF. */
async function openPapers(hand: Hand): Promise<readonly string[]> {
  const papers = hand.within('region', 'Papers').scope.getByRole('link', { name: /PDF$/ });
  const opened: string[] = [];
  for (const paper of await papers.all()) {
    const answer = await hand.page.request.get((await paper.getAttribute('href')) ?? '');
    expect(answer.status()).toBe(200);
    expect((await answer.body()).subarray(0, 4).toString()).toBe('%PDF');
    opened.push((await textOf(paper)).replace(/\s*PDF$/, ''));
  }
  return opened;
}

test('a rug goes from the door to the return on a phone', async () => {
  const hand = await workshop.device(phone);
  await setUpHouse(hand, workshop.server());
  await dryWithoutScale(hand);
  await receive(hand);
  await identify(hand);
  await nameColour(hand, 'red, field');
  await enterDryingHours(hand);
  expect(await makeEveryBlot(hand)).toBeGreaterThan(4);
  await agree(hand);
  expect(await wash(hand)).toBeGreaterThan(4);
  await dry(hand);
  await finishAndInspect(hand);
  await handBack(hand);
  expect(await openPapers(hand)).toEqual(
    expect.arrayContaining([
      'Receipt',
      'Condition report',
      'Identification sheet',
      'Dye-test record',
      'Agreement to the work',
      'Work order',
      'Wash log',
      'Drying log',
      'Final inspection',
      'Return',
      'Care sheet',
      'The whole dossier',
    ]),
  );
});
