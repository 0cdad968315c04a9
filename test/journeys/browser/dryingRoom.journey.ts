import { expect, test } from 'vitest';
import type { RowsAnswer } from '../../../src/contract/index.ts';
import { readPdf } from '../../support/readPdf.ts';
import { signIn } from './support/door.ts';
import type { Hand } from './support/hand.ts';
import { openWorkshop, phone, tabletSized } from './support/workshop.ts';

const workshop = openWorkshop('demo');
const room = 'larkfield-drying-room';

async function atDoor(device: typeof phone | typeof tabletSized): Promise<Hand> {
  const hand = await workshop.device(device);
  await signIn(hand, 'Mirela Ostrand', workshop.server().passphrase);
  await hand.heading(/^Hands needed now/);
  return hand;
}

const rugTagged = async (hand: Hand, tag: string): Promise<string> => {
  const answer = await hand.page.request.get(`/api/rugs?tag=${tag}&inHouse=true`);
  return ((await answer.json()) as RowsAnswer).rows[0]?.rug ?? '';
};

/** Width of the 80 % interval as the dossier says it [h]. */
async function widthShown(hand: Hand): Promise<number> {
  const said = hand.scope.getByText(/80 % interval is [\d.]+ h wide/);
  await said.waitFor();
  return Number(/is ([\d.]+) h wide/.exec((await said.textContent()) ?? '')?.[1]);
}

test('a weighing narrows the forecast of a rug that was only felt', async () => {
  const hand = await atDoor(phone);
  const rug = await rugTagged(hand, '75');
  await hand.page.goto(`/rugs/${rug}?at=dry`);
  const before = await widthShown(hand);
  await hand.press('Take a reading');
  const sheet = hand.within('dialog', 'Drying reading');
  await sheet.scope.getByRole('textbox', { name: /^Mass/ }).fill('26.7');
  await sheet.press('Record the reading');
  await expect.poll(() => widthShown(hand), { timeout: 20_000 }).toBeLessThan(before);
});

test('the room says how many past rugs its forecasts rest on, and so does the dossier of a rug in it', async () => {
  const hand = await atDoor(phone);
  await hand.page.goto(`/rooms/${room}`);
  const part = hand.within('region', 'What past rugs taught');
  await part.see(/Rests on \d+ past rugs: this room dries the next one [\d.]+ to [\d.]+ times as fast/);
  await part.see(/slows down below/);
  await hand.page.goto(`/rugs/${await rugTagged(hand, '73')}?at=dry`);
  await hand.within('region', 'Forecast').see(/Rests on \d+ past rugs/);
});

test('what if the thick rug lay on the mesh: its forecast moves, and nothing is recorded', async () => {
  const hand = await atDoor(tabletSized);
  await hand.page.goto(`/rooms/${room}`);
  const { revision } = (await (await hand.page.request.get(`/api/rooms/${room}`)).json()).standing;
  const part = hand.within('region', 'What if …');
  await part.choose('Try a change', 'Turn one');
  await part.scope.getByLabel('Which').selectOption({ label: '73 Long-pile rug with two suns' });
  await part.choose('So that it', 'lies on mesh');
  const row = part.scope.getByRole('row', { name: /73 Long-pile rug/ });
  await expect.poll(() => row.textContent(), { timeout: 20_000 }).toMatch(/[\d.]+ h sooner/);
  await part.choose('Try a change', 'Open the windows tonight');
  await part.see(/holds less water: open windows dry the room/);
  const after = (await (await hand.page.request.get(`/api/rooms/${room}`)).json()).standing;
  expect(after.revision).toBe(revision);
});

