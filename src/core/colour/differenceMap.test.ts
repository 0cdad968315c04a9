import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seededRandom } from '../drying/index.ts';
import { ciede2000 } from './ciede2000.ts';
import { differenceMap } from './differenceMap.ts';
import { labFromSrgb } from './lab.ts';

/** The largest difference between the map and the exact formula over pairs of pixels. */
function worst(pairs: number, draw: (at: number) => readonly [readonly number[], readonly number[]]): number {
  const [one, other] = [new Uint8Array(3 * pairs), new Uint8Array(3 * pairs)];
  for (let at = 0; at < pairs; at += 1) {
    const [p, q] = draw(at);
    one.set(p, 3 * at);
    other.set(q, 3 * at);
  }
  const of = (data: Uint8Array) => ({ widthPx: pairs, heightPx: 1, data });
  const { deltaE } = differenceMap(of(one), of(other));
  let most = 0;
  for (let at = 0; at < pairs; at += 1) {
    const lab = (data: Uint8Array) =>
      labFromSrgb([data[3 * at] ?? 0, data[3 * at + 1] ?? 0, data[3 * at + 2] ?? 0]);
    const off = Math.abs((deltaE[at] ?? Number.NaN) - ciede2000(lab(one), lab(other)));
    most = Number.isNaN(off) ? Number.POSITIVE_INFINITY : Math.max(most, off);
  }
  return most;
}

const random = seededRandom(11);
const byte = (): number => Math.floor(256 * random());
const near = (value: number, reach: number): number =>
  Math.min(255, Math.max(0, value + Math.round(reach * (2 * random() - 1))));

test('the fast map is within 0.02 of the exact ΔE00 for any two pixels, near ones and greys included', () => {
  const any = (): readonly number[] => [byte(), byte(), byte()];
  expect(worst(100_000, () => [any(), any()])).toBeLessThan(0.02);
  expect(
    worst(100_000, () => {
      const p = any();
      return [p, p.map((value) => near(value, 6))];
    }),
  ).toBeLessThan(0.02);
  expect(
    worst(20_000, () => {
      const grey = byte();
      return [
        [grey, grey, grey],
        [near(grey, 3), near(grey, 3), near(grey, 3)],
      ];
    }),
  ).toBeLessThan(0.02);
});

test('equal pixels have no difference', () => {
  fc.assert(
    fc.property(fc.uint8Array({ minLength: 3, maxLength: 3 }), (pixel) => {
      const picture = { widthPx: 1, heightPx: 1, data: pixel };
      expect(differenceMap(picture, picture).deltaE[0]).toBe(0);
    }),
    { seed: 12, numRuns: 50 },
  );
});
