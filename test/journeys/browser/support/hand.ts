import type { Locator, Page } from 'playwright-core';

type Name = string | RegExp;

const escaped = (words: string) => words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
/** A tile is called by its first words; a hint may follow them. */
const startsWith = (name: Name): RegExp =>
  typeof name === 'string' ? new RegExp(`^${escaped(name)}`) : name;

/** What a person does on a screen, finding everything by its role and name. */
export class Hand {
  readonly page: Page;
  readonly scope: Locator;

  constructor(page: Page, scope: Locator = page.locator('body')) {
    this.page = page;
    this.scope = scope;
  }

  /** Only inside a section, a sheet or a group with this heading. */
  within(role: 'dialog' | 'region' | 'group' | 'radiogroup', name: Name): Hand {
    return new Hand(this.page, this.scope.getByRole(role, { name, ...exactly(name) }));
  }

  button(name: Name): Locator {
    return this.scope.getByRole('button', { name, ...exactly(name) });
  }

  press(name: Name): Promise<void> {
    return this.button(name).click();
  }

  follow(name: Name): Promise<void> {
    return this.scope.getByRole('link', { name, ...exactly(name) }).click();
  }

  field(name: Name): Locator {
    return this.scope.getByRole('textbox', { name, ...exactly(name) });
  }

  fill(name: Name, text: string): Promise<void> {
    return this.field(name).fill(text);
  }

  /** A passphrase or PIN, which has a label but no role. */
  fillSecret(label: string, text: string): Promise<void> {
    return this.scope.getByLabel(label).and(this.page.locator('input[type=password]')).first().fill(text);
  }

  /** One of a few tiles; the tile around the radio is what a finger meets. */
  async choose(group: Name, option: Name): Promise<void> {
    const radio = this.scope
      .getByRole('radiogroup', { name: group, ...exactly(group) })
      .getByRole('radio', { name: startsWith(option) });
    await tileOf(radio).click();
  }

  /** Ticks a tile that is not ticked yet. */
  async tick(name: Name): Promise<void> {
    const box = this.scope.getByRole('checkbox', { name: startsWith(name) });
    await box.waitFor({ state: 'attached' });
    if (!(await box.isChecked())) await tileOf(box).click();
  }

  /** Waits until these words can be read. */
  see(words: Name): Promise<void> {
    return this.scope.getByText(words).filter({ visible: true }).first().waitFor();
  }

  heading(name: Name): Promise<void> {
    return this.scope.getByRole('heading', { name, ...exactly(name) }).waitFor();
  }

  async photograph(label: string, picture: Buffer, name = 'picture.jpg', mimeType = 'image/jpeg') {
    await this.scope.getByLabel(label, { exact: true }).setInputFiles({ name, mimeType, buffer: picture });
  }

  /** Draws on a surface in one stroke; places are shares of its width and height. */
  async draw(surface: Locator, places: readonly (readonly [number, number])[]): Promise<void> {
    await surface.scrollIntoViewIfNeeded();
    const box = await surface.boundingBox();
    if (box === null) throw new Error('There is nothing to draw on.');
    const at = ([x, y]: readonly [number, number]) =>
      [box.x + x * box.width, box.y + y * box.height] as const;
    const [first, ...rest] = places;
    if (first === undefined) return;
    await this.page.mouse.move(...at(first));
    await this.page.mouse.down();
    for (const place of rest) await this.page.mouse.move(...at(place), { steps: 3 });
    await this.page.mouse.up();
  }
}

const exactly = (name: Name) => (typeof name === 'string' ? { exact: true } : {});
const tileOf = (input: Locator): Locator => input.locator('xpath=ancestor::label');

/** What stands there to be read. */
export const textOf = async (place: Locator): Promise<string> => (await place.textContent()) ?? '';
