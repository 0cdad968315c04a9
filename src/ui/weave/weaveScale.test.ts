import { expect, test } from 'vitest';
import { noScale, scaleOf } from './weaveScale.ts';

const tapped = (lengthPx: number, unit: number, betweenMm: number) =>
  scaleOf(
    {
      ...noScale,
      way: 'tapped',
      betweenMm,
      taps: [
        { x: 0, y: 0, unit },
        { x: 0.6 * lengthPx, y: 0.8 * lengthPx, unit },
      ],
    },
    1,
  );

// Source: definition of a scale; how finely a finger points is common practice, no published source.
test('100 mm over 1000 px are a tenth of a millimetre to a pixel, whatever their direction', () => {
  expect(tapped(1000, 1, 100)?.mmPerPx).toBeCloseTo(0.1, 9);
});

test('taps on a smaller picture give a wider interval, and taps too close none', () => {
  const width = (unit: number) => {
    const [low, high] = tapped(1000, unit, 100)?.interval95 ?? [0, 0];
    return high - low;
  };
  expect(width(8)).toBeGreaterThan(width(1));
  expect(tapped(20, 4, 100)).toBeNull();
});

test('a typed scale belongs to the original photograph, so a reduced one has larger pixels', () => {
  expect(scaleOf({ ...noScale, way: 'typed', mmPerPx: 0.05 }, 2)?.mmPerPx).toBeCloseTo(0.1, 9);
  expect(scaleOf(noScale, 1)).toBeNull();
});