test('a sensor writes with its token alone, and not after the token was taken away', async () => {
  const hand = await atDoor(tabletSized);
  await hand.page.goto(`/rooms/${room}`);
  await hand.press('Add a sensor');
  const sheet = hand.within('dialog', 'Add a sensor');
  await sheet.fill('Name', 'Probe by the door');
  await sheet.press('Give it a token');
  const shown = hand.within('dialog', 'Token of Probe by the door');
  const token = (await shown.scope.locator('code').textContent()) ?? '';
  await shown.press('It is in the device');
  const send = () =>
    fetch(`${workshop.server().address}/api/rooms/${room}/readings`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', authorization: `Bearer ${token}` },
      body: JSON.stringify({ readings: [{ temperatureC: 27.3, humidity: 0.48 }] }),
    });
  expect((await send()).status).toBe(200);
  await hand.within('region', 'Air and machines').see('27.3 °C');
  await hand.press('Probe by the door: take its token away');
  await hand.see(/taken away/);
  expect((await send()).status).toBe(403);
});

test('a logger’s file is mapped once and known the next time', async () => {
  const hand = await atDoor(tabletSized);
  await hand.page.goto(`/rooms/${room}`);
  const minutesAgo = (minutes: number) =>
    new Date(Date.now() - minutes * 60_000).toISOString().slice(0, 19).concat('Z');
  const file = (...rows: readonly string[]) => ({
    name: 'logger.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(['time,temperature,humidity', ...rows].join('\n')),
  });
  const first = [`${minutesAgo(40)},28.1,49.0`, `${minutesAgo(30)},28.2,48.5`, `${minutesAgo(20)},28.2,48.1`];
  const take = async (rows: readonly string[], label: string) => {
    await hand.press('Take in a logger’s file');
    const sheet = hand.within('dialog', 'A logger’s file');
    await sheet.fill('Logger', 'Grey logger');
    await sheet.scope.locator('input[type=file]').setInputFiles(file(...rows));
    await sheet.press(label);
    await sheet.scope.waitFor({ state: 'detached' });
  };
  await take(first, 'Record 3 readings');
  // Read out again later: what is on record already is not taken twice.
  await take([...first, `${minutesAgo(10)},28.3,47.9`], 'Record 1 reading');
  const answer = await (await hand.page.request.get(`/api/rooms/${room}`)).json();
  const from = (answer.standing.room as readonly { readonly from?: string }[]).filter(
    (air) => air.from === 'Grey logger',
  );
  expect(from).toHaveLength(4);
  expect(answer.standing.loggers['Grey logger'].mapping.columns).toEqual({
    time: 0,
    temperature: 1,
    humidity: 2,
  });
});

test('a rug that cannot be dry in 48 hours is held back, and the owner’s override is printed', async () => {
  const hand = await atDoor(tabletSized);
  await hand.page.goto(`/rooms/${room}`);
  for (const name of ['Dehumidifier, grey', 'Long fan']) await hand.press(`${name}: I switched it off`);
  await hand.within('region', 'Air and machines').see(/stands still/);
  const held = await rugTagged(hand, '30');
  await hand.page.goto(`/rugs/${held}`);
  const plan = hand.within('region', 'What it can bear');
  await plan.press('Change');
  const sheet = hand.within('dialog', 'Hours until dry');
  await sheet.press('Forecast it in “Drying room”');
  await sheet.see(/Not dry within|Nine of ten such rugs are dry/);
  await sheet.press('Close');
  await hand.press('Override R38');
  const override = hand.within('dialog', 'Override R38');
  await override.fill('Reason', 'Both machines come back from repair tonight.');
  await override.press('Override R38');
  await override.scope.waitFor({ state: 'detached' });
  await hand.press('Put this plan on record');
  const put = hand.within('dialog', 'Put this plan on record');
  await put.press('Put on record');
  await put.scope.waitFor({ state: 'detached' });
  const paper = await hand.page.request.get(`/api/rugs/${held}/papers/work-order.pdf`);
  const words = readPdf(await paper.body())
    .words.join(' ')
    .replace(/\s+/g, ' ');
  expect(words).toContain('Both machines come back from repair tonight.');
});
