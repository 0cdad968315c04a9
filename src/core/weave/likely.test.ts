import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seeded } from '../../../bench/loom/index.ts';
import { drawNotWoven } from '../../../bench/loom/notWoven.ts';
import { confidenceOf, distinctMeasured, likelihoods } from './likely.ts';
import { mostDeg, survey } from './survey.ts';

const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });

test('a stated confidence is never surer than the likelihood it is made from, and keeps its order', () => {
  fc.assert(
    fc.property(share, share, (a, b) => {
      expect(Math.abs(confidenceOf(a) - 0.5)).toBeLessThanOrEqual(Math.abs(a - 0.5) + 1e-12);
      if (a < b) expect(confidenceOf(a)).toBeLessThan(confidenceOf(b));
    }),
  );
  expect(confidenceOf(0.5)).toBeCloseTo(0.5, 12);
});

test('readings of what is no weave leave most of the chance to none of them', () => {
  for (const kind of ['plain paper', 'pile side', 'screen'] as const) {
    const { width, height, rgb } = drawNotWoven(seeded(7), kind);
    const seen = survey({ width, height, channels: 3, data: rgb }, { x: 0, y: 0, width, height }, mostDeg);
    const chances = (['weftwise', 'warpwise'] as const).map((axis) =>
      likelihoods(distinctMeasured(seen, axis)).reduce((sum, { likelihood }) => sum + likelihood, 0),
    );
    expect(Math.min(...chances)).toBeLessThan(0.5);
  }
});
