import type { Locator } from 'playwright-core';
import { expect, test } from 'vitest';
import type { RowsAnswer, RugAnswer } from '../../../src/contract/index.ts';
import { setUpHouse } from './support/door.ts';
import type { Hand } from './support/hand.ts';
import { openWorkshop, tabletSized } from './support/workshop.ts';

const workshop = openWorkshop();

/** Somebody who has a keyboard and nothing else: goes on with Tab until the wanted thing has the focus. */
class Keys {
  readonly #hand: Hand;

  constructor(hand: Hand) {
    this.#hand = hand;
  }

  async #hasFocus(wanted: Locator): Promise<boolean> {
    return (await wanted.count()) === 1 && (await wanted.evaluate((one) => one === document.activeElement));
  }

  async #goTo(wanted: Locator): Promise<void> {
    await wanted.waitFor({ state: 'attached' });
    for (let stops = 0; stops < 150; stops += 1) {
      if (await this.#hasFocus(wanted)) return;
      await this.#hand.page.keyboard.press('Tab');
    }
    throw new Error(`Tab never comes to ${wanted}.`);
  }

  async press(role: 'button' | 'link', name: string | RegExp): Promise<void> {
    const exact = typeof name === 'string';
    await this.#goTo(this.#hand.page.getByRole(role, { name, exact }).first());
    await this.#hand.page.keyboard.press('Enter');
  }

  async type(label: string, text: string): Promise<void> {
    await this.#goTo(this.#hand.field(label));
    await this.#hand.page.keyboard.type(text);
  }

  async tick(name: RegExp): Promise<void> {
    await this.#goTo(this.#hand.page.getByRole('checkbox', { name }));
    await this.#hand.page.keyboard.press('Space');
  }

  /** Arrows move within a group; a group nobody chose from yet begins at its first or last. */
  async choose(group: string, option: RegExp): Promise<void> {
    const radios = this.#hand.page.getByRole('radiogroup', { name: group, exact: true }).getByRole('radio');
    const wanted = this.#hand.page
      .getByRole('radiogroup', { name: group, exact: true })
      .getByRole('radio', { name: option });
    await wanted.waitFor({ state: 'attached' });
    for (let stops = 0; stops < 150; stops += 1) {
      if (await radios.evaluateAll((all) => all.some((one) => one === document.activeElement))) break;
      await this.#hand.page.keyboard.press('Tab');
    }
    for (let stops = 0; stops < 12 && !(await this.#hasFocus(wanted)); stops += 1)
      await this.#hand.page.keyboard.press('ArrowDown');
    if (!(await wanted.isChecked())) await this.#hand.page.keyboard.press('Space');
    expect(await wanted.isChecked()).toBe(true);
  }
}

test('a rug is taken in with the keyboard alone', async () => {
  const hand = await workshop.device(tabletSized);
  await setUpHouse(hand, workshop.server());
  await hand.page.reload();
  await hand.see('No rug is in the house.');
  const keys = new Keys(hand);

  await keys.press('link', 'Receive rugs');
  await hand.heading('Client');
  await keys.press('button', 'New client');
  // The cursor already stands in the first field.
  await keys.type('Name', 'Agnes Holm');
  await keys.press('button', 'Next');
  await hand.heading('What for');
  await keys.tick(/^Repair/);
  await keys.press('button', 'Next');
  await hand.heading('Rug and tag');
  await keys.type('What does it look like?', 'Flatweave in stripes');
  await keys.press('button', 'Take tag 1, which is free');
  await keys.press('button', 'Next');
  await hand.heading('Size');
  for (const place of ['left', 'middle', 'right']) await keys.type(`Length, ${place}`, '210');
  for (const place of ['at the start', 'in the middle', 'at the far end'])
    await keys.type(`Width, ${place}`, '140');
  await keys.press('button', 'Next');
  await hand.heading('Mass');
  await keys.choose('Mass', /^Weigh it later/);
  await keys.press('button', 'Next');
  await hand.heading('Wishes and value');
  await keys.type('What does the client want, and why?', 'A wash, and the torn selvedge bound.');
  await keys.press('button', 'Next');
  await hand.heading('Pictures');
  await keys.press('button', 'Next');
  await hand.heading('Marks');

  await keys.press('button', 'Place a mark by numbers');
  await hand.within('dialog', 'What is this mark?').scope.waitFor();
  await keys.choose('Shape', /^A line/);
  await keys.choose('Side', /^Through both/);
  await keys.type('Place 1: across from the left', '1400');
  await keys.type('Place 1: up from the start', '300');
  await keys.type('Place 2: across from the left', '1400');
  await keys.type('Place 2: up from the start', '550');
  await keys.press('button', /^tear/);
  await keys.press('button', 'Keep this mark');
  await hand.scope.getByRole('dialog').waitFor({ state: 'detached' });
  await keys.choose('Which sides were looked over?', /^Face and back/);
  await keys.press('button', 'Done with this rug');
  await hand.heading('All rugs');
  await keys.press('button', 'Read back and sign');
  await hand.heading('Sign');

  await keys.press('button', 'Type the name instead');
  await keys.tick(/^I have read this, and my typed name stands for my signature/);
  await keys.press('button', 'Record the receipt');
  await hand.heading('Received');
  await keys.press('link', 'Open the dossier');
  await hand.heading('Flatweave in stripes');
  await hand.within('region', 'Condition').see(/^tear/);

  const { rows } = (await (await hand.page.request.get('/api/rugs')).json()) as RowsAnswer;
  const { entries } = (await (await hand.page.request.get(`/api/rugs/${rows[0]?.rug}`)).json()) as RugAnswer;
  const mark = entries.map(({ fact }) => fact).find(({ type }) => type === 'MarkRecorded');
  expect(mark).toMatchObject({
    shape: 'line',
    side: 'both',
    pointsMm: [
      { xMm: 1400, yMm: 300 },
      { xMm: 1400, yMm: 550 },
    ],
    lengthCm: 25,
  });
});
