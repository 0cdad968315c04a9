import { done, type Result } from '../../units/index.ts';
import {
  type AxisCount,
  countWeave,
  type Picture,
  type Taps,
  type WeaveCount,
  type WeaveOptions,
  type WeaveProblem,
  type WeaveScale,
} from '../weave/index.ts';
import { project, stretchAt, unproject } from './homography.ts';
import type { CardReading } from './readCard.ts';
import { insetMm, windowPicture } from './windowPicture.ts';

/** A count in the card's window, given in pixels of the whole picture, with its scale. */
export interface CountOnCard {
  readonly count: WeaveCount;
  readonly scale: WeaveScale;
}

/** Millimetres per pixel of the picture along a direction of the plane, at one of its points. */
function scaleAlong(
  reading: CardReading,
  at: readonly [number, number],
  angle: number,
): { readonly mmPerPx: number; readonly direction: number } {
  const [xx, xy, yx, yy] = stretchAt(reading.homography, at[0], at[1]);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [dx, dy] = [xx * cos + xy * sin, yx * cos + yy * sin];
  return { mmPerPx: 1 / Math.hypot(dx, dy), direction: Math.atan2(dy, dx) };
}

const scaleOf = (reading: CardReading, weftwiseMmPerPx: number, warpwiseMmPerPx: number): WeaveScale => ({
  mmPerPx: Math.sqrt(weftwiseMmPerPx * warpwiseMmPerPx),
  weftwiseMmPerPx,
  warpwiseMmPerPx,
  from: 'card',
  interval95: reading.interval95.map(
    (bound) => (bound / reading.mmPerPx) * Math.sqrt(weftwiseMmPerPx * warpwiseMmPerPx),
  ) as [number, number],
  measured: reading.measured,
});

/**
 * The scale of a count made anywhere in a picture that also shows the card.
 *
 * @param count - in pixels of the picture
 * @source none: the card's homography, carried over the rug's plane
 */
export function scaleBesideCard(reading: CardReading, { window, angleDeg }: WeaveCount): WeaveScale {
  const middle = unproject(reading.homography, window.x + window.width / 2, window.y + window.height / 2);
  const angle = (angleDeg * Math.PI) / 180;
  const [xx, xy, yx, yy] = stretchAt(reading.homography, middle[0], middle[1]);
  const determinant = xx * yy - xy * yx;
  const along = (cos: number, sin: number): number =>
    Math.hypot((yy * cos - xy * sin) / determinant, (xx * sin - yx * cos) / determinant);
  return scaleOf(reading, along(Math.cos(angle), Math.sin(angle)), along(-Math.sin(angle), Math.cos(angle)));
}

/** What may repeat, in pixels of the whole picture instead of the window's. */
function inPicturePx(
  problem: WeaveProblem,
  by: Readonly<Record<'weftwise' | 'warpwise', number>>,
): WeaveProblem {
  if (problem.code !== 'weave-undecided') return problem;
  const { axis, pitchesPx, candidates } = problem.facts;
  return {
    ...problem,
    facts: {
      axis,
      pitchesPx: pitchesPx.map((pitch) => pitch * by[axis]),
      candidates: candidates.map(({ weftwise, warpwise, weight }) => ({
        weftwise: weftwise * by.weftwise,
        warpwise: warpwise * by.warpwise,
        weight,
      })),
    },
  };
}

/**
 * Counts the weave in the card's window, perspective taken out first; beside loose pieces, in the whole picture.
 *
 * @param picture - the whole picture
 * @param reading - from `readCard`
 * @param options - taps in pixels of the whole picture, a confirmed pair likewise
 * @returns pitches, directions and marks in pixels of the whole picture, at the window's middle
 * @refuses weave-not-seen - and the other refusals of `countWeave`
 * @source none: this project's
 */
export function countOnCard(
  picture: Picture,
  reading: CardReading,
  options: Omit<WeaveOptions, 'window'> = {},
): Result<CountOnCard, WeaveProblem> {
  if (reading.form === 'loose') {
    // Loose pieces have no window: the count is made in the whole picture, with their scale.
    const beside = countWeave(picture, options);
    return beside.ok ? done({ count: beside.value, scale: scaleBesideCard(reading, beside.value) }) : beside;
  }
  const { picture: square, pxPerMm } = windowPicture(picture, reading);
  const halfMm = reading.halfWindowMm - insetMm;
  const toSquare = ([x, y]: readonly [number, number]): readonly [number, number] => {
    const [mmX, mmY] = unproject(reading.homography, x, y);
    return [(mmX + halfMm) * pxPerMm - 0.5, (mmY + halfMm) * pxPerMm - 0.5];
  };
  const toPicture = ([x, y]: readonly [number, number]): readonly [number, number] =>
    project(reading.homography, (x + 0.5) / pxPerMm - halfMm, (y + 0.5) / pxPerMm - halfMm);
  const taps = options.taps?.map(
    ({ from, to, repeats }): Taps => ({ from: toSquare(from), to: toSquare(to), repeats }),
  );
  const straight = {
    weftwise: 1 / (pxPerMm * reading.xMmPerPx),
    warpwise: 1 / (pxPerMm * reading.yMmPerPx),
  };
  const { confirmed } = options;
  const counted = countWeave(square, {
    ...(taps === undefined ? {} : { taps }),
    ...(confirmed === undefined
      ? {}
      : {
          confirmed: {
            weftwisePx: confirmed.weftwisePx / straight.weftwise,
            warpwisePx: confirmed.warpwisePx / straight.warpwise,
          },
        }),
  });
  if (!counted.ok) return { ok: false, problem: inPicturePx(counted.problem, straight) };
  const count = counted.value;
  const angle = (count.angleDeg * Math.PI) / 180;
  const weft = scaleAlong(reading, [0, 0], angle);
  const warp = scaleAlong(reading, [0, 0], angle + Math.PI / 2);
  const back = (axis: AxisCount, mmPerPx: number): AxisCount => {
    const factor = 1 / (pxPerMm * mmPerPx);
    return {
      pitchPx: axis.pitchPx * factor,
      pitchInterval95: [axis.pitchInterval95[0] * factor, axis.pitchInterval95[1] * factor],
      confidence: axis.confidence,
      basis: axis.basis,
      strips: axis.strips.map((strip) => ({
        ...strip,
        lengthPx: strip.lengthPx * factor,
        marks: strip.marks.map(toPicture),
      })),
    };
  };
  const corners = [
    toPicture([0, 0]),
    toPicture([square.width, 0]),
    toPicture([square.width, square.height]),
    toPicture([0, square.height]),
  ];
  const [left, top] = [Math.min(...corners.map(([x]) => x)), Math.min(...corners.map(([, y]) => y))];
  return done({
    count: {
      ...count,
      weftwise: back(count.weftwise, weft.mmPerPx),
      warpwise: back(count.warpwise, warp.mmPerPx),
      angleDeg: (weft.direction * 180) / Math.PI,
      candidates: count.candidates.map(({ weftwise, warpwise, weight }) => ({
        weftwise: weftwise / (pxPerMm * weft.mmPerPx),
        warpwise: warpwise / (pxPerMm * warp.mmPerPx),
        weight,
      })),
      window: {
        x: Math.round(left),
        y: Math.round(top),
        width: Math.round(Math.max(...corners.map(([x]) => x)) - left),
        height: Math.round(Math.max(...corners.map(([, y]) => y)) - top),
      },
    },
    scale: scaleOf(reading, weft.mmPerPx, warp.mmPerPx),
  });
}
