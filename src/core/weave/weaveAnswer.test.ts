import { describe, expect, test } from 'vitest';
import type { AxisCount, WeaveCount } from './countWeave.ts';
import { decideNodes, type WeaveScale, weaveAnswer } from './weaveAnswer.ts';

const axis = (pitchPx: number, basis: AxisCount['basis'] = 'automatic'): AxisCount => ({
  pitchPx,
  pitchInterval95: [pitchPx * 0.99, pitchPx * 1.01],
  confidence: 0.95,
  basis,
  strips: [],
});
const count: WeaveCount = {
  weftwise: axis(10),
  warpwise: axis(20),
  angleDeg: 1,
  candidates: [{ weftwise: 10, warpwise: 20, weight: 1 }],
  window: { x: 0, y: 0, width: 700, height: 700 },
  nodesHint: null,
};
const scale: WeaveScale = {
  mmPerPx: 0.1,
  weftwiseMmPerPx: 0.1,
  warpwiseMmPerPx: 0.1,
  from: 'given',
  interval95: [0.1, 0.1],
  measured: true,
};

describe('from pixels to knots', () => {
  test('10 px at 0.1 mm and one node are 70 knots in 7 cm; two nodes halve them', () => {
    expect(weaveAnswer(count, scale, decideNodes(1, null)).weftwise.knotsPer7cm).toBeCloseTo(70, 9);
    expect(weaveAnswer(count, scale, decideNodes(2, null)).weftwise.knotsPer7cm).toBeCloseTo(35, 9);
    expect(weaveAnswer(count, scale, decideNodes(2, null)).warpwise.knotsPer7cm).toBeCloseTo(35, 9);
  });

  test('per square inch is 6.4516 times per cm²', () => {
    const { density } = weaveAnswer(count, scale, decideNodes(2, null));
    expect((density?.perSquareInch ?? 0) / (density?.perDm2 ?? 1)).toBeCloseTo(0.064516, 6);
  });

  test('without a scale there is no density and no knots, and it is said', () => {
    const answer = weaveAnswer(count, null, decideNodes(2, null));
    expect(answer.density).toBeNull();
    expect(answer.scale).toBeNull();
    expect(answer.weftwise.knotsPer7cm).toBeNull();
    expect(answer.weftwise.pitchPx).toBe(10);
    expect(answer.notes).toContain('no-scale');
  });

  test('while nodes per knot are undecided both readings are listed and no density is stated', () => {
    const answer = weaveAnswer(count, scale, decideNodes(null, null));
    expect(answer.density).toBeNull();
    expect(answer.weftwise.interval95).toBeNull();
    expect(answer.nodesPerKnot.readings.map(({ nodes }) => nodes)).toEqual([1, 2]);
    const [one, two] = answer.nodesPerKnot.readings;
    expect((one?.perDm2 ?? 0) / (two?.perDm2 ?? 1)).toBeCloseTo(2, 9);
  });

  test('an unmeasured card widens every interval and is noted', () => {
    const loose: WeaveScale = { ...scale, from: 'card', interval95: [0.097, 0.103], measured: false };
    const sure = weaveAnswer(count, scale, decideNodes(2, null)).density?.interval95 ?? [0, 0];
    const unsure = weaveAnswer(count, loose, decideNodes(2, null));
    const [low, high] = unsure.density?.interval95 ?? [0, 0];
    expect(high - low).toBeGreaterThan(2 * (sure[1] - sure[0]));
    expect(unsure.notes).toContain('card-not-measured');
  });

  test('taps along one axis leave the whole answer automatic, and it says which is which', () => {
    const one = weaveAnswer({ ...count, weftwise: axis(10, 'tapped') }, scale, decideNodes(2, null));
    expect([one.weftwise.basis, one.warpwise.basis, one.basis]).toEqual(['tapped', 'automatic', 'automatic']);
    expect(one.notes).toContain('one-axis-automatic');
    const both = { ...count, weftwise: axis(10, 'tapped'), warpwise: axis(20, 'confirmed') };
    expect(weaveAnswer(both, scale, decideNodes(2, null))).toMatchObject({ basis: 'tapped', notes: [] });
  });

  test('a hint from colours decides only where it leaves no doubt', () => {
    expect(decideNodes(null, { evenness: 0.95, pairs: 60 }).value).toBe(2);
    expect(decideNodes(null, { evenness: 0.95, pairs: 10 }).value).toBeNull();
    expect(decideNodes(null, { evenness: 0.5, pairs: 400 }).value).toBeNull();
    expect(decideNodes(1, { evenness: 0.95, pairs: 60 })).toEqual({ value: 1, why: 'given' });
  });
});
