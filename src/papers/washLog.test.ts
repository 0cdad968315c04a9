import { expect, test } from 'vitest';
import { paperContextOf } from '../../test/support/paperStory.ts';
import { type Told, wholeTold } from '../../test/support/paperTold.ts';
import type { RugFact } from '../dossier/index.ts';
import { washLog } from './washLog.ts';

// What a wash log holds is a rule of this project; there is no published form to check against.

const last = wholeTold.at(-1)?.[0] ?? 0;
const photo = 'b'.repeat(64);
const printed = (...facts: readonly RugFact[]) =>
  JSON.stringify(
    washLog(
      paperContextOf({
        told: [...wholeTold, ...facts.map((fact, index): Told<RugFact> => [last + index / 60, fact])],
      }),
    ).parts,
  );

test('what a step took from the shelf stands with its lot, and the size and the photographs of the work too', () => {
  const paper = printed(
    { type: 'StepDone', step: '1-dusting', used: [{ agent: 'c1', lot: 'K-214', amount: 7.5 }] },
    { type: 'LengthChecked', lengthMm: 2010 },
    { type: 'RinseMeasured', ph: 7.1, photos: [photo] },
  );
  expect(paper).toContain('7.5 c1, lot K-214');
  expect(paper).toContain('201 cm');
  expect(paper).toContain(photo);
});

test('a cloth names the colour it was pressed on, and a bath under a rescue the pH the rescue kept', () => {
  const [colour] = paperContextOf().rug.colours;
  if (colour === undefined) throw new Error('the story names no colour');
  const paper = printed(
    { type: 'BathMeasured', ph: 6.6, whiteClothGrade: '3', clothOn: colour.colour, photos: [] },
    { type: 'StopCalled', stop: 's9', condition: 'cloth grade' },
    { type: 'BathMeasured', ph: 4.3, photos: [] },
  );
  expect(paper).toContain(`"3, ${colour.name}"`);
  // The rescue of a running colour keeps pH 4.0 to 4.5 (data/wash/stopConditions.json).
  expect(paper.match(/4 to 4.5 \(rescue\)/g)).toHaveLength(1);
});

test('a stop that a reading raised prints what was read and the band it broke; one of before it, its words', () => {
  const paper = printed(
    {
      ...{ type: 'StopCalled', stop: 's7', condition: 'pH is too far outside its band.' },
      broke: { quantity: 'pH', read: 7.9, least: 6, most: 7.2 },
    },
    { type: 'StopCalled', stop: 's8', condition: 'pH is 0.5 outside its band.' },
  );
  expect(paper).toContain('"pH is too far outside its band. pH 7.9; keep 6 to 7.2."');
  expect(paper).toContain('"pH is 0.5 outside its band."');
});

test('how long the rug was wet stands beside what the plan allows', () => {
  expect(printed()).toMatch(/"name":"Wet until extracted","value":"\d+ min","why":"the plan allows \d+ min"/);
});
