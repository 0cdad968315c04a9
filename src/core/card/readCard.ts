import geometry from '../../../data/card/geometry.json' with { type: 'json' };
import limits from '../../../data/card/limits.json' with { type: 'json' };
import { done, type OutOfRange, type Problem, type Result, refused } from '../../units/index.ts';
import type { Picture } from '../weave/index.ts';
import { type CornerName, codePlace, readCardText } from './cardText.ts';
import {
  type Homography,
  homographyOf,
  type PointPair,
  project,
  stretchAt,
  unproject,
} from './homography.ts';
import { spread, usableBar, withMeasuredBar } from './measuredBar.ts';
import { type OtherTag, otherTag } from './otherTag.ts';
import { refine } from './refine.ts';

export type CardProblem =
  | Problem<'card-not-found', { readonly codes: number }>
  | Problem<'card-one-code', { readonly serial: string; readonly corner: CornerName }>
  | Problem<'card-codes-disagree', { readonly share: number; readonly most: number }>
  | Problem<'card-stretched', { readonly share: number; readonly most: number }>
  | Problem<'two-cards', { readonly serials: readonly string[] }>
  | OtherTag
  | OutOfRange;

/** A code of the card as a reader found it. */
export interface SeenCode {
  readonly text: string;
  readonly corners: readonly (readonly [number, number])[];
}

export interface CardOptions {
  /** Length of the printed 100 mm bar, measured once with a ruler [mm]; null if nobody did. */
  readonly barMm: number | null;
  /** The tag the picture should belong to. */
  readonly tag?: string;
}

/** A grey patch of the card in the picture. */
export interface Patch {
  /** Side of the window it lies at, or the loose piece it is on. */
  readonly side: 'top' | 'right' | 'bottom' | 'left' | CornerName;
  /** Printed level, 0 … 255. */
  readonly printed: number;
  /** Where it lies in the picture [px]. */
  readonly middle: readonly [x: number, y: number];
  /** Mean light in the picture, 0 … 255. */
  readonly red: number;
  readonly green: number;
  readonly blue: number;
  /** A band at its limit tells nothing about colour. */
  readonly clipped: boolean;
}

export interface CardReading {
  /** The sheet with a window, or four pieces that lie loose at the corners of a rug. */
  readonly form: 'window' | 'loose';
  readonly serial: string;
  readonly tag: string | null;
  readonly corners: readonly CornerName[];
  /** True millimetres of the card's plane, from the window's middle, to pixels. */
  readonly homography: Homography;
  /** At the window's middle; geometric mean of both directions. */
  readonly mmPerPx: number;
  /** Along the card's x (across the pile) and y (along it). */
  readonly xMmPerPx: number;
  readonly yMmPerPx: number;
  readonly interval95: readonly [number, number];
  /** Half of the interval as far as the picture alone makes it, without the printing [share]. */
  readonly seenHalf: number;
  /** False when the printed bar was never measured: the scale is then unverified, ±3 %. */
  readonly measured: boolean;
  /** Direction of the card's x axis from the picture's horizontal, clockwise [°]. */
  readonly angleDeg: number;
  /** Half the side of the window [true mm]. */
  readonly halfWindowMm: number;
  readonly patches: readonly Patch[];
}

/**
 * ln(y scale / x scale) of the print for each focal length a camera may have; 0 is unstretched.
 *
 * @source none: geometry of a plane seen by a pinhole camera with square pixels
 */
export function printStretches(h: Homography, picture: Picture): readonly number[] {
  const [a = 0, b = 0, , d = 0, e = 0, , g = 0, i = 0] = h;
  return limits.focalLengths.map((share) => {
    const f = share * Math.max(picture.width, picture.height);
    const [cx, cy] = [picture.width / 2, picture.height / 2];
    const x = Math.hypot((a - cx * g) / f, (d - cy * g) / f, g);
    const y = Math.hypot((b - cx * i) / f, (e - cy * i) / f, i);
    return Math.log(y / x);
  });
}

