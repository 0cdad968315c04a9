import { beforeAll, describe, expect, test } from 'vitest';
import type { RowsAnswer } from '../../../src/contract/index.ts';
import { ownersPassphrase, setUpHouse, signIn, signOut } from './support/door.ts';
import { type Hand, textOf } from './support/hand.ts';
import { rugPicture } from './support/pictures.ts';
import { measure, newClient, next, sign } from './support/receive.ts';
import { addColleague, takeIn } from './support/seed.ts';
import { openWorkshop, tabletSized } from './support/workshop.ts';

const workshop = openWorkshop();

/** Runs as soon as a browser takes it for markup, in text or in an attribute. */
const script = '"><img src=x onerror="document.title=\'harmed\'"><script>document.title="harmed"</script>';

const rugsInHouse = async (hand: Hand): Promise<RowsAnswer['rows']> =>
  ((await (await hand.page.request.get('/api/rugs?inHouse=true')).json()) as RowsAnswer).rows;

async function enter(): Promise<Hand> {
  const hand = await workshop.device(tabletSized);
  await signIn(hand);
  await hand.heading(/^\w+day \d/);
  return hand;
}

/** From the client to the step with the sizes. */
async function toSizes(hand: Hand, tag: string) {
  await hand.follow('Receive rugs');
  await newClient(hand, 'Callum Dorran');
  await next(hand, 'What for');
  await next(hand, 'Rug and tag');
  await hand.fill('What does it look like?', 'Round rug with a star');
  await hand.fill('Tag number', tag);
  await next(hand, 'Size');
}

