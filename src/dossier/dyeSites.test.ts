import { describe, expect, test } from 'vitest';
import { atMarkedPlace, hasMarkedPlaces, sitesProposed } from './dyeSites.ts';
import { type Noted, type NotedColour, nothingYet, type RugStanding } from './standing.ts';

const signed = { entry: 'e', when: '2026-11-25T10:00:00.000Z', by: 'p' };
const red: NotedColour = {
  ...{ colour: 'red', name: 'Red', kind: 'field colour', dyeClass: 'unknown' },
  ...signed,
};
const mark = (word: string, colours?: readonly string[]): Noted<'MarkRecorded'> => ({
  ...{ type: 'MarkRecorded', mark: word, word, side: 'face', shape: 'polygon', pointsMm: [], grade: 2 },
  ...{ activity: 'stable', photos: [], ...(colours === undefined ? {} : { colours }), ...signed },
});
const rug = (more: Partial<RugStanding>): RugStanding => ({ ...nothingYet, colours: [red], ...more });

describe('where dyes may stand worse', () => {
  test('a water mark, urine, an old run and a stain of unknown class are such places', () => {
    for (const word of ['tide line', 'urine', 'colour run, receiver', 'stain'])
      expect(hasMarkedPlaces(rug({ marks: [mark(word)] })), word).toBe(true);
    expect(hasMarkedPlaces(rug({ marks: [mark('abrasion'), mark('grease')] }))).toBe(false);
  });
  test('a colour lies there when its mark names it, does not when all marks name others, and is unknown else', () => {
    expect(atMarkedPlace(rug({ marks: [mark('tide line', ['red'])] }), red)).toBe(true);
    expect(atMarkedPlace(rug({ marks: [mark('tide line', ['blue'])] }), red)).toBe(false);
    expect(atMarkedPlace(rug({ marks: [mark('tide line', ['blue']), mark('urine')] }), red)).toBeUndefined();
  });
  test('what somebody said of the colour goes before its marks', () => {
    expect(atMarkedPlace(rug({ marks: [mark('urine')] }), { ...red, atUrinePlace: false })).toBe(false);
  });
});

describe('parts to name', () => {
  test('fringe and selvedge of every rug, and what the marks show, each once', () => {
    const marks = [mark('darn'), mark('patch'), mark('lining')];
    expect(sitesProposed(rug({ marks })).map(({ kind }) => kind)).toEqual([
      'repair yarn',
      'lining',
      'fringe',
      'selvedge',
    ]);
  });
  test('a part that is named is not proposed again', () => {
    const fringe: NotedColour = { ...red, colour: 'fringe', kind: 'fringe' };
    expect(sitesProposed(rug({ colours: [red, fringe] })).map(({ kind }) => kind)).toEqual(['selvedge']);
  });
});
