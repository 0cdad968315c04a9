import { type CardReading, unproject } from '../../core/card/index.ts';
import type { WeaveScale } from '../../core/weave/index.ts';
import { type AxisSeen, axisSeen, type PlaceScale, scaleByCard } from '../../dossier/index.ts';
import type { TypedScale, WeaveTap } from './weaveScale.ts';

export type Axis = 'weftwise' | 'warpwise';
export const axes = ['weftwise', 'warpwise'] as const;

/** A place that was counted and is kept for the result. */
export interface CountedPlace {
  readonly key: string;
  readonly place: string;
  /** Hash of the kept photograph; on the Bench a name of its own. */
  readonly photo: string;
  readonly scale: PlaceScale;
  readonly weftwise: AxisSeen;
  readonly warpwise: AxisSeen;
  /** What colour changes leave no doubt of. */
  readonly nodesSeen: 1 | 2 | null;
}

/** A person's own count between two tapped repeats. */
export interface HandCount {
  readonly from: WeaveTap;
  readonly to: WeaveTap;
  readonly repeats: number;
}

/** A finger finds a place within this many px of the screen, one standard deviation. */
const tapScreenPx = 2;

/** Repeats in 7 cm as a person counted them between two taps; through the card, tilt taken out. */
export function seenByHand(
  { from, to, repeats }: HandCount,
  scale: WeaveScale,
  reading: CardReading | null,
): AxisSeen {
  const lengthPx = Math.hypot(to.x - from.x, to.y - from.y);
  const lengthMm = reading === null ? lengthPx * scale.mmPerPx : trueLengthMm(reading, from, to);
  const half = (1.96 * tapScreenPx * Math.hypot(from.unit, to.unit)) / lengthPx;
  return axisSeen((70 * repeats) / lengthMm, half, scale, 'by hand', null);
}

function trueLengthMm({ homography }: CardReading, from: WeaveTap, to: WeaveTap): number {
  const [ax, ay] = unproject(homography, from.x, from.y);
  const [bx, by] = unproject(homography, to.x, to.y);
  return Math.hypot(bx - ax, by - ay);
}

/** Along which way two taps lie: as the card lies, else as the picture does. */
export function axisOfTaps(
  from: { readonly x: number; readonly y: number },
  to: { readonly x: number; readonly y: number },
  reading: CardReading | null,
): Axis {
  const [a, b] =
    reading === null
      ? ([
          [from.x, from.y],
          [to.x, to.y],
        ] as const)
      : [unproject(reading.homography, from.x, from.y), unproject(reading.homography, to.x, to.y)];
  return Math.abs(b[0] - a[0]) >= Math.abs(b[1] - a[1]) ? 'weftwise' : 'warpwise';
}

/** The scale of a hand count where nothing was counted by the picture: the card's, else what was said. */
export const scaleOfCard = (reading: CardReading): WeaveScale => ({
  mmPerPx: reading.mmPerPx,
  weftwiseMmPerPx: reading.xMmPerPx,
  warpwiseMmPerPx: reading.yMmPerPx,
  from: 'card',
  interval95: reading.interval95,
  measured: reading.measured,
});

/** What gave the scale, as it is recorded: per pixel of the photograph as kept. */
export function placeScale(
  scale: WeaveScale,
  reducedBy: number,
  reading: CardReading | null,
  barMm: number | undefined,
  typed: TypedScale,
): PlaceScale {
  const scaled = {
    mmPerPx: scale.mmPerPx / reducedBy,
    interval95: { least: scale.interval95[0] / reducedBy, most: scale.interval95[1] / reducedBy },
  };
  if (reading !== null) return scaleByCard(reading, scale, reducedBy, barMm);
  return typed.way === 'tapped' && typed.betweenMm !== null
    ? { from: 'length in the picture', lengthMm: typed.betweenMm, ...scaled }
    : { from: 'given', ...scaled };
}

/** Why a place cannot be kept yet, in words; null when it can. */
export function notYet(
  scale: WeaveScale | null,
  found: Readonly<Record<Axis, AxisSeen | null>>,
  sureEnough: number,
): string | null {
  if (scale === null) return 'Say first how large the picture is.';
  for (const axis of axes) {
    const ways = axis === 'weftwise' ? 'across the rug' : 'along the rug';
    const one = found[axis];
    if (one === null) return `Nothing is counted ${ways} yet: count it by eye.`;
    if (one.basis === 'automatic' && (one.confidence ?? 0) < sureEnough)
      return `The count ${ways} is not sure enough to stand alone: look, then confirm or tap.`;
  }
  return null;
}
