import { describe, expect, test } from 'vitest';
import { nothingYet, type RugStanding, rugFacts } from '../../dossier/index.ts';
import { blankInspection, inspectedFact, measuredAfter, outcomeOf } from './inspection.ts';

const signed = { entry: 'e1', when: '2026-11-25T09:00:00.000Z', by: 'p1' };
const mark = (name: string, foundDuringWork?: true): RugStanding['marks'][number] => ({
  ...signed,
  type: 'MarkRecorded',
  mark: name,
  word: 'stain',
  side: 'face',
  shape: 'point',
  pointsMm: [{ xMm: 10, yMm: 10 }],
  grade: 2,
  activity: 'stable',
  photos: [],
  ...(foundDuringWork === undefined ? {} : { foundDuringWork }),
});

const standing: RugStanding = {
  ...nothingYet,
  opened: { ...signed, type: 'DossierOpened', number: 1, title: 'Red runner' },
  marks: [mark('m1'), mark('m2'), mark('m3', true)],
  measurements: [
    {
      ...signed,
      type: 'RugMeasured',
      occasion: 'intake',
      shape: 'oval',
      lengthsMm: [3000, 3000, 3000],
      widthsMm: [2000, 2000, 2000],
      uncertaintyMm: 5,
    },
  ],
};
const judged = { ...blankInspection, odour: 'none', colour: 'cleaner' } as const;

describe('the last look', () => {
  test('is not recorded while a mark from intake was not looked at', () => {
    expect(inspectedFact({ ...judged, outcomes: { m1: 'improved' } }, standing)).toBeNull();
  });

  test('counts a mark found during the work as new until somebody says otherwise', () => {
    expect(outcomeOf(judged, mark('m3', true))).toBe('new');
    expect(outcomeOf({ ...judged, outcomes: { m3: 'improved' } }, mark('m3', true))).toBe('improved');
    expect(outcomeOf(judged, mark('m1'))).toBeNull();
  });

  test('once every mark is judged it has the shape the record asks for', () => {
    const fact = inspectedFact({ ...judged, outcomes: { m1: 'improved', m2: 'unchanged' } }, standing);
    expect(fact?.marks.map(({ outcome }) => outcome)).toEqual(['improved', 'unchanged', 'new']);
    expect(rugFacts.RugInspected.safeParse(fact).success).toBe(true);
  });

  test('the size after the work keeps the shape, and is none while one place is missing', () => {
    const sizes = { ...judged, lengthsMm: [2990, 3000, 3000], widthsMm: [2000, 2000, null] };
    expect(measuredAfter(sizes, standing)).toBeNull();
    expect(measuredAfter({ ...sizes, widthsMm: [2000, 2000, 2000] }, standing)).toMatchObject({
      occasion: 'after work',
      shape: 'oval',
    });
  });
});
