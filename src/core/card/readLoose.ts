import geometry from '../../../data/card/geometry.json' with { type: 'json' };
import limits from '../../../data/card/limits.json' with { type: 'json' };
import { done, type Result, refused } from '../../units/index.ts';
import type { Picture } from '../weave/index.ts';
import { type CornerName, codePlace, readCardText } from './cardText.ts';
import { type Homography, homographyOf, project, stretchAt } from './homography.ts';
import { spread, withMeasuredBar } from './measuredBar.ts';
import { otherTag } from './otherTag.ts';
import {
  type CardOptions,
  type CardProblem,
  type CardReading,
  meanLight,
  type Patch,
  printStretches,
  readCard,
  type SeenCode,
} from './readCard.ts';
import { type Rectified, rectifiedUnitPx, rectify, type SeenPiece } from './rectify.ts';
import { refine } from './refine.ts';

const { code, loose } = geometry;
/** A loose piece's code is the small one enlarged: what finds the edges of one finds those of the other. */
const enlarged = loose.side / code.side;
/** Pieces that lie turned less than this against each other are parallel enough to show a stretched print [radians]. */
const parallel = 0.17;

interface ReadPiece {
  readonly corner: CornerName;
  readonly seen: SeenPiece;
  /** Code of the small card's corner A to the picture. */
  readonly homography: Homography;
}

const [left, top] = codePlace('A');

/** Corners of the three finder squares [mm on the piece]: all of them lie within what edges were seen of. */
const finderCorners = ((): readonly (readonly [number, number])[] => {
  const finder = (7 * loose.side) / code.modules;
  const far = loose.side - finder;
  return [
    [0, 0],
    [far, 0],
    [0, far],
  ].flatMap(([x = 0, y = 0]) => [
    [x, y] as const,
    [x + finder, y] as const,
    [x + finder, y + finder] as const,
    [x, y + finder] as const,
  ]);
})();

function readPiece(picture: Picture, corner: CornerName, corners: SeenCode['corners']): ReadPiece | null {
  const plane = [
    [left, top],
    [left + code.side, top],
    [left + code.side, top + code.side],
    [left, top + code.side],
  ] as const;
  const pairs = plane.flatMap((place, index) => {
    const at = corners[index];
    return at === undefined ? [] : [{ plane: place, picture: at }];
  });
  const start = homographyOf(pairs);
  const refined = start === null ? null : refine(picture, start, ['A']);
  if (refined === null) return null;
  const inPicture = finderCorners.map(([x, y]) =>
    project(refined.homography, left + x / enlarged, top + y / enlarged),
  );
  return { corner, seen: { onPiece: finderCorners, inPicture }, homography: refined.homography };
}

/** Plane to picture, from what takes the picture to the plane. */
function homographyOfPlane({ numbers, middle }: Rectified): Homography {
  const [a = 1, b = 0, c = 1, g = 0, h = 0] = numbers;
  const unit = rectifiedUnitPx;
  // The inverse of [[a, b, 0], [0, c, 0], [g, h, 1]], its last number being 1.
  const rows = [
    [1 / a, -b / (a * c), 0],
    [0, 1 / c, 0],
    [-g / a, (b * g) / (a * c) - h / c, 1],
  ] as const;
  const [p, q, r] = rows;
  const moved = (row: readonly [number, number, number], by: number): readonly number[] =>
    row.map((value, at) => unit * value + by * r[at as 0 | 1 | 2]);
  return [...moved(p, middle[0]), ...moved(q, middle[1]), ...r];
}

/** The plane turned so that its x is a piece's. */
function turned(homography: Homography, turn: number): Homography {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [0, 3, 6].flatMap((row) => {
    const [x = 0, y = 0, one = 0] = homography.slice(row, row + 3);
    return [x * cos + y * sin, -x * sin + y * cos, one];
  });
}

function patchesOf(picture: Picture, { corner, homography }: ReadPiece): readonly Patch[] {
  const { patches } = loose;
  const at = (x: number, y: number) => project(homography, left + x / enlarged, top + y / enlarged);
  return patches.centres.map((centre, index) => {
    const within = (u: number, v: number) =>
      at(centre + 0.3 * u * patches.wide, patches.y + patches.high / 2 + 0.3 * v * patches.high);
    return {
      ...{ side: corner, printed: patches.levels[index] ?? 0, middle: within(0, 0) },
      ...meanLight(picture, within),
    };
  });
}

/**
 * Reads the card's loose pieces in a picture of a whole rug: scale and perspective of the floor they lie on.
 *
 * Where the pieces lie is not known; that all have the same true size fixes the perspective. The plane's
 * origin is the middle of the pieces, its x the picture's horizontal there.
 *
 * @param picture - the picture the codes were found in, full size
 * @param codes - every QR code found in it
 * @param options - the measured bar, and the tag the picture should belong to
 * @returns scale at the middle of the pieces with its interval
 * @refuses card-not-found - no loose piece
 * @refuses card-one-code - one piece alone fixes no perspective
 * @refuses two-cards - pieces of several cards
 * @refuses card-other-tag - pieces of another rug
 * @refuses card-codes-disagree - the pieces do not lie flat on one plane, or are not of one size
 * @refuses card-stretched - printed with unequal scales, where the pieces lie parallel
 * @refuses out-of-range - a bar nobody could have measured
 * @source none: this project's; accuracy by bench/card.ts
 */
