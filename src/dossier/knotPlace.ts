import type { CardReading } from '../core/card/index.ts';
import type { AxisCount, WeaveScale } from '../core/weave/index.ts';
import type { KnotBasis, KnotCount } from './knotResult.ts';

type Photographed = Extract<KnotCount, { counted: 'photographed' }>;
/** One place of a count on photographs. */
export type PhotographedPlace = Photographed['places'][number];
export type PlaceScale = PhotographedPlace['scale'];
/** What was seen along an axis, nodes not yet made knots. */
export type AxisSeen = PhotographedPlace['weftwise'];

const overMm = 70;
/** Without a measured card nothing is surer than this [share]. */
const leastUnsure = 0.01;

/**
 * Repeats in 7 cm with their interval, as they are recorded.
 *
 * @param count - repeats in 70 mm
 * @param half - half of the count's own 95 % interval [share]
 * @param scale - what gave the length
 * @param confidence - the counter's own; null where a person counted
 * @source none: independent causes add as squares; without a measured card nothing is surer than 1 %
 */
export function axisSeen(
  count: number,
  half: number,
  scale: WeaveScale,
  basis: KnotBasis,
  confidence: number | null,
): AxisSeen {
  const [low, high] = scale.interval95;
  const isSure = scale.from === 'card' && scale.measured;
  const unsure = Math.max(isSure ? 0 : leastUnsure, Math.hypot(half, (high - low) / 2 / scale.mmPerPx));
  return {
    count,
    overMm,
    interval95: { least: count * (1 - unsure), most: count * (1 + unsure) },
    basis,
    ...(confidence === null ? {} : { confidence }),
  };
}

/**
 * Repeats in 7 cm as the picture was counted.
 *
 * @source none: arithmetic
 */
export function seenByCounter(
  axis: 'weftwise' | 'warpwise',
  counted: AxisCount,
  scale: WeaveScale,
  basis: KnotBasis,
): AxisSeen {
  const mmPerPx = axis === 'weftwise' ? scale.weftwiseMmPerPx : scale.warpwiseMmPerPx;
  const [low, high] = counted.pitchInterval95;
  const half = (high - low) / 2 / counted.pitchPx;
  return axisSeen(overMm / (counted.pitchPx * mmPerPx), half, scale, basis, counted.confidence);
}

/**
 * A card's scale as it is recorded: per pixel of the photograph as kept.
 *
 * @param reducedBy - pixels of the photograph as kept to one of the picture that was counted
 * @param barMm - its bar as measured [mm]; left out while the reading does not rest on it
 * @source none: arithmetic
 */
export const scaleByCard = (
  reading: CardReading,
  scale: WeaveScale,
  reducedBy: number,
  barMm: number | undefined,
): PlaceScale => ({
  from: 'card',
  serial: reading.serial,
  codes: reading.corners.length,
  ...(reading.tag === null ? {} : { tag: reading.tag }),
  ...(barMm === undefined || !reading.measured ? {} : { barMm }),
  mmPerPx: scale.mmPerPx / reducedBy,
  interval95: { least: scale.interval95[0] / reducedBy, most: scale.interval95[1] / reducedBy },
});
