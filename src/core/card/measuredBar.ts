import geometry from '../../../data/card/geometry.json' with { type: 'json' };
import limits from '../../../data/card/limits.json' with { type: 'json' };
import { done, type OutOfRange, type Result, refused } from '../../units/index.ts';
import type { CardReading } from './readCard.ts';

/**
 * A figure with a share of it to either side.
 *
 * @source none: arithmetic
 */
export const spread = (middle: number, half: number): readonly [number, number] => [
  middle * (1 - half),
  middle * (1 + half),
];

/**
 * The measured bar, where it is one that a printer may make.
 *
 * @param barMm - the 100 mm bar as measured with a ruler [mm]
 * @refuses out-of-range - a bar nobody could have measured
 * @source none: data/card/limits.json
 */
export function usableBar(barMm: number): Result<number, OutOfRange> {
  if (barMm >= limits.barMm.least && barMm <= limits.barMm.most) return done(barMm);
  return refused('out-of-range', { field: 'the measured bar', value: barMm, ...limits.barMm, symbol: 'mm' });
}

/**
 * A reading put right by the length of the card's printed bar.
 *
 * @param reading - of a card whose bar was not yet taken into account
 * @param barMm - the 100 mm bar as measured with a ruler [mm]
 * @refuses out-of-range - a bar nobody could have measured
 * @source none: everything printed larger or smaller than drawn, the bar tells by how much
 */
export function withMeasuredBar(reading: CardReading, barMm: number): Result<CardReading, OutOfRange> {
  const bar = usableBar(barMm);
  if (!bar.ok) return bar;
  const printed = bar.value / geometry.bar.length;
  const mmPerPx = reading.mmPerPx * printed;
  return done({
    ...reading,
    homography: reading.homography.map((value, index) =>
      index === 2 || index === 5 || index === 8 ? value : value / printed,
    ),
    mmPerPx,
    xMmPerPx: reading.xMmPerPx * printed,
    yMmPerPx: reading.yMmPerPx * printed,
    interval95: spread(mmPerPx, Math.hypot(reading.seenHalf, limits.measuredScale)),
    measured: true,
    halfWindowMm: reading.halfWindowMm * printed,
  });
}
