import { expect, test } from 'vitest';
import type { PlanStep } from '../../../src/core/wash/index.ts';
import { type RugFact, stepId } from '../../../src/dossier/index.ts';
import { coloursNamed } from '../../support/rugStory.ts';
import { setUpHouse, signIn } from './support/door.ts';
import { inSheet } from './support/dossier.ts';
import type { Hand } from './support/hand.ts';
import { addColleague, agreePlan, proveColours, record, stockShelf, takeIn } from './support/seed.ts';
import { openWorkshop, tabletSized } from './support/workshop.ts';

const workshop = openWorkshop();
const tobinsPassphrase = 'weld and alum in the copper';

const mark = (id: string, word: string, xMm: number, more: object): RugFact =>
  ({
    ...{ type: 'MarkRecorded', mark: id, word, side: 'face', shape: 'point', pointsMm: [{ xMm, yMm: 900 }] },
    ...{ grade: 1, activity: 'stable', photos: [], ...more },
  }) as RugFact;

const readBath = async (hand: Hand, ph: string, isStop: boolean) => {
  await hand.press('Write a reading');
  await inSheet(hand, 'Reading: wash', async (sheet) => {
    await sheet.fill(/^pH/, ph);
    if (isStop) await sheet.see('Recording this stops the wash on every tablet.');
    await sheet.press('Record the reading');
  });
};

const readRinse = async (hand: Hand) => {
  await hand.press('Write a reading');
  await inSheet(hand, 'Reading: rinse', async (sheet) => {
    for (const [name, value] of [
      [/^Rinse water/, '624'],
      [/^Supply(?! pH)/, '620'],
      [/^Rinse pH/, '7.5'],
      [/^Supply pH/, '7.6'],
    ] as const)
      await sheet.fill(name, value);
    await sheet.choose('Foam', 'None');
    await sheet.choose('White cloth pressed on it', /^5$/);
    await sheet.press('Record the reading');
  });
};

test('a reading off its band stops the wash on the other tablet, is rescued and cleared, and the rinse comes to its end', async () => {
  const mirela = await workshop.device(tabletSized);
  await setUpHouse(mirela, workshop.server());
  await addColleague(mirela, 'Tobin Hale', tobinsPassphrase);
  await stockShelf(mirela);
  const rug = await takeIn(mirela, '12', 'Hall carpet, red border on ivory');
  const wine = mark('m1', 'stain', 300, { stain: 'tannin', cause: 'wine', causeConfidence: 'certain' });
  await record(mirela, rug, wine, mark('m2', 'urine', 700, {}), coloursNamed);
  await proveColours(mirela, rug, { controlled: 'red' });
  const { steps, dyes } = await agreePlan(mirela, rug);
  expect(dyes).toMatchObject([{ standing: 'controlled' }]);
  const tobin = await workshop.device(tabletSized);
  await signIn(tobin, 'Tobin Hale', tobinsPassphrase);
  await tobin.heading(/^\w+day \d/);
  const lend = (step: PlanStep) => record(tobin, rug, { type: 'HandLent', step: stepId(step) });
  const work = async (step: PlanStep) => {
    await lend(step);
    await record(mirela, rug, { type: 'StepStarted', step: stepId(step), wets: step.wet });
    await record(mirela, rug, { type: 'StepDone', step: stepId(step), early: 'The place is clean already' });
  };
  const kinds = steps.map(({ kind }) => kind);
  expect(kinds).toEqual(expect.arrayContaining(['urine pre-flush', 'stain treatment', 'acid rinse']));
  const [wash, rinse] = [steps[kinds.indexOf('wash')], steps[kinds.indexOf('rinse')]];
  if (wash === undefined || rinse === undefined) throw new Error('The plan neither washes nor rinses.');
  for (const step of steps.slice(0, steps.indexOf(wash))) await work(step);
  await lend(wash);
  await mirela.page.goto(`/rugs/${rug}?at=wash`);
  await tobin.page.goto('/shelf');

  // Mixed from the shelf, then washed.
  await mirela.see(/Meadow wool wash/);
  await mirela.press('Start: wash');
  await readBath(mirela, '9.4', true);
  // Who stands at another page is told too, and is one touch away from the card.
  await tobin.see('Stopped:');
  await tobin.follow('Open the rescue card');
  const card = tobin.within('region', 'The bath left its band');
  await card.see(/pH is too far outside its band\. pH 9\.4; keep \d/);
  await readBath(mirela, '6.5', false);
  await card.choose('How it was resolved', 'The card was followed');
  await card.press('Cleared: go on');
  await card.scope.waitFor({ state: 'detached' });
  await mirela.scope.getByText('Cleared: go on').waitFor({ state: 'detached' });

  await record(mirela, rug, { type: 'StepDone', step: stepId(wash), early: 'Rescued' });
  for (const step of steps.slice(steps.indexOf(wash) + 1, steps.indexOf(rinse))) await work(step);
  await lend(rinse);
  await mirela.press('Start: rinse');
  await readRinse(mirela);
  await readRinse(mirela);
  const bath = mirela.within('region', 'Bath and rinse').scope;
  await bath.locator('.criteria .met').nth(3).waitFor();
  expect(await bath.locator('.criteria .unmet').count()).toBe(0);
  // Hard water leaves the rinse above the bath's band: that is its end, no stop.
  expect(await card.scope.count()).toBe(0);

  // Nothing on record calls for it, so a person does.
  await mirela.press(/^Begin a flow/);
  await inSheet(mirela, 'Begin a flow by hand', async (sheet) => {
    await sheet.choose('What is it?', 'Cellulosic browning');
    await sheet.see(/Never: alkali/);
    await sheet.choose('Why?', 'Seen on the rug');
    await sheet.press('Begin: Cellulosic browning');
  });
  await tobin
    .within('region', 'Cellulosic browning')
    .see(/Begun by hand .* by Mirela Ostrand: Seen on the rug/);
  for (const paper of ['work-order', 'wash-log']) {
    const answer = await mirela.page.request.get(`/api/rugs/${rug}/papers/${paper}.pdf`);
    expect((await answer.body()).subarray(0, 4).toString()).toBe('%PDF');
  }
});
