import { expect, test } from 'vitest';
import { inventedPlan } from '../../test/support/inventedPlan.ts';
import { measuredBlot } from '../../test/support/measuredBlot.ts';
import { paperContextOf } from '../../test/support/paperStory.ts';
import { type Told, wholeTold } from '../../test/support/paperTold.ts';
import type { WashPlan } from '../core/wash/index.ts';
import type { RugFact, RugFactOf } from '../dossier/index.ts';
import { dyeGrounds } from './dyeGrounds.ts';

const plan: WashPlan = {
  ...inventedPlan,
  dyes: [
    {
      ...{ colour: 'red', name: 'Red, field', kind: 'field colour', standing: 'controlled', traits: [] },
      binding: { liquid: 'planned bath', side: 'back', grade: '3' },
    },
  ],
};
const read = (reading: RugFactOf<'DyeTested'>['reading']): Told<RugFact> => [
  wholeTold.at(-1)?.[0] ?? 0,
  {
    ...{ type: 'DyeTested', colour: 'red', side: 'back', liquid: 'planned bath', ph: 7.5, minutes: 20 },
    ...{ reading, photos: ['d'.repeat(64)] },
  },
];
const printed = (told: Told<RugFact>) =>
  JSON.stringify(dyeGrounds(plan, paperContextOf({ told: [...wholeTold, told] })));

test('the client reads what a colour does and by which measured blot that is known', () => {
  const words = printed(read(measuredBlot()));
  expect(words).toContain('bleeds: treated with acid');
  expect(words).toContain('decided by planned bath, back: counts as grade 3, measured 3 (3 to 3-4)');
  expect(words).toContain('ISO 105-A04');
});

test('a blot read by eye is said to be read by eye', () => {
  const words = printed(read({ kind: 'graded', by: 'eye', staining: '3', control: '5' }));
  expect(words).toContain('grade 3 by eye');
  expect(words).not.toContain('A04');
});
