import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { heldOn, middleOf, wholeView, zoomed } from './view.ts';

const surface = { widthPx: 1600, heightPx: 2400 };
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('looking at a picture more closely', () => {
  test('the view never leaves the picture, however it is pushed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -5000, max: 5000, noNaN: true }),
        fc.double({ min: -5000, max: 5000, noNaN: true }),
        fc.double({ min: 1, max: 9000, noNaN: true }),
        (x, y, width) => {
          const view = heldOn({ x, y, width }, surface);
          const height = (view.width * surface.heightPx) / surface.widthPx;
          expect(view.x).toBeGreaterThanOrEqual(0);
          expect(view.y).toBeGreaterThanOrEqual(0);
          expect(view.x + view.width).toBeLessThanOrEqual(surface.widthPx + 1e-6);
          expect(view.y + height).toBeLessThanOrEqual(surface.heightPx + 1e-6);
        },
      ),
    );
  });

  test('what lies under the fingers stays under them while it grows', () => {
    fc.assert(
      fc.property(share, share, fc.double({ min: 1, max: 6, noNaN: true }), (u, v, by) => {
        const before = wholeView(surface);
        const about = { x: u * surface.widthPx, y: v * surface.heightPx };
        const after = zoomed(before, by, about, surface);
        expect((about.x - after.x) / after.width).toBeCloseTo(u, 9);
      }),
    );
  });

  test('growing and shrinking about the middle ends where it began', () => {
    const near = zoomed(wholeView(surface), 4, { x: 800, y: 1200 }, surface);
    const back = zoomed(near, 1 / 4, middleOf(near, surface), surface);
    expect(back).toEqual(wholeView(surface));
  });
});