const scaleAt = (h: Homography): { readonly x: number; readonly y: number; readonly mean: number } => {
  const [xx, xy, yx, yy] = stretchAt(h, 0, 0);
  return {
    x: 1 / Math.hypot(xx, yx),
    y: 1 / Math.hypot(xy, yy),
    mean: 1 / Math.sqrt(Math.abs(xx * yy - xy * yx)),
  };
};

/** How far a found corner lies from where the homography has it [mm]. */
const offMm = (h: Homography, { plane, picture: [x, y] }: PointPair): number => {
  const [px, py] = unproject(h, x, y);
  return Math.hypot(px - plane[0], py - plane[1]);
};

/** Standard error of the scale, from the covariance of the homography. */
function scaleError(h: Homography, covariance: readonly (readonly number[])[]): number {
  const base = Math.log(scaleAt(h).mean);
  const slope = Array.from({ length: 8 }, (_, index) => {
    const step = 1e-5 * Math.max(Math.abs(h[index] ?? 0), index >= 6 ? 1e-4 : 1e-2);
    const moved = h.map((value, at) => (at === index ? value + step : value));
    return (Math.log(scaleAt(moved).mean) - base) / step;
  });
  let sum = 0;
  for (let i = 0; i < 8; i += 1)
    for (let j = 0; j < 8; j += 1) sum += (slope[i] ?? 0) * (slope[j] ?? 0) * (covariance[i]?.[j] ?? 0);
  return Math.sqrt(Math.max(0, sum));
}

/**
 * Mean light over a patch, whose middle is at 0 and whose inner edges are at ±1.
 *
 * @source none: a mean over pixels
 */
export function meanLight(
  picture: Picture,
  place: (u: number, v: number) => readonly [number, number],
): Pick<Patch, 'red' | 'green' | 'blue' | 'clipped'> {
  const sums = [0, 0, 0];
  let [held, clipped] = [0, 0];
  for (let u = -3; u <= 3; u += 1)
    for (let v = -3; v <= 3; v += 1) {
      const [px, py] = place(u / 3, v / 3).map(Math.round) as [number, number];
      if (px < 0 || py < 0 || px >= picture.width || py >= picture.height) continue;
      held += 1;
      const at = (py * picture.width + px) * picture.channels;
      for (let band = 0; band < 3; band += 1) {
        const light = picture.data[at + band] ?? 0;
        sums[band] = (sums[band] ?? 0) + light;
        if (light >= 250 || light <= 5) clipped += 1;
      }
    }
  const mean = (band: number): number => (held === 0 ? Number.NaN : (sums[band] ?? 0) / held);
  return { red: mean(0), green: mean(1), blue: mean(2), clipped: held === 0 || clipped > held * 0.15 };
}

function readPatches(picture: Picture, h: Homography): readonly Patch[] {
  const { near, far, wide, centres, levels } = geometry.patches;
  const middle = (near + far) / 2;
  return (['top', 'right', 'bottom', 'left'] as const).flatMap((side) =>
    centres.map((centre, index): Patch => {
      const at = (u: number, v: number) => {
        const along = centre + 0.3 * u * wide;
        const out = middle + 0.3 * v * (far - near);
        const [x, y] = {
          top: [along, -out] as const,
          bottom: [along, out] as const,
          left: [-out, along] as const,
          right: [out, along] as const,
        }[side];
        return project(h, x, y);
      };
      return { side, printed: levels[index] ?? 0, middle: at(0, 0), ...meanLight(picture, at) };
    }),
  );
}

/**
 * Reads the weave card in a picture: scale, perspective, direction, grey patches, serial, tag.
 *
 * @param picture - the picture the codes were found in, full size
 * @param codes - every QR code found in it
 * @param options - the measured bar, the tag that is expected
 * @returns scale at the window's middle with its interval; ±3 % more when the bar was never measured
 * @refuses card-not-found - no code of a card
 * @refuses card-one-code - one code alone gives no scale worth having
 * @refuses two-cards - codes of several cards
 * @refuses card-codes-disagree - the codes do not lie on one flat card
 * @refuses card-stretched - printed with unequal scales across and along
 * @refuses card-other-tag - the tag's code is another rug's
 * @refuses out-of-range - a bar nobody could have measured
 * @source none: this project's; accuracy by bench/card.ts
 */
