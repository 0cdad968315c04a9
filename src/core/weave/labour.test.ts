import { describe, expect, test } from 'vitest';
import { agreesWith } from '../../../test/support/agreesWith.ts';
import type { KnotDensity } from './density.ts';
import { repairKnots, totalKnots, weavingDays } from './labour.ts';

const square = (perDm2: number): KnotDensity => ({ kind: 'area', perSquareMetre: perDm2 * 100 });

agreesWith(
  {
    source: 'common-practice',
    where: 'a documented wall piece: 21 million knots took 54 000 hours, 389 knots an hour',
    readFrom: 'trade usage; at the 12-hour days of such work that is 4 670 knots a day',
    within: 0,
    because: 'the documented days must lie inside the range: 1 inside, 0 outside',
    rows: [{ knots: 21e6, hours: 54_000, expected: 1 }],
  },
  ({ knots, hours }) => {
    const { least, most } = weavingDays(knots);
    const days = hours / 12;
    return days >= least && days <= most ? 1 : 0;
  },
);

describe('knots and the time they take', () => {
  test('a rug woven wholly in jufti holds half the knots', () => {
    const density = square(2000);
    expect(totalKnots([{ areaM2: 6, density, juftiShare: 1 }])).toBe(
      totalKnots([{ areaM2: 6, density, juftiShare: 0 }]) / 2,
    );
  });

  test('parts of a rug add up', () => {
    const one = { areaM2: 2, density: square(1000), juftiShare: 0 };
    const other = { areaM2: 3, density: square(3000), juftiShare: 0.2 };
    expect(totalKnots([one, other])).toBeCloseTo(totalKnots([one]) + totalKnots([other]), 6);
  });

  test('reknotting is a range whose slow end is the longer', () => {
    const { knots, leastHours, mostHours } = repairKnots(25, square(2000));
    expect(knots).toBe(500);
    expect(leastHours).toBeLessThan(mostHours);
  });
});
