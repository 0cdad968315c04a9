import { expect, test } from 'vitest';
import { paperContextOf } from '../../test/support/paperStory.ts';
import { type Told, wholeTold } from '../../test/support/paperTold.ts';
import type { RugFact, RugFactOf } from '../dossier/index.ts';
import { finalInspection } from './finalInspection.ts';
import { wholeDossier } from './wholeDossier.ts';

const [was, is, map] = ['a', 'b', 'c'].map((letter) => letter.repeat(64)) as [string, string, string];
const red: RugFactOf<'ColoursCompared'>['colours'][number] = {
  ...{ name: 'Madder red', before: { L: 30.2, a: 40, b: 20 }, after: { L: 34.1, a: 41, b: 21 } },
  ...{ deltaEF: 4.04, grade: '3', gradeInterval: { lowest: '2-3', highest: '3-4' }, sigma: 0.8 },
  ...{ probability: { '3': 1 }, hueTurnDeg: 0.6, hueMoved: false },
};
const compared = (change: Partial<RugFactOf<'ColoursCompared'>> = {}): Told<RugFact> => [
  wholeTold.at(-1)?.[0] ?? 0,
  {
    type: 'ColoursCompared',
    before: { photo: was, card: 'K7Q4WF' },
    after: { photo: is, card: 'K7Q4WF' },
    alignedBy: 'corners',
    shown: { before: { photo: was }, after: { photo: is }, map: { photo: map } },
    middleDeltaE: 3.2,
    controlDeltaE: 0.5,
    lightness: { by: 4.1, half95: 1 },
    chroma: { by: 0.2, half95: 0.8 },
    colours: [red],
    notes: [],
    sentence: 'Lighter and cleaner: lightness up 4 ± 1; hues unchanged within measurement.',
    algorithm: '1',
    ...change,
  },
];
const printed = (told: Told<RugFact>) =>
  JSON.stringify(finalInspection(paperContextOf({ told: [...wholeTold, told] })).parts);

test('the inspection prints sentence, both pictures, map, and each colour with its interval', () => {
  const paper = printed(compared());
  expect(paper).toContain('Lighter and cleaner: lightness up 4 ± 1');
  for (const photo of [was, is, map]) expect(paper).toContain(photo);
  expect(paper).toContain('3 (2-3 to 3-4)');
  expect(paper).toContain('+4.1 ± 1');
  expect(paper).toContain('as before, within measurement');
});

test('a colour whose hue moved is flagged as dye, not soil', () => {
  const paper = printed(compared({ colours: [{ ...red, hueTurnDeg: -14.2, hueMoved: true }] }));
  expect(paper).toContain('Hue moved: Madder red');
  expect(paper).toContain('moved by 14°');
});

test('without a comparison the inspection says nothing of colours measured', () => {
  const parts = finalInspection(paperContextOf({ told: wholeTold })).parts;
  expect(JSON.stringify(parts)).not.toContain('Colours before and after');
});

test('the whole dossier holds it too', () => {
  const whole = wholeDossier(paperContextOf({ told: [...wholeTold, compared()] }));
  expect(JSON.stringify(whole)).toContain('Colours before and after');
});
