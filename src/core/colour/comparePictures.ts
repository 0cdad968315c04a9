import limits from '../../../data/colour/compare.json' with { type: 'json' };
import { done, type Result, refused } from '../../units/index.ts';
import {
  type CardReading,
  type Homography,
  homographyOf,
  type PointPair,
  project,
  unproject,
} from '../card/index.ts';
import { alignPictures, betweenGrids } from './alignPictures.ts';
import type { CardLight } from './cardLight.ts';
import type { AlignedFrom, BlotProblem, ColourProblem, PairPicture } from './colourProblem.ts';
import {
  type ColourRow,
  colourRow,
  type NamedArea,
  type SharedDoubt,
  type UnmeasuredColour,
} from './colourRow.ts';
import { controlDifference, corrected, lightOf, through, withoutCard } from './correctedPicture.ts';
import { type DifferenceMap, differenceMap } from './differenceMap.ts';
import { type Lab, labFromLinear } from './lab.ts';
import { type LinearPicture, seenThrough, shownPicture, softened } from './linearPicture.ts';
import type { Area, ColourPicture } from './measureArea.ts';
import { byteLight } from './toneMatch.ts';

/** A place in a picture [px]. */
export type Point = readonly [x: number, y: number];

/** One of two pictures of a rug. */
export interface CompareSide {
  readonly picture: ColourPicture;
  readonly card: CardReading;
  /** The rug's corners, in the same order on both pictures. */
  readonly corners?: readonly [Point, Point, Point, Point];
}

/** A change with half of its interval of 95 %. */
export interface Change {
  readonly by: number;
  readonly half95: number;
}

/** What a person must know beside the figures. */
export type CompareNote = 'other-card' | 'plain-not-verified' | 'maybe-swapped' | 'light-known-at-card';

/** Two pictures of one rug, laid on each other and each corrected by its card. */
export interface Comparison {
  /** Both in the first picture's view, of one size; black where the second shows nothing. */
  readonly before: ColourPicture;
  readonly after: ColourPicture;
  /** Pixels of these pictures to one pixel of the first as it was given. */
  readonly scale: number;
  readonly map: DifferenceMap;
  readonly middleDeltaE: number;
  readonly colours: readonly ColourRow[];
  readonly unmeasured: readonly UnmeasuredColour[];
  /** Over the whole rug. */
  readonly lightness: Change;
  readonly chroma: Change;
  /** Names of the colours whose hue moved. */
  readonly hueMoved: readonly string[];
  /** How far the card's greys, which cannot have changed, differ between the pictures. */
  readonly control: { readonly deltaE: number };
  readonly alignment: { readonly from: AlignedFrom; readonly likeness: number | null };
  readonly sameCard: boolean;
  readonly notes: readonly CompareNote[];
}

const isInside =
  (corners: readonly Point[]) =>
  (x: number, y: number): boolean => {
    let inside = false;
    for (const [index, [x1, y1]] of corners.entries()) {
      const [x2, y2] = corners[(index + 1) % corners.length] ?? [0, 0];
      if (y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1) inside = !inside;
    }
    return inside;
  };

/** First guess of the homography: from the rug's corners, or from the card where it was left lying. */
function guess(before: CompareSide, after: CompareSide): Homography | null {
  const half = before.card.halfWindowMm;
  const pairs: readonly PointPair[] =
    before.corners !== undefined && after.corners !== undefined
      ? before.corners.map((plane, index) => ({ plane, picture: after.corners?.[index] ?? [0, 0] }))
      : [
          [-half, -half],
          [half, -half],
          [half, half],
          [-half, half],
        ].map(([x = 0, y = 0]) => ({
          plane: project(before.card.homography, x, y),
          picture: project(after.card.homography, x, y),
        }));
  return homographyOf(pairs);
}

const lightChange =
  (light: CardLight, card: CardReading) =>
  (x: number, y: number): number => {
    const [mmX, mmY] = unproject(card.homography, x, y);
    return light.fallPerMm[0] * mmX + light.fallPerMm[1] * mmY;
  };

const cardRefused = (picture: PairPicture, problem: BlotProblem) =>
  refused('compare-card-light', { picture, because: problem.code });

