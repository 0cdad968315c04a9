import { describe, expect, test } from 'vitest';
import { measuredBlot } from '../../../test/support/measuredBlot.ts';
import { RugStory } from '../../../test/support/rugStory.ts';
import { planFactsOf, type RugFact, type RugFactOf } from '../index.ts';
import { countsAs } from '../planFacts.ts';
import { firstSettings } from '../workshopFacts.ts';

const [front, later, other] = ['a', 'b', 'c'].map((letter) => letter.repeat(64)) as [string, string, string];

const pictured = (photo: string, occasion: 'intake' | 'after work'): RugFact => ({
  ...{ type: 'PhotographTaken', photo, widthPx: 3000, heightPx: 4000, shows: 'face', occasion },
});

const known = new RugStory().given(
  { type: 'DossierOpened', number: 12, title: 'Runner' },
  {
    ...{ type: 'RugReceived', visit: 'v1', consignment: 'c1', client: 'k1', tag: '41', scope: ['wash'] },
    ...{ route: 'rug in use', reason: 'soiled', authority: 'owner' },
  },
  {
    ...{ type: 'RugMeasured', occasion: 'intake', shape: 'rectangle', uncertaintyMm: 5 },
    ...{ lengthsMm: [2000, 2000, 2000], widthsMm: [1000, 1000, 1000] },
  },
  {
    type: 'ColoursNamed',
    colours: [{ colour: 'red', name: 'Red', kind: 'field colour', dyeClass: 'unknown' }],
  },
  pictured(front, 'intake'),
  pictured(later, 'after work'),
);

const blot = (reading: RugFactOf<'DyeTested'>['reading'], photos: readonly string[] = [front]): RugFact => ({
  ...{ type: 'DyeTested', colour: 'red', side: 'face', liquid: 'planned bath', ph: 7.5, temperatureC: 28 },
  ...{ minutes: 20, reading, photos },
});

const row: RugFactOf<'ColoursCompared'>['colours'][number] = {
  ...{ colour: 'red', name: 'Red', before: { L: 30, a: 40, b: 20 }, after: { L: 34, a: 41, b: 21 } },
  ...{ deltaEF: 4.1, grade: '3', gradeInterval: { lowest: '2-3', highest: '3-4' }, sigma: 0.8 },
  ...{ probability: { '2-3': 0.3, '3': 0.5, '3-4': 0.2 }, hueTurnDeg: 0.6, hueMoved: false },
};

const compared = (change: Partial<RugFactOf<'ColoursCompared'>> = {}): RugFact => ({
  type: 'ColoursCompared',
  before: { photo: front, card: 'K7Q4' },
  after: { photo: later, card: 'K7Q4' },
  alignedBy: 'card',
  likeness: 0.9,
  shown: { before: { photo: front }, after: { photo: later }, map: { photo: other } },
  middleDeltaE: 3.2,
  controlDeltaE: 0.5,
  lightness: { by: 4, half95: 1 },
  chroma: { by: 1, half95: 1 },
  colours: [row],
  notes: [],
  sentence: 'Lighter and cleaner: lightness up 4 ± 1; hues unchanged within measurement.',
  algorithm: '1',
  ...change,
});

describe('a blot graded from a photograph', () => {
  test('is kept, and counts with the worst grade that is likelier than one in twenty', () => {
    const told = known.given(blot(measuredBlot({ '2-3': 0.06, '3': 0.84, '3-4': 0.1 })));
    const [test] = told.standing.dyeTests;
    expect(test === undefined ? null : countsAs(test)).toBe('2-3');
    const facts = planFactsOf(told.standing, firstSettings, told.now);
    expect(facts.ok && facts.value.dyeTests?.[0]).toMatchObject({
      grade: '3',
      gradeProbabilities: { '2-3': 0.06 },
    });
  });
  test('is refused without its photograph', () => {
    expect(known.refuses(blot(measuredBlot(), []))?.code).toBe('measured-without-photograph');
  });
  test('is refused when grade, difference, interval or chances do not belong together', () => {
    const wrong = [
      // ISO 105-A04: ΔE_GS 2 rates 5 − 0.23 · 2 = 4.54, grade 4-5.
      measuredBlot(undefined, { deltaEGS: 2 }),
      measuredBlot(undefined, { gradeInterval: { lowest: '3-4', highest: '4' } }),
      measuredBlot({ '3': 0.5 }),
    ];
    expect(wrong.map((reading) => known.refuses(blot(reading))?.code)).toEqual([
      'measured-figures-disagree',
      'measured-figures-disagree',
      'measured-figures-disagree',
    ]);
  });
  test('needs its minutes like any other', () => {
    const { minutes: _minutes, ...untimed } = blot(measuredBlot()) as RugFactOf<'DyeTested'>;
    expect(known.refuses(untimed)?.code).toBe('test-without-minutes');
  });
});

describe('colours before and after', () => {
  test('stand with the visit', () => {
    expect(known.given(compared()).standing.visits[0]?.comparisons).toHaveLength(1);
  });
  test('are refused of a picture that is not of this rug', () => {
    expect(known.refuses(compared({ before: { photo: other, card: 'K7Q4' } }))?.code).toBe(
      'picture-of-another-rug',
    );
  });
  test('are refused when the pictures are swapped or the same', () => {
    const [before, after] = [
      { photo: later, card: 'K7Q4' },
      { photo: front, card: 'K7Q4' },
    ];
    expect(known.refuses(compared({ before, after }))?.code).toBe('pictures-swapped');
    expect(known.refuses(compared({ after: before, before }))?.code).toBe('pictures-swapped');
  });
  test('are refused of a colour nobody named, or with chances that do not add up', () => {
    expect(known.refuses(compared({ colours: [{ ...row, colour: 'green' }] }))?.code).toBe(
      'colour-not-named',
    );
    expect(known.refuses(compared({ colours: [{ ...row, probability: { '3': 0.5 } }] }))?.code).toBe(
      'measured-figures-disagree',
    );
  });
});
