import { describe, expect, test } from 'vitest';
import { opened, RugStory, received } from '../../../test/support/rugStory.ts';
import type { RugFactOf } from '../facts/index.ts';
import { rugFacts } from '../facts/index.ts';

type Photographed = Extract<RugFactOf<'KnotsCounted'>, { counted: 'photographed' }>;
type Place = Photographed['places'][number];
type Axis = Place['weftwise'];

const axis = (change: Partial<Axis> = {}): Axis => ({
  count: 30,
  overMm: 70,
  interval95: { least: 29.5, most: 30.5 },
  basis: 'confirmed',
  confidence: 0.9,
  ...change,
});
const place = (change: Partial<Place> = {}): Place => ({
  place: 'middle',
  photo: 'a'.repeat(64),
  scale: {
    from: 'card',
    serial: '7K3M4Q',
    tag: '41',
    codes: 4,
    barMm: 99.5,
    mmPerPx: 0.1,
    interval95: { least: 0.0998, most: 0.1002 },
  },
  weftwise: axis(),
  warpwise: axis(),
  ...change,
});
const counted = (...places: readonly Place[]): Photographed => ({
  type: 'KnotsCounted',
  counted: 'photographed',
  nodesPerKnot: 1,
  nodesWhy: 'seen on the back',
  algorithm: 'a counter',
  places,
});

// Rules of this project.
describe('a count of knots on photographs', () => {
  const story = new RugStory().given(opened, received);
  const card = place().scale;

  test('is recorded with what gave it its scale, and stands', () => {
    expect(story.refuses(counted(place()))).toBeNull();
    expect(story.given(counted(place())).standing.knots).toHaveLength(1);
  });

  test('scaled by the card of another rug is refused', () => {
    const other = place({ scale: { ...card, from: 'card', serial: '7K3M4Q', codes: 4, tag: '42' } });
    expect(story.refuses(counted(place(), other))).toMatchObject({
      code: 'card-other-tag',
      facts: { found: '42', expected: '41' },
    });
  });

  test('that nobody looked at stands only where the counter was sure', () => {
    const automatic = (confidence: number) =>
      counted(place({ warpwise: axis({ basis: 'automatic', confidence }) }));
    expect(story.refuses(automatic(0.79))).toMatchObject({ code: 'count-not-confirmed' });
    expect(story.refuses(automatic(0.8))).toBeNull();
  });

  test('finer or coarser than any rug is refused, by hand too', () => {
    const fine = axis({ count: 300, interval95: { least: 290, most: 310 } });
    expect(story.refuses(counted(place({ weftwise: fine })))).toMatchObject({
      code: 'out-of-range',
      facts: { field: 'the count across at middle', value: 300 },
    });
    const over = { count: 2, overMm: 70 };
    expect(
      story.refuses({
        type: 'KnotsCounted',
        counted: 'by hand',
        nodesPerKnot: 1,
        places: [{ place: 'edge', weftwise: over, warpwise: over }],
      })?.code,
    ).toBe('out-of-range');
  });

  test('has an interval that holds its own count, or no valid shape', () => {
    const shape = rugFacts.KnotsCounted;
    expect(shape.safeParse(counted(place())).success).toBe(true);
    const astray = axis({ interval95: { least: 31, most: 32 } });
    expect(shape.safeParse(counted(place({ weftwise: astray }))).success).toBe(false);
  });

  test('as it was recorded before photographs came is still read', () => {
    const over = { count: 62, overMm: 70 };
    const places = [{ place: 'middle', weftwise: over, warpwise: over }];
    const early = { type: 'KnotsCounted', counted: 'by hand', nodesPerKnot: 2, places };
    expect(rugFacts.KnotsCounted.safeParse(early).success).toBe(true);
  });
});
