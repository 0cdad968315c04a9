import { expect, test } from 'vitest';
import { measuredBlot } from '../../test/support/measuredBlot.ts';
import { paperContextOf } from '../../test/support/paperStory.ts';
import { type Told, wholeTold } from '../../test/support/paperTold.ts';
import type { RugFact } from '../dossier/index.ts';
import { dyeTestRecord } from './dyeTestRecord.ts';

const photo = 'd'.repeat(64);
const measured: Told<RugFact> = [
  wholeTold.at(-1)?.[0] ?? 0,
  {
    ...{ type: 'DyeTested', colour: 'madder', side: 'back', liquid: 'planned bath', ph: 7.5, minutes: 20 },
    ...{ reading: measuredBlot({ '2-3': 0.06, '3': 0.84, '3-4': 0.1 }), photos: [photo] },
  },
];
const printed = (told: readonly Told<RugFact>[]) =>
  JSON.stringify(dyeTestRecord(paperContextOf({ told })).parts);

test('a measured blot is printed with its formula, interval, chances, and the grade it counts with', () => {
  const paper = printed([...wholeTold, measured]);
  expect(paper).toContain('Blot, graded with the ISO 105-A04 formula.');
  expect(paper).toContain('2-3: 6 %, 3: 84 %, 3-4: 10 %');
  expect(paper).toContain('card K7Q4');
  // Never a result of the four hours at 37 °C of a standard test.
  expect(paper).not.toContain('E01');
  const tables = dyeTestRecord(paperContextOf({ told: [...wholeTold, measured] })).parts.flatMap((part) =>
    part.kind === 'table' ? part.rows : [],
  );
  expect(tables.find((cells) => Array.isArray(cells) && cells[3] === '3 (3 to 3-4)')).toContain('2-3');
});

test('the measured places are drawn on the photograph', () => {
  const pictures = dyeTestRecord(paperContextOf({ told: [...wholeTold, measured] })).parts.flatMap((part) =>
    part.kind === 'pictures' ? part.pictures : [],
  );
  expect(pictures.find((picture) => picture.photo === photo)).toMatchObject({
    marks: [{ label: 'C' }, { label: 'B' }],
  });
});

test('where every blot was graded by eye the paper speaks of no formula', () => {
  expect(printed(wholeTold)).toContain('graded by eye on the ISO 105-A03 grey scale');
  expect(printed(wholeTold)).not.toContain('A04');
});