export function readLooseCard(
  picture: Picture,
  codes: readonly SeenCode[],
  options: CardOptions,
): Result<CardReading, CardProblem> {
  const seen = codes.flatMap(({ text, corners }) => {
    const said = readCardText(text);
    return said?.kind === 'loose' ? [{ ...said, corners }] : [];
  });
  const [first] = seen;
  if (first === undefined) return refused('card-not-found', { codes: codes.length });
  const serials = [...new Set(seen.map(({ serial }) => serial))];
  if (serials.length > 1 || new Set(seen.map(({ corner }) => corner)).size < seen.length)
    return refused('two-cards', { serials });
  const tag = seen.find((piece) => piece.tag !== null)?.tag ?? null;
  const other = otherTag(tag, options.tag);
  if (other !== null) return { ok: false, problem: other };
  const pieces = seen.flatMap(({ corner, corners }) => readPiece(picture, corner, corners) ?? []);
  if (pieces.length < 2) return refused('card-one-code', { serial: first.serial, corner: first.corner });

  const scales = pieces.map(({ homography }) => {
    const [xx, xy, yx, yy] = stretchAt(homography, left + code.side / 2, top + code.side / 2);
    return enlarged / Math.sqrt(Math.abs(xx * yy - xy * yx));
  });
  const guess = Math.exp(scales.reduce((sum, scale) => sum + Math.log(scale), 0) / scales.length);
  const rectified = rectify(
    pieces.map((piece) => piece.seen),
    guess,
  );
  if (rectified === null)
    return refused('card-codes-disagree', { share: Number.NaN, most: limits.disagreement });
  // Edges are found to a third of a pixel at worst; what is left beyond that is no flat card.
  const share = (Math.max(...rectified.offMm) - guess / 3) / loose.side;
  if (!(share <= limits.disagreement / 2))
    return refused('card-codes-disagree', { share, most: limits.disagreement });
  const homography = homographyOfPlane(rectified);
  const [turn = 0] = rectified.turns;
  if (
    pieces.length >= 3 &&
    rectified.turns.every((other) => Math.abs(Math.sin(other - turn)) < Math.sin(parallel))
  ) {
    const found = printStretches(turned(homography, turn), picture);
    const least = Math.min(...found.map(Math.abs));
    const oneSided = found.every((value) => value > 0) || found.every((value) => value < 0);
    if (oneSided && least > limits.stretch)
      return refused('card-stretched', { share: least, most: limits.stretch });
  }
  const [xx, xy, yx, yy] = stretchAt(homography, 0, 0);
  const mmPerPx = 1 / Math.sqrt(Math.abs(xx * yy - xy * yx));
  const floor = pieces.length >= 3 ? limits.manyCodesFloor : limits.fewCodesFloor;
  const seenHalf = Math.max(floor, 2.5 * rectified.scaleError);
  const unmeasured: CardReading = {
    form: 'loose',
    serial: first.serial,
    tag,
    corners: pieces.map(({ corner }) => corner),
    homography,
    mmPerPx,
    xMmPerPx: 1 / Math.hypot(xx, yx),
    yMmPerPx: 1 / Math.hypot(xy, yy),
    interval95: spread(mmPerPx, Math.hypot(seenHalf, limits.unmeasuredScale)),
    seenHalf,
    measured: false,
    angleDeg: (Math.atan2(yx, xx) * 180) / Math.PI,
    halfWindowMm: 0,
    patches: pieces.flatMap((piece) => patchesOf(picture, piece)),
  };
  return options.barMm === null ? done(unmeasured) : withMeasuredBar(unmeasured, options.barMm);
}

/**
 * The sheet with a window, or the loose pieces: whichever lies in the picture.
 *
 * @refuses two-cards - both do, and it cannot be told which of them is meant
 * @refuses as readCard - and as readLooseCard where only pieces were seen
 * @source none: this project's
 */
export function readEitherCard(
  picture: Picture,
  codes: readonly SeenCode[],
  options: CardOptions,
): Result<CardReading, CardProblem> {
  const said = codes.flatMap(({ text }) => readCardText(text) ?? []);
  const sheets = said.flatMap((one) => (one.kind === 'corner' ? one.serial : []));
  const pieces = said.flatMap((one) => (one.kind === 'loose' ? one.serial : []));
  if (sheets.length > 0 && pieces.length > 0)
    return refused('two-cards', { serials: [...sheets, ...pieces] });
  return (pieces.length > 0 ? readLooseCard : readCard)(picture, codes, options);
}