const inFrame = (area: Area, by: number): Area => {
  const [x, y] = [Math.ceil(area.x / by), Math.ceil(area.y / by)];
  return {
    ...{ x, y },
    width: Math.max(0, Math.floor((area.x + area.width) / by) - x),
    height: Math.max(0, Math.floor((area.y + area.height) / by) - y),
  };
};

/** Mean change of L* and C* over the pixels held. */
function meanChange(before: LinearPicture, after: LinearPicture, held: Uint8Array) {
  let [count, lightness, chroma, level] = [0, 0, 0, 0];
  const step = Math.max(1, Math.floor(Math.sqrt(held.length / 20_000)));
  for (let y = 0; y < before.high; y += step)
    for (let x = 0; x < before.wide; x += step) {
      const at = y * before.wide + x;
      if (held[at] !== 1) continue;
      const of = ({ rgb }: LinearPicture): Lab =>
        labFromLinear([rgb[3 * at] ?? 0, rgb[3 * at + 1] ?? 0, rgb[3 * at + 2] ?? 0]);
      const [was, is] = [of(before), of(after)];
      lightness += is.L - was.L;
      chroma += Math.hypot(is.a, is.b) - Math.hypot(was.a, was.b);
      level += was.L;
      count += 1;
    }
  return { lightness: lightness / count, chroma: chroma / count, level: level / count };
}

/**
 * Compares two photographs of one rug, each corrected by the weave card in it.
 *
 * @param before - the first picture, its card and the rug's corners
 * @param after - the second; without corners on both, the card must lie at the same place of the rug
 * @param colours - the rug's colours, shown on the first picture
 * @returns both pictures laid on each other, the map of ΔE00, each colour's change with its grade and interval
 * @refuses what cardLight or looseLight refuses, naming the picture; compare-corners - corners that make no plane or
 * hold nothing both pictures show, or none given with loose pieces;
 * compare-other-rug - the patterns do not fit; compare-control-moved - the card's own greys differ by more than ΔE 3
 * @source iso-105-a05, the grades; sharma-wu-dalal-2005, the map; workshop-setting, the limits
 * (data/colour/compare.json)
 */
