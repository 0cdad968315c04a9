import type { WeaveScale } from '../../core/weave/index.ts';

/** A place tapped on the picture, with how many picture px one screen px was then. */
export interface WeaveTap {
  readonly x: number;
  readonly y: number;
  readonly unit: number;
}

export type TapPair = readonly [WeaveTap, WeaveTap];

const tapLength = ([a, b]: TapPair): number => Math.hypot(b.x - a.x, b.y - a.y);

/** A finger finds a place within this many px of the screen, one standard deviation. */
const tapScreenPx = 2;
/** Both ends of a ruler together are read within this, 95 % [mm]. */
const rulerMm = 0.5;

const given = (mmPerPx: number, half: number): WeaveScale | null =>
  mmPerPx >= 0.001 && mmPerPx <= 5 && half < 0.2
    ? {
        mmPerPx,
        weftwiseMmPerPx: mmPerPx,
        warpwiseMmPerPx: mmPerPx,
        from: 'given',
        interval95: [mmPerPx * (1 - half), mmPerPx * (1 + half)],
        measured: true,
      }
    : null;

/** Scale from two tapped places; null where they lie too close to say anything within a fifth. */
function scaleFromTaps(pair: TapPair, betweenMm: number): WeaveScale | null {
  const lengthPx = tapLength(pair);
  if (!(lengthPx > 0)) return null;
  const tapHalf = (1.96 * tapScreenPx * Math.hypot(pair[0].unit, pair[1].unit)) / lengthPx;
  return given(betweenMm / lengthPx, Math.hypot(tapHalf, rulerMm / betweenMm));
}

/** Scale as typed, per pixel of the original photograph; it is taken as exact. */
const scaleFromNumber = (mmPerOriginalPx: number, reducedBy: number): WeaveScale | null =>
  given(mmPerOriginalPx * reducedBy, 0);

export type ScaleWay = 'unknown' | 'tapped' | 'typed';

export interface TypedScale {
  readonly way: ScaleWay;
  readonly taps: TapPair | null;
  readonly betweenMm: number | null;
  readonly mmPerPx: number | null;
}

export const noScale: TypedScale = { way: 'unknown', taps: null, betweenMm: null, mmPerPx: null };

/** The scale a person gave; null while it is not known. */
export function scaleOf({ way, taps, betweenMm, mmPerPx }: TypedScale, reducedBy: number): WeaveScale | null {
  if (way === 'tapped' && taps !== null && betweenMm !== null) return scaleFromTaps(taps, betweenMm);
  if (way === 'typed' && mmPerPx !== null) return scaleFromNumber(mmPerPx, reducedBy);
  return null;
}
