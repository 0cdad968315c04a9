import { beforeAll, describe, expect, test } from 'vitest';
import { setUpHouse, signIn } from './support/door.ts';
import { inSheet } from './support/dossier.ts';
import { type Hand, textOf } from './support/hand.ts';
import { proveAndAgree, stockShelf, takeIn } from './support/seed.ts';
import { openWorkshop, phone, tabletSized } from './support/workshop.ts';

const workshop = openWorkshop();
const day = (days: number) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);

const pick = (sheet: Hand, label: string, option: string) =>
  sheet.scope.getByLabel(label, { exact: true }).selectOption(option);
const fillDay = (sheet: Hand, label: string, on: string) =>
  sheet.scope.getByLabel(label, { exact: true }).fill(on);

async function atShelf(device: typeof tabletSized): Promise<Hand> {
  const hand = await workshop.device(device);
  await signIn(hand);
  await hand.heading(/^\w+day \d/);
  await hand.page.goto('/shelf');
  await hand.heading('Shelf');
  return hand;
}

async function describeCrystals(sheet: Hand): Promise<void> {
  await sheet.fill('Name', 'Hearth crystals');
  await pick(sheet, 'In the plans it serves as', 'citric acid');
  await pick(sheet, 'Chemical 1, with its hydrate', 'citric acid, monohydrate');
  await sheet.fill('Strength 1', '120');
  await sheet.see(/Strength 1 is 120 % w\/w\. It must be between 0 and 100 % w\/w\./);
  await sheet.fill('Strength 1', '-4');
  await sheet.see(/Strength 1 is -4 % w\/w\. It must be between 0 and 100 % w\/w\./);
  await sheet.fill('Strength 1', '99.5');
  await sheet.fill('pH of a dilution', '15');
  await sheet.see(/pH of a dilution is 15 pH\. It must be between 0 and 14 pH\./);
  await sheet.fill('pH of a dilution', '2.1');
  await sheet.see(/the pH together with its dilution/);
  await sheet.fill('The dilution holds', '20');
  await sheet.choose('Signal word', 'Warning');
  await pick(sheet, 'Hazard statements', 'H319');
  await sheet.fill('Address of its safety data sheet', 'https://sheets.larkfield.example/hearth-crystals');
  await sheet.fill('Supplier', 'Hollow Mill Supplies');
  await sheet.fill('Price of a pack', '14.50');
  await sheet.see(/what a pack holds, beside its price/);
  await sheet.fill('A pack holds', '2500');
  await sheet.fill('Order when less is left than', '5000');
  await sheet.press('Record the product');
}

