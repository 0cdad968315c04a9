import { expect, test } from 'vitest';
import { inventedPlan } from '../../../test/support/inventedPlan.ts';
import type { MixLine, StepMix } from '../../core/wash/index.ts';
import { doneAsMixed, takenAsMixed, takenWords } from './takenAsMixed.ts';

const acid: MixLine = {
  agent: 'citric acid',
  product: { id: 'p-1', name: 'Orchard acid' },
  lot: 'A-3',
  amount: { least: 6.46, most: 8.68, computed: 7.5234, unit: 'g' },
  isNeat: false,
  targetPh: 5,
  standsAtPh: null,
  problems: [],
};
const mixOf = (lines: readonly MixLine[], volume: StepMix['volume'] = 'bath'): StepMix => ({
  ...{ litres: 13.2, volume, lines },
  water: {
    ...{ asks: null, on: '2026-03-02' },
    alkalinity: { value: 245, least: 233, most: 257, assumed: false },
    hardness: { value: 286, least: 272, most: 300, assumed: false },
  },
});

test('a step mixed as computed takes the computed amount of the lot it was mixed from', () => {
  const taken = takenAsMixed(mixOf([acid]));
  expect(taken).toEqual([{ agent: 'p-1', name: 'Orchard acid', lot: 'A-3', amount: 7.52, unit: 'g' }]);
  expect(takenWords(taken)).toBe(', took 7.5 g Orchard acid');
});

test.each([
  ['the amount is not known', mixOf([{ ...acid, amount: null }])],
  ['it is known only for each litre', mixOf([acid], 'each litre')],
  ['no lot stands on the shelf', mixOf([acid, { ...acid, product: { id: 'p-2', name: 'Wash' }, lot: null }])],
  ['the shelf is not known yet', null],
])('nothing is taken unsaid where %s', (_, mix) => {
  expect(takenAsMixed(mix)).toEqual([]);
  expect(takenWords(takenAsMixed(mix))).toBe('');
});

test('a step ended early records the same amounts as one that ran its dwell, or none where none is known', () => {
  const [step] = inventedPlan.steps;
  if (step === undefined) throw new Error('the invented plan has steps');
  const taken = takenAsMixed(mixOf([acid]));
  expect({ ...doneAsMixed(step, taken), early: 'A colour moves' }).toEqual({
    ...{ type: 'StepDone', step: '1-dusting', early: 'A colour moves' },
    used: [{ agent: 'p-1', lot: 'A-3', amount: 7.52 }],
  });
  expect(doneAsMixed(step, [])).not.toHaveProperty('used');
});