describe('at the door', () => {
  beforeAll(async () => {
    const hand = await workshop.device(tabletSized);
    await setUpHouse(hand, workshop.server());
    await takeIn(hand, '7', 'Runner with three medallions');
  });

  test('a script in every text field stays text, on the screen and in the record', async () => {
    const hand = await enter();
    await hand.follow('Receive rugs');
    await hand.press('New client');
    for (const name of ['Name', 'Phone', 'Address']) await hand.fill(name, script);
    await next(hand, 'What for');
    await next(hand, 'Rug and tag');
    await hand.fill('What does it look like?', script);
    await hand.fill('Tag number', script);
    await hand.press('Next');
    // A tag is short: the field takes no more, and what it took is no tag number.
    await hand.see(/is no tag number\. A tag is read on a wet floor/);
    await hand.fill('Tag number', '66');
    await next(hand, 'Size');
    await measure(hand, 120, 80);
    await next(hand, 'Mass');
    await hand.choose('Mass', 'Weigh it later');
    await next(hand, 'Wishes and value');
    await hand.fill('What does the client want, and why?', script);
    await hand.fill('Where does it lie now?', script);
    await next(hand, 'Pictures');
    await next(hand, 'Marks');
    await hand.press('Place a mark by numbers');
    const mark = hand.within('dialog', 'What is this mark?');
    await mark.fill('across from the left', '400');
    await mark.fill('up from the start', '300');
    await mark.scope.getByRole('searchbox', { name: 'Find a word' }).fill('hole');
    await mark.scope.getByRole('button', { name: /^hole/ }).first().click();
    await mark.fill('Cause, if known or guessed', script);
    await mark.fill('Note', script);
    await mark.press('Keep this mark');
    await mark.scope.waitFor({ state: 'detached' });
    await hand.choose('Which sides were looked over?', 'Face and back');
    await hand.fill('In what light?', script);
    await hand.fill('What could not be seen, and why', script);
    await hand.press('Done with this rug');
    await hand.press('Read back and sign');
    await hand.fill('Name of the person who signs', script);
    await sign(hand);
    await hand.press('Record the receipt');
    await hand.heading('Received');
    await hand.follow('Open the dossier');

    await hand.scope.getByRole('heading', { level: 1, name: script }).waitFor();
    await hand.within('region', 'Condition').see(script);
    await hand.within('region', 'Where it is').see(script);
    for (const path of ['/', '/rugs', '/clients']) {
      await hand.page.goto(path);
      await hand.see(script);
    }
    expect(await hand.page.title()).not.toBe('harmed');
    const row = (await rugsInHouse(hand)).find(({ tag }) => tag === '66');
    expect(row).toMatchObject({ clientName: script, place: script, body: { title: script } });
    const paper = await hand.page.request.get(`/api/rugs/${row?.rug}/papers/condition-report.pdf`);
    expect((await paper.body()).subarray(0, 4).toString()).toBe('%PDF');
  });

  test('a tag that is on another rug is refused in words, and a free one is offered', async () => {
    const hand = await enter();
    await hand.follow('Receive rugs');
    await newClient(hand, 'Tara Iyer');
    await next(hand, 'What for');
    await next(hand, 'Rug and tag');
    await hand.fill('What does it look like?', 'Small prayer rug');
    await hand.fill('Tag number', '7');
    await hand.see(/^Tag 7 is on “Runner with three medallions”, which is in the house\./);
    await hand.scope.getByRole('link', { name: 'Look at the rug with tag 7' }).waitFor();
    await hand.scope.getByRole('button', { name: /^Take tag \d+, which is free$/ }).click();
    await hand.scope.getByText(/^Tag 7 is on/).waitFor({ state: 'detached' });
  });

  test('a tag that another tablet took meanwhile is refused when it is recorded, and nothing is half-written', async () => {
    const hand = await enter();
    await toSizes(hand, '90');
    await measure(hand, 100, 100);
    await next(hand, 'Mass');
    await hand.choose('Mass', 'Weigh it later');
    await next(hand, 'Wishes and value');
    await hand.fill('What does the client want, and why?', 'A wash.');
    await next(hand, 'Pictures');
    await next(hand, 'Marks');
    await hand.choose('Which sides were looked over?', 'Not yet');
    await hand.press('Done with this rug');
    await hand.press('Read back and sign');
    await sign(hand);
    await takeIn(hand, '90', 'Kilim that came first');
    await hand.press('Record the receipt');
    await hand.scope.getByRole('alert').getByText(/90/).first().waitFor();
    const named90 = (await rugsInHouse(hand)).filter(({ tag }) => tag === '90');
    expect(named90.map(({ body }) => body.title)).toEqual(['Kilim that came first']);
    const clients = await (await hand.page.request.get('/api/clients?find=Callum')).json();
    expect(clients).toMatchObject({ rows: [] });
  });

  test('a negative, an absurd and a wordy size each say what is allowed, and stay to be corrected', async () => {
    const hand = await enter();
    await toSizes(hand, '8');
    const field = hand.field('Length, left');
    for (const [typed, said] of [
      ['-120', 'Length, left is -120 cm. It must be between 5 and 2500 cm.'],
      ['999999', 'Length, left is 999999 cm. It must be between 5 and 2500 cm.'],
      ['about two metres', '“about two metres” is not a number.'],
    ] as const) {
      await field.fill(typed);
      await hand.see(said);
      expect(await field.inputValue()).toBe(typed);
      expect(await field.getAttribute('aria-invalid')).toBe('true');
    }
    await hand.press('Next');
    await hand.see('3 of three lengths are missing.');
    await hand.heading('Size');
  });

  test('a photograph that is none, or broken off, is refused in words, and a good one is taken after it', async () => {
    const hand = await enter();
    await toSizes(hand, '9');
    await measure(hand, 120, 80);
    await next(hand, 'Mass');
    await hand.choose('Mass', 'Weigh it later');
    await next(hand, 'Wishes and value');
    await hand.fill('What does the client want, and why?', 'A wash.');
    await next(hand, 'Pictures');
    const picture = await rugPicture();
    for (const broken of [Buffer.from('This is a letter, not a photograph.'), picture.subarray(0, 4000)]) {
      await hand.photograph('Photograph the face', broken);
      const refusal = hand.scope.getByRole('alert');
      await refusal.waitFor();
      expect(await textOf(refusal)).toMatch(/photograph|picture/i);
      expect(await hand.scope.getByRole('img', { name: /^Face, picture/ }).count()).toBe(0);
    }
    await hand.photograph('Photograph the face', picture);
    await hand.scope.getByRole('img', { name: 'Face, picture 1' }).waitFor();
    expect(await hand.scope.getByRole('alert').count()).toBe(0);
  });

  test('a session that ends in the middle of a form loses nothing that was typed', async () => {
    const hand = await enter();
    await hand.follow('Receive rugs');
    await newClient(hand, 'Joseph Okello');
    await next(hand, 'What for');
    await next(hand, 'Rug and tag');
    await hand.fill('What does it look like?', 'Blue kilim with a torn end');
    await hand.fill('Tag number', '31');
    await next(hand, 'Size');
    await measure(hand, 210, 140);
    await next(hand, 'Mass');
    await hand.choose('Mass', 'Weigh it later');
    await hand.page.context().clearCookies();
    await next(hand, 'Wishes and value');
    await hand.fill('What does the client want, and why?', 'It smells of the cellar.');
    await next(hand, 'Pictures');
    await next(hand, 'Marks');
    await hand.choose('Which sides were looked over?', 'Face only');
    await hand.press('Done with this rug');
    await hand.press('Read back and sign');
    await sign(hand);
    await hand.press('Record the receipt');

    const door = hand.within('dialog', 'Sign in again');
    await door.see('You have been signed out.');
    expect(await door.field('Your name').inputValue()).toBe('Mirela Ostrand');
    await door.page.getByLabel('Passphrase').fill(ownersPassphrase);
    await door.press('Sign in');
    await hand.heading('Received');
    await hand.follow('Open the dossier');
    await hand.heading('Blue kilim with a torn end');
    const row = (await rugsInHouse(hand)).find(({ tag }) => tag === '31');
    expect(row?.clientName).toBe('Joseph Okello');
  });

  test('a session that ends over an open sheet of a dossier asks over that sheet, then records it', async () => {
    const hand = await enter();
    const [row] = await rugsInHouse(hand);
    await hand.page.goto(`/rugs/${row?.rug}`);
    await hand.press('Write a note');
    const note = hand.within('dialog', 'Write a note');
    await note.fill('Note', 'The fringe is knotted by hand.');
    await hand.page.context().clearCookies();
    await note.press('Record');
    const door = hand.within('dialog', 'Sign in again');
    await hand.page.getByLabel('Passphrase').fill(ownersPassphrase);
    await door.press('Sign in');
    await note.scope.waitFor({ state: 'detached' });
    await hand.within('region', 'Where it is').see('The fringe is knotted by hand.');
  });

  test('a page loaded anew after the session ended still holds what was typed', async () => {
    const hand = await enter();
    await toSizes(hand, '55');
    await measure(hand, 333, 222);
    await hand.page.context().clearCookies();
    await hand.page.reload();
    await signIn(hand);
    await hand.heading('Size');
    expect(await hand.field('Length, middle').inputValue()).toBe('333');
    await hand.press('Back');
    expect(await hand.field('Tag number').inputValue()).toBe('55');
  });

  test('on a shared tablet the next person does not see a receipt half done, and the one who began it finds it again', async () => {
    const hand = await enter();
    await addColleague(hand, 'Tobin Hale', 'weld and alum in the copper');
    await toSizes(hand, '57');
    await signOut(hand);
    await signIn(hand, 'Tobin Hale', 'weld and alum in the copper');
    await hand.follow('Receive rugs');
    await hand.heading('Client');
    expect(await textOf(hand.scope)).not.toContain('Callum Dorran');
    await signOut(hand);
    await signIn(hand);
    await hand.follow('Receive rugs');
    await hand.heading('Size');
    await hand.press('Back');
    expect(await hand.field('Tag number').inputValue()).toBe('57');
  });
});
