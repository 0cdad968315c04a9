import { expect, test } from 'vitest';
import { setUpHouse } from './support/door.ts';
import { openWorkshop, phone } from './support/workshop.ts';

const workshop = openWorkshop();

test('a washer reads a dose off its curve in the water’s own unit, and a new round clears every part', async () => {
  const hand = await workshop.device(phone);
  await setUpHouse(hand, workshop.server());
  await hand.page.goto('/bench/mix');
  await hand.heading('Mix and rinse');
  const bath = hand.within('region', 'The bath');
  await bath.fill('Water', '40');
  await bath.scope.getByLabel('Unit of the alkalinity').selectOption('°dH');
  await bath.fill('Alkalinity of the water', '14');
  const dose = hand.within('region', 'The dose');
  // 14 °dH are 250 mg/L CaCO₃: 0.555 g of citric acid a litre to pH 5 by a separate calculation, 22 g in 40 L.
  const drawn = await dose.scope.getByRole('img').getAttribute('aria-label');
  expect(drawn).toMatch(/to pH 5 with 2[12](\.\d)? g, somewhere between \d\d(\.\d)? g and \d\d(\.\d)? g/);

  // A change of unit keeps the water and turns the figure.
  await bath.scope.getByLabel('Unit of the alkalinity').selectOption('mg/L CaCO₃');
  expect(await bath.field('Alkalinity of the water').inputValue()).toBe('249.9');

  const rug = hand.within('region', 'The rug');
  await rug.fill('Dry mass', '10');
  const rinse = hand.within('region', 'Rinsing to half a per cent');
  // By hand: two fills of 10 L/kg, extracted to 0.33 L/kg, leave (0.33/10.33)².
  await rinse.see('200 L');
  expect(await rinse.scope.getByRole('img').getAttribute('aria-label')).toContain(
    'fill, drain and extract: 200 L',
  );
  await hand.within('region', 'What the rug still holds').see('The rug holds 3.3 L');

  const soap = hand.within('region', 'Soap in hard water');
  await soap.scope.getByLabel('Unit of the hardness').selectOption('gpg');
  await soap.fill('Hardness of the water', 'hard');
  await soap.see('“hard” is not a number');
  await hand.page.getByRole('button', { name: 'Begin anew' }).click();
  for (const [part, field] of [
    [bath, 'Water'],
    [rug, 'Dry mass'],
    [soap, 'Hardness of the water'],
  ] as const) {
    expect(await part.field(field).inputValue()).toBe('');
  }
  expect(await soap.scope.getByText('“hard” is not a number').count()).toBe(0);
});