export function readCard(
  picture: Picture,
  codes: readonly SeenCode[],
  options: CardOptions,
): Result<CardReading, CardProblem> {
  const { barMm } = options;
  const bar = barMm === null ? done(null) : usableBar(barMm);
  if (!bar.ok) return bar;
  const read = codes.flatMap(({ text, corners }) => {
    const said = readCardText(text);
    return said === null ? [] : [{ said, corners }];
  });
  const seen = read.flatMap(({ said, corners }) => (said.kind === 'corner' ? [{ ...said, corners }] : []));
  const tag = read.flatMap(({ said }) => (said.kind === 'tag' ? [said.tag] : []))[0] ?? null;
  const serials = [...new Set(seen.map(({ serial }) => serial))];
  const [first] = seen;
  if (first === undefined) return refused('card-not-found', { codes: codes.length });
  const names = seen.map(({ corner }) => corner);
  if (serials.length > 1 || new Set(names).size < names.length) return refused('two-cards', { serials });
  const other = otherTag(tag, options.tag);
  if (other !== null) return { ok: false, problem: other };
  if (seen.length === 1) return refused('card-one-code', { serial: first.serial, corner: first.corner });

  const { side } = geometry.code;
  const pairs = seen.flatMap(({ corner, corners }) => {
    const [x, y] = codePlace(corner);
    return [
      [x, y],
      [x + side, y],
      [x + side, y + side],
      [x, y + side],
    ].flatMap(([px = 0, py = 0], index) => {
      const picturePoint = corners[index];
      return picturePoint === undefined ? [] : [{ plane: [px, py] as const, picture: picturePoint }];
    });
  });
  const start = homographyOf(pairs);
  const cardWidth = 2 * (geometry.code.inner + side / 2);
  // Corners come in whole pixels; a code that lies elsewhere than the others say is far beyond that.
  const astray =
    start === null
      ? Number.NaN
      : (Math.max(...pairs.map((pair) => offMm(start, pair))) - 3 * scaleAt(start).mean) / cardWidth;
  if (!(astray <= limits.disagreement))
    return refused('card-codes-disagree', { share: astray, most: limits.disagreement });
  const refined = start === null ? null : refine(picture, start, names);
  if (start === null || refined === null)
    return refused('card-codes-disagree', { share: Number.NaN, most: limits.disagreement });
  const worst = Math.max(...refined.offMm.values());
  const share = worst / cardWidth;
  if (!(share <= limits.disagreement / 2))
    return refused('card-codes-disagree', { share, most: limits.disagreement });
  const stretched = printStretches(refined.homography, picture);
  const least = Math.min(...stretched.map(Math.abs));
  const oneSided = stretched.every((value) => value > 0) || stretched.every((value) => value < 0);
  if (seen.length >= 3 && oneSided && least > limits.stretch)
    return refused('card-stretched', { share: least, most: limits.stretch });

  const { homography, covariance } = refined;
  const scale = scaleAt(homography);
  const floor = seen.length >= 3 ? limits.manyCodesFloor : limits.fewCodesFloor;
  const seenHalf = Math.max(floor, 2.5 * scaleError(homography, covariance));
  const [xx, , yx] = stretchAt(homography, 0, 0);
  const unmeasured: CardReading = {
    form: 'window',
    serial: first.serial,
    tag,
    corners: names,
    homography,
    mmPerPx: scale.mean,
    xMmPerPx: scale.x,
    yMmPerPx: scale.y,
    interval95: spread(scale.mean, Math.hypot(seenHalf, limits.unmeasuredScale)),
    seenHalf,
    measured: false,
    angleDeg: (Math.atan2(yx, xx) * 180) / Math.PI,
    halfWindowMm: geometry.window / 2,
    patches: readPatches(picture, homography),
  };
  return barMm === null ? done(unmeasured) : withMeasuredBar(unmeasured, barMm);
}
