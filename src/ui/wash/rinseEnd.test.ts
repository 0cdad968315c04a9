import { expect, test } from 'vitest';
import { shippedRulebook } from '../../core/wash/index.ts';
import type { Noted } from '../../dossier/index.ts';
import { rinseEnd } from './rinseEnd.ts';

// The end point of a rinse is a workshop setting of this project; there is no published source for it.
type Rinse = Noted<'RinseMeasured'>;
const rinse = (more: Partial<Rinse>): Rinse => ({
  type: 'RinseMeasured',
  entry: 'e',
  when: '2026-11-25T10:00:00.000Z',
  by: 'p',
  ...more,
});
const clear = rinse({
  ph: 7.1,
  supplyPh: 7.3,
  conductivityUsPerCm: 465,
  supplyConductivityUsPerCm: 450,
  foam: 'none',
  whiteClothGrade: '5',
});
const met = (rinses: readonly Rinse[]) =>
  rinseEnd(rinses, shippedRulebook.residues).map((criterion) => criterion.met);

test('two clear readings in a row end the rinse', () => {
  expect(met([clear, clear])).toEqual([true, true, true, true]);
});
test('one reading at the supply’s conductivity is not yet the end', () => {
  expect(met([clear])[0]).toBe(false);
  expect(met([{ ...clear, conductivityUsPerCm: 900 }, clear])[0]).toBe(false);
});
test('on hard water five per cent counts, on soft water twenty microsiemens', () => {
  const hard = { ...clear, supplyConductivityUsPerCm: 1000, conductivityUsPerCm: 1050 };
  const soft = { ...clear, supplyConductivityUsPerCm: 50, conductivityUsPerCm: 71 };
  expect(met([hard, hard])[0]).toBe(true);
  expect(met([soft, soft])[0]).toBe(false);
});
test('what was not measured is not met', () => {
  expect(met([])).toEqual([false, false, false, false]);
  expect(met([rinse({ ph: 7 }), rinse({ ph: 7 })])).toEqual([false, false, false, false]);
});