export function comparePictures(
  before: CompareSide,
  after: CompareSide,
  colours: readonly NamedArea[],
): Result<Comparison, ColourProblem> {
  const was = lightOf(before);
  if (!was.ok) return cardRefused('before', was.problem);
  const is = lightOf(after);
  if (!is.ok) return cardRefused('after', is.problem);
  const start = guess(before, after);
  if (start === null) return refused('compare-corners', {});

  // The sheet and the loose pieces of one serial are two prints.
  const sameCard = before.card.serial === after.card.serial && before.card.form === after.card.form;
  const contrast = sameCard ? was.value.contrast : (was.value.contrast + is.value.contrast) / 2;
  const ofBefore = byteLight(was.value, null, contrast);
  const ofAfter = byteLight(is.value, sameCard ? was.value : null, contrast);
  const deltaE = controlDifference(was.value, is.value, [
    through(was.value, ofBefore),
    through(is.value, ofAfter),
  ]);
  if (sameCard && deltaE > limits.controlMoved)
    return refused('compare-control-moved', { deltaE, most: limits.controlMoved });

  const by = Math.max(
    1,
    Math.ceil(Math.sqrt((before.picture.widthPx * before.picture.heightPx) / limits.mostPx)),
  );
  const [x0, y0] = [before.picture.widthPx / 2, before.picture.heightPx / 2];
  const [here, there] = [project(start, x0, y0), project(start, x0 + 10, y0)];
  const byAfter = Math.max(1, Math.floor((by * Math.hypot(there[0] - here[0], there[1] - here[1])) / 10));
  const first = corrected(before.picture, was.value, ofBefore, contrast, by);
  const small = { picture: corrected(after.picture, is.value, ofAfter, contrast, byAfter), by: byAfter };
  const from: AlignedFrom = before.corners !== undefined && after.corners !== undefined ? 'corners' : 'card';
  const inside = before.corners === undefined ? () => true : isInside(before.corners);
  const [bare, bareLater] = [
    withoutCard(first, by, before.card),
    withoutCard(small.picture, byAfter, after.card),
  ];
  const { homography, likeness } = alignPictures(
    { picture: bare, by },
    { picture: bareLater, by: byAfter },
    start,
    inside,
  );
  if (likeness !== null && !(likeness >= limits.leastLikeness))
    return refused('compare-other-rug', { likeness, least: limits.leastLikeness, from });
  if (likeness === null && from === 'card') return refused('compare-corners', {});

  const grids = betweenGrids(homography, by, byAfter);
  const second = seenThrough(small.picture, grids, first.wide, first.high);
  const secondBare = seenThrough(bareLater, grids, first.wide, first.high);
  const held = new Uint8Array(first.clipped.length).map((_, at) => {
    const isShown = !Number.isNaN((bare.rgb[3 * at] ?? 0) + (secondBare.rgb[3 * at] ?? 0));
    return isShown && inside((at % first.wide) * by, Math.floor(at / first.wide) * by) ? 1 : 0;
  });
  if (!held.includes(1)) return refused('compare-corners', {});

  const [fallWas, fallIs] = [lightChange(was.value, before.card), lightChange(is.value, after.card)];
  const off = Math.hypot(
    was.value.gain === null ? 0 : was.value.offShare,
    is.value.gain === null ? 0 : is.value.offShare,
  );
  const doubt: SharedDoubt = {
    lightAt: (x, y) =>
      Math.hypot(
        limits.lightSigma,
        off,
        fallWas(x * by, y * by) - fallIs(...project(homography, x * by, y * by)),
      ),
    perAxis: Math.hypot(sameCard ? 0 : limits.otherCardSigma, deltaE / 4),
    // Dyed wool is far from the paper and the greys: its contrast is known less well than a faint stain's.
    contrastSigma: Math.max(limits.contrastSigma, was.value.contrastSigma),
  };
  const rows = colours.map(({ name, area }) =>
    colourRow(bare, secondBare, { name, area: inFrame(area, by) }, doubt),
  );
  const measured = rows.filter((row): row is ColourRow => 'grade' in row);
  const mean = meanChange(first, second, held);
  const middle = { x: first.wide / 2, y: first.high / 2 };
  const lightHalf =
    2 * Math.hypot((doubt.lightAt(middle.x, middle.y) * (mean.level + 16)) / 3, doubt.perAxis);
  const [shownBefore, shownAfter] = [first, second].map(shownPicture);
  if (shownBefore === undefined || shownAfter === undefined) throw new Error('two pictures were drawn above');
  const soft = [first, second].map((picture) => shownPicture(softened(picture, limits.mapReach, held)));
  const map = soft[0] === undefined || soft[1] === undefined ? null : differenceMap(soft[0], soft[1]);
  if (map === null) throw new Error('two pictures were softened above');
  const shown = map.deltaE.map((value, at) => (held[at] === 1 ? value : Number.NaN));
  const compared = shown.filter((value) => !Number.isNaN(value)).sort();
  const notes: readonly (CompareNote | false)[] = [
    !sameCard && 'other-card',
    likeness === null && 'plain-not-verified',
    mean.lightness < -lightHalf && 'maybe-swapped',
    (was.value.gain === null || is.value.gain === null) && 'light-known-at-card',
  ];
  return done({
    ...{ before: shownBefore, after: shownAfter, scale: 1 / by, map: { ...map, deltaE: shown } },
    middleDeltaE: compared[compared.length >> 1] ?? Number.NaN,
    colours: measured,
    unmeasured: rows.filter((row): row is UnmeasuredColour => 'why' in row),
    lightness: { by: mean.lightness, half95: lightHalf },
    chroma: { by: mean.chroma, half95: 2 * Math.max(limits.leastSigma, doubt.perAxis) },
    hueMoved: measured.filter(({ hueMoved }) => hueMoved).map(({ name }) => name),
    control: { deltaE },
    ...{ alignment: { from, likeness }, sameCard },
    notes: notes.filter((note) => note !== false),
  });
}