describe('the shelf', () => {
  beforeAll(async () => {
    const hand = await workshop.device(tabletSized);
    await setUpHouse(hand, workshop.server());
  });

  test('is found on a phone behind More', async () => {
    const hand = await workshop.device(phone);
    await signIn(hand);
    await hand.heading(/^\w+day \d/);
    await hand.press('More');
    await hand.within('dialog', 'More').follow('Shelf');
    await hand.heading('Shelf');
  });

  test('a product is put on it with its lot, shown in full, ordered in packs, and corrected', async () => {
    const hand = await atShelf(tabletSized);
    await hand.press('Put a product on it');
    await inSheet(hand, 'Put a product on the shelf', describeCrystals);
    const card = hand.within('region', 'Hearth crystals');
    for (const words of [
      'citric acid, monohydrate 99.5 % w/w',
      '2.1 at 20 g/L',
      /Causes serious eye irritation \(H319\)/,
      'Hollow Mill Supplies',
      '14.50 EUR for 2.50 kg',
    ]) {
      await card.see(words);
    }
    expect(
      await card.scope
        .getByRole('link', { name: 'Safety data sheet of Hearth crystals' })
        .getAttribute('href'),
    ).toBe('https://sheets.larkfield.example/hearth-crystals');

    await hand.press('Lot received: Hearth crystals');
    await inSheet(hand, 'Lot received: Hearth crystals', async (sheet) => {
      await sheet.fill('Lot', 'K-214');
      await fillDay(sheet, 'Received on', day(-1));
      await fillDay(sheet, 'Use until', day(-30));
      await sheet.press('Record the lot');
      await sheet.see(
        `Lot K-214 of Hearth crystals is to be used until ${day(-30)}, which is before it was received, ${day(-1)}.`,
      );
      await fillDay(sheet, 'Use until', day(400));
      await sheet.press('Record the lot');
    });
    await card.see(/^2\.50 kg/);
    const orders = hand.within('region', 'To be ordered');
    await orders.see('Hollow Mill Supplies');
    // 5.00 kg are wanted and 2.50 kg there: one pack of 2.50 kg.
    await orders.see(/1 pack, 14\.50 EUR/);

    await hand.press('Correct a lot: Hearth crystals');
    await inSheet(hand, 'Correct a lot: Hearth crystals', async (sheet) => {
      await sheet.fill('Left', '400');
      await fillDay(sheet, 'Use until', day(90));
      await sheet.press('Record the correction');
    });
    await card.see(/^400 g/);
    await orders.see(/2 packs, 29\.00 EUR/);

    await hand.press('Correct: Hearth crystals');
    await inSheet(hand, 'Hearth crystals', async (sheet) => {
      await sheet.tick('Its strength is not known');
      await sheet.press('Record the product');
    });
    await card.see('citric acid, monohydrate (strength not known)');
    await card.scope.getByText('Ask the supplier: one thing is not known').click();
    await card.see(/in % w\/w or in g\/L with the density/);
  });

  test('parts that are more than the whole are refused, and what was typed stays', async () => {
    const hand = await atShelf(tabletSized);
    await hand.press('Put a product on it');
    const sheet = hand.within('dialog', 'Put a product on the shelf');
    await sheet.fill('Name', 'Fern vinegar');
    await pick(sheet, 'Chemical 1, with its hydrate', 'acetic acid');
    await sheet.fill('Strength 1', '80');
    await sheet.press('Another constituent');
    await sheet.fill('Strength 2', '40');
    await sheet.press('Record the product');
    await sheet.see('The parts of Fern vinegar add up to 120.0 % of its mass; at most 100 % is possible.');
    expect(await sheet.field('Strength 2').inputValue()).toBe('40');
  });

  test('supply water is asked for, read in German degrees, and a figure in the wrong unit is not believed', async () => {
    const hand = await atShelf(tabletSized);
    const water = hand.within('region', 'Supply water');
    await water.see('The supply water was never read.');
    await water.see(/^0 to 400 mg\/L CaCO₃, assumed/);
    await water.press('Write a reading');
    await inSheet(hand, 'Supply water', async (sheet) => {
      await sheet.fill('Hardness', '286');
      await pick(sheet, 'Unit of the hardness', '°dH');
      await sheet.press('Record the reading');
      await sheet.see('The hardness is 286 °dH; at most 112 °dH is believed.');
      await sheet.fill('Hardness', '16');
      await sheet.fill('pH', '15');
      await sheet.see('pH is 15 pH. It must be between 0 and 14 pH.');
      await sheet.fill('pH', '7.6');
      await sheet.press('Record the reading');
    });
    // 1 °dH is 17.848 mg/L CaCO₃.
    await water.see(/^286 mg\/L CaCO₃/);
    await water.see('The alkalinity of the water is not known.');
  });

  test('a product taken off while a plan is mixed from it is told before and after, and an expired lot is never used', async () => {
    const hand = await atShelf(tabletSized);
    await stockShelf(hand);
    const rug = await takeIn(hand, '31', 'Runner with three medallions');
    await proveAndAgree(hand, rug);
    await hand.page.reload();
    const reducer = hand.within('region', 'Pale reducer');
    await reducer.see(/expired, not to be used/);
    expect(await textOf(reducer.scope.locator('.amt'))).toContain('0 g left');

    await hand.press('Take off: Meadow wool wash');
    await inSheet(hand, 'Take Meadow wool wash off the shelf', async (sheet) => {
      await sheet.see('One plan is mixed from it and will say that it is gone.');
      await sheet.see(/: neutral detergent/);
      await sheet.fill('Why?', 'The drum froze in the shed.');
      await sheet.press('Take it off');
    });
    await hand.within('region', 'Taken off').see('The drum froze in the shed.');
    await hand.page.goto(`/rugs/${rug}`);
    await hand.scope.getByRole('heading', { name: /^The steps \(/ }).click();
    await hand.see(/Meadow wool wash was taken off the shelf: The drum froze in the shed\./);
    await hand.page.goto('/shelf');
    await hand.press('Put back: Meadow wool wash');
    await inSheet(hand, 'Meadow wool wash', (sheet) => sheet.press('Record the product'));
    await hand.within('region', 'Meadow wool wash').see(/left in date/);
  });
});
