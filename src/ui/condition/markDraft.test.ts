import { describe, expect, test } from 'vitest';
import { rugFrame } from '../../core/condition/index.ts';
import { rugFacts } from '../../dossier/index.ts';
import { blankDraft, draftOf, drawnOn, extentOf, markFact, named, placeProblem } from './markDraft.ts';
import { surfacesOf } from './surface.ts';

const frame = rugFrame({
  shape: 'rectangle',
  lengthsMm: [3000, 3000, 3000],
  widthsMm: [2000, 2000, 2000],
  uncertaintyMm: 5,
});

/** A stain of 30 by 20 cm. */
const stain = {
  ...blankDraft('m1', 'polygon', 'face'),
  pointsMm: [
    { xMm: 500, yMm: 500 },
    { xMm: 800, yMm: 500 },
    { xMm: 800, yMm: 700 },
    { xMm: 500, yMm: 700 },
  ],
};

describe('a mark while it is put down', () => {
  test('a word brings the grade and the stain class it usually has', () => {
    expect(named(stain, 'urine')).toMatchObject({ word: 'urine', grade: 2, stain: 'urine' });
    expect(named(stain, 'hole')).toMatchObject({ grade: 4, stain: null });
  });

  test('another word keeps a grade the person chose', () => {
    expect(named({ ...named(stain, 'hole'), grade: 3 }, 'tear').grade).toBe(3);
    expect(named(named(stain, 'hole'), 'abrasion').grade).toBe(2);
  });

  test('without word or grade nothing can be recorded', () => {
    expect(markFact(stain, frame, false)).toBeNull();
  });

  test('its area is that of its outline, and what was typed comes before it', () => {
    expect(markFact(named(stain, 'stain'), frame, false)?.areaCm2).toBe(600);
    expect(markFact({ ...named(stain, 'stain'), typedAreaCm2: 550 }, frame, false)?.areaCm2).toBe(550);
  });

  test('what is recorded has the shape the record asks for', () => {
    const full = {
      ...named(stain, 'stain'),
      cause: ' wine ',
      causeConfidence: 'probable' as const,
      clientInitials: 'AQ',
      note: '   ',
    };
    const fact = markFact(full, frame, true);
    expect(rugFacts.MarkRecorded.safeParse(fact).success).toBe(true);
    expect(fact).toMatchObject({ cause: 'wine', foundDuringWork: true });
    expect(fact).not.toHaveProperty('note');
  });

  test('a mark taken up again and kept unchanged says the same', () => {
    const fact = markFact(named(stain, 'stain'), frame, false);
    if (fact === null) throw new Error('no fact');
    expect(markFact(draftOf(fact), frame, false)).toEqual(fact);
  });

  test('drawn on an outline it is as large as what was drawn, within its interval', () => {
    const [face] = surfacesOf([], frame);
    if (face?.toSurface == null) throw new Error('no outline');
    const drawn = drawnOn(blankDraft('m2', 'polygon', 'face'), face, stain.pointsMm.map(face.toSurface), 1);
    const extent = extentOf(drawn, frame);
    if (extent.kind !== 'area') throw new Error(extent.kind);
    expect(extent.cm2.value).toBeCloseTo(600, 6);
    expect(extent.cm2.least).toBeLessThan(600);
    expect(extent.cm2.most).toBeGreaterThan(600);
  });

  test('a place off the rug is reported, and nothing is reported before the size is known', () => {
    const astray = { ...stain, pointsMm: [{ xMm: 9000, yMm: 100 }] };
    expect(placeProblem(astray, frame)?.code).toBe('mark-off-the-rug');
    expect(placeProblem(astray, null)).toBeNull();
  });
});
