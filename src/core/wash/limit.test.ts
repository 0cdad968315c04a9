import fc from 'fast-check';
import { expect, test } from 'vitest';
import { axes, type Bounds, meet, meetAll, noLimit, within } from './limit.ts';
import { shippedRulebook } from './rulebook.ts';
import { limitsFrom } from './sourcedLimit.ts';

/** Bounds as rules make them: meets of real rows. */
const anyBounds: fc.Arbitrary<Bounds> = fc
  .subarray(shippedRulebook.rules.flatMap(({ cases }) => Object.values(cases)))
  .map((cases) =>
    meetAll(
      cases.flatMap(({ limits }) =>
        limitsFrom(limits, { rule: 'R40', because: '', source: 'common-practice', about: '' }),
      ),
    ),
  );

test('limits combine in any order and any grouping, and twice is once', () => {
  fc.assert(
    fc.property(anyBounds, anyBounds, anyBounds, (a, b, c) => {
      expect(meet(a, b)).toEqual(meet(b, a));
      expect(meet(meet(a, b), c)).toEqual(meet(a, meet(b, c)));
      expect(meet(a, a)).toEqual(a);
      expect(meet(a, noLimit)).toEqual(a);
    }),
  );
});

test('what both allow is within each, on every axis', () => {
  fc.assert(
    fc.property(anyBounds, anyBounds, (a, b) => {
      expect(within(meet(a, b), a)).toBe(true);
      expect(within(meet(a, b), b)).toBe(true);
      expect(axes.length).toBe(Object.keys(meet(a, b)).length);
    }),
  );
});
