import { expect } from 'vitest';
import { type Hand, textOf } from './hand.ts';
import { sign } from './receive.ts';

/** A sheet that is filled in and recorded, and has gone when the record has it. */
export async function inSheet(
  hand: Hand,
  title: string | RegExp,
  fill: (sheet: Hand) => Promise<void>,
): Promise<void> {
  const sheet = hand.within('dialog', title);
  await sheet.scope.waitFor();
  await fill(sheet);
  await sheet.scope.waitFor({ state: 'detached' });
}

/** One colour of the rug. */
export async function nameColour(hand: Hand, name: string): Promise<void> {
  await hand.within('region', 'Colours').press('Name a colour');
  await inSheet(hand, /colour/i, async (sheet) => {
    await sheet.fill('Name', name);
    await sheet.choose('Dye class', 'acid');
    await sheet.choose('Does a light colour touch it?', 'Yes');
    await sheet.press('Record');
  });
}

/** As `24 h` or `20 min` stands on a button. */
const minutesIn = (words: string): number =>
  Number(/[\d.]+/.exec(words)?.[0]) * (words.endsWith(' h') ? 60 : 1);

/** Makes the blot the plan asks for next, and reads it as one that holds. */
async function makeBlot(hand: Hand): Promise<void> {
  await hand
    .within('region', 'Dye tests')
    .scope.getByRole('button', { name: /^Test / })
    .click();
  await inSheet(hand, /./, async (sheet) => {
    const read = sheet.button('Read it now');
    const staining = sheet.scope.getByRole('radiogroup', { name: 'Staining of the white cotton' });
    await read.or(staining).waitFor();
    const start = sheet.scope.getByRole('button', { name: /^It lies: start / });
    const minutes = (await start.isVisible()) ? minutesIn(await textOf(start)) : null;
    if (await read.isVisible()) await read.click();
    await sheet.choose('Staining of the white cotton', /^5$/);
    if (await sheet.scope.getByRole('radiogroup', { name: 'Change of the colour itself' }).isVisible())
      await sheet.choose('Change of the colour itself', /^5$/);
    await sheet.choose('The control blotter', /^5$/);
    if (minutes !== null) await sheet.fill('How long it lay', String(minutes));
    await sheet.press('Record');
  });
}

/** Tests until the plan asks for nothing more; answers how many blots that took. */
export async function makeEveryBlot(hand: Hand): Promise<number> {
  const tests = hand.within('region', 'Dye tests');
  const every = tests.scope.getByText('Every blot the plan asks for is made.');
  const asked = tests.scope.getByRole('button', { name: /^Test / });
  for (let made = 0; made < 40; made += 1) {
    await every.or(asked).waitFor();
    if (await every.isVisible()) return made;
    const before = await textOf(tests.scope);
    await makeBlot(hand);
    await expect.poll(() => textOf(tests.scope)).not.toBe(before);
  }
  throw new Error('The plan asks for more blots than a rug has places.');
}

/** The plan on record, signed off by the owner, priced, and agreed to by the client. */
export async function agree(hand: Hand): Promise<void> {
  const plan = hand.within('region', 'What it can bear');
  await plan.press('Put this plan on record');
  await inSheet(hand, 'Put this plan on record', (sheet) => sheet.press('Put on record'));
  await plan.see('This plan is on record.');
  await plan.press('Sign off');
  await inSheet(hand, 'Sign-off by the owner', async (sheet) => {
    await sheet.fill('Name of who signs off', 'Mirela Ostrand');
    await sheet.press('Sign off');
  });
  await hand.within('region', 'Price and payment').press('Quote a price');
  await inSheet(hand, 'Quote a price', async (sheet) => {
    await sheet.fill('Line 1', 'Wash by hand');
    await sheet.fill('Amount 1', '85');
    await sheet.fill('Not to exceed', '100');
    await sheet.press('Record');
  });
  const agreement = hand.within('region', 'What the client agrees to');
  await agreement.press('Ask for consent');
  await inSheet(hand, 'Consent', async (sheet) => {
    await sheet.see(/^SHA-256 of this paper: [0-9a-f]{64}$/);
    await sheet.tick('The client has seen this paper');
    await sheet.choose('How the client agrees', 'Signs here');
    await sign(sheet);
    await sheet.press('Record the consent');
  });
  await agreement.see('The client agreed.');
}

/** Opens the rug where its steps are worked off. */
export async function goToWash(hand: Hand): Promise<void> {
  await hand.page.goto(`${new URL(hand.page.url()).pathname}?at=wash`);
}
