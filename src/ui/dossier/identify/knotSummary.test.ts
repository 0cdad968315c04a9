import { describe, expect, test } from 'vitest';
import { agreesWith } from '../../../../test/support/agreesWith.ts';
import { knotSummary } from './knotSummary.ts';

const over = (count: number, overMm: number) => ({ count, overMm });
const counted = (weftwise: number, warpwise: number) => ({
  place: 'middle',
  weftwise: over(weftwise, 70),
  warpwise: over(warpwise, 70),
});

agreesWith(
  {
    source: 'common-practice',
    where: 'a raj counts the knots along 7 cm of the weft; 40 raj is 326 531 knots/m² when square',
    readFrom: 'trade usage, worked by hand from the definitions',
    within: 1,
    because: 'the tables print whole knots',
    rows: [
      { across: 40, along: 40, nodes: 1 as const, expected: 326_531 },
      { across: 80, along: 40, nodes: 2 as const, expected: 326_531 },
      { across: 70, along: 70, nodes: 1 as const, expected: 1_000_000 },
    ],
  },
  ({ across, along, nodes }) => {
    const { density } = knotSummary({ places: [counted(across, along)], nodesPerKnot: nodes });
    return density.weftwisePerM * density.warpwisePerM;
  },
);

describe('knots counted at several places', () => {
  test('the median stands, and one odd place does not move it', () => {
    const { density, weftwise } = knotSummary({
      places: [counted(40, 44), counted(41, 45), counted(70, 46)],
      nodesPerKnot: 1,
    });
    expect(density.weftwisePerM * 0.07).toBeCloseTo(41, 9);
    expect(weftwise.most * 0.07).toBeCloseTo(70, 9);
    expect(weftwise.least * 0.07).toBeCloseTo(40, 9);
  });
  test('two nodes a knot halve what is seen across, never the rows along', () => {
    const one = knotSummary({ places: [counted(40, 44)], nodesPerKnot: 1 }).density;
    const two = knotSummary({ places: [counted(40, 44)], nodesPerKnot: 2 }).density;
    expect(two.weftwisePerM).toBeCloseTo(one.weftwisePerM / 2, 9);
    expect(two.warpwisePerM).toBeCloseTo(one.warpwisePerM, 9);
  });
});
