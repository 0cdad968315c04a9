import limits from '../../../data/colour/blot.json' with { type: 'json' };
import findLimits from '../../../data/colour/findBlot.json' with { type: 'json' };
import { done, type Result, refused } from '../../units/index.ts';
import { type CardReading, project, unproject } from '../card/index.ts';
import { type CardLight, cardLight } from './cardLight.ts';
import type { AreaName, BlotProblem } from './colourProblem.ts';
import { colourDifference } from './fastnessGrade.ts';
import { findBlot } from './findBlot.ts';
import { type BlotReading, gradeBlot, type MeasuredCloth, meanLab, spreadOfLabs } from './gradeBlot.ts';
import { type Lab, labFromLinear } from './lab.ts';
import { type Area, type AreaLight, areasOverlap, type ColourPicture, measureArea } from './measureArea.ts';
import {
  type CellSquare,
  clippedIn,
  lightOfSquare,
  outlineOf,
  type WindowCells,
  windowCells,
} from './windowCells.ts';

/** Corners of a measured place in the picture [px]. */
export type Outline = readonly (readonly [x: number, y: number])[];

/** A blot read in the card's window, with the places that were measured, to be shown to the person. */
export interface CardBlot extends BlotReading {
  readonly places: { readonly controls: readonly Outline[]; readonly sample: Outline };
}

/** A picture and the card read in it. */
export interface CardPicture {
  readonly picture: ColourPicture;
  readonly card: CardReading;
}

/** Places a person showed [px of the picture]; what is left out is found. */
export interface BlotPlaces {
  readonly control: Area;
  readonly sample: Area;
}

interface Seen {
  readonly light: CardLight;
  readonly cloth: MeasuredCloth;
  readonly places: CardBlot['places'];
}

const cornersOf = ({ x, y, width, height }: Area): Outline => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

const clothOf = (light: CardLight, controls: readonly AreaLight[], sample: AreaLight): MeasuredCloth => ({
  ...{ controls, sample, balance: light.balance, balanced: true },
  ...{ lightSigma: light.offShare, contrastSigma: light.contrastSigma, notes: [] },
});

function fromSquares(
  cells: WindowCells,
  light: CardLight,
  controls: readonly CellSquare[],
  sample: CellSquare,
): Result<Seen, BlotProblem> {
  for (const [name, square] of [
    ['sample', sample] as const,
    ...controls.map((control) => ['control', control] as const),
  ]) {
    const share = clippedIn(cells, square);
    if (share > limits.clippedShare)
      return refused('blot-clipped', { name, sharePercent: Math.round(100 * share) });
  }
  return done({
    light,
    cloth: clothOf(
      light,
      controls.map((square) => lightOfSquare(cells, square)),
      lightOfSquare(cells, sample),
    ),
    places: {
      controls: controls.map((square) => outlineOf(cells, square)),
      sample: outlineOf(cells, sample),
    },
  });
}

/** Measures places a person showed; they must lie in the window. */
function fromPlaces(
  { picture, card }: CardPicture,
  light: CardLight,
  { control, sample }: BlotPlaces,
): Result<Seen, BlotProblem> {
  if (areasOverlap(control, sample))
    return refused('blot-areas-overlap', { one: 'control' as const, other: 'sample' as const });
  const lights: AreaLight[] = [];
  for (const [name, area] of [
    ['control', control],
    ['sample', sample],
  ] as const satisfies readonly (readonly [AreaName, Area])[]) {
    const outside = cornersOf(area).some(([x, y]) =>
      unproject(card.homography, x, y).some((mm) => Math.abs(mm) > card.halfWindowMm),
    );
    if (outside) return refused('blot-outside-window', { name });
    const measured = measureArea(picture, area, name);
    if (!measured.ok) return measured;
    lights.push(measured.value);
  }
  const [clean, stained] = lights;
  if (clean === undefined || stained === undefined) throw new Error('both areas were measured above');
  return done({
    light,
    cloth: clothOf(light, [clean], stained),
    places: { controls: [cornersOf(control)], sample: cornersOf(sample) },
  });
}

/**
 * Staining grade of a blot in the window of the weave card, from one photograph.
 *
 * @param picture - sRGB picture the card was read in; the cloth fills the window
 * @param card - from `readCard`
 * @param places - where a person showed clean cloth and blot; found when left out
 * @returns the grade with its chances, and the places measured
 * @refuses what cardLight, findBlot, measureArea and gradeBlot refuse; blot-outside-window - a place shown lies
 * outside the window
 * @source iso-105-a04, the grade; workshop-setting, the limits (data/colour/blot.json)
 */
export function readCardBlot(
  picture: ColourPicture,
  card: CardReading,
  places?: BlotPlaces,
): Result<CardBlot, BlotProblem> {
  const lit = cardLight(picture, card);
  if (!lit.ok) return lit;
  const light = lit.value;
  let seen: Result<Seen, BlotProblem>;
  let isSeen = true;
  if (places === undefined) {
    const cells = windowCells(picture, card, light);
    const found = findBlot(cells);
    if (!found.ok) return found;
    isSeen = found.value.seen;
    seen = fromSquares(cells, light, found.value.controls, found.value.sample);
  } else seen = fromPlaces({ picture, card }, light, places);
  if (!seen.ok) return seen;
  const graded = gradeBlot({
    ...seen.value.cloth,
    notes: isSeen ? ['one-picture'] : ['one-picture', 'no-blot-seen'],
  });
  return graded.ok ? done({ ...graded.value, places: seen.value.places }) : graded;
}

/** The place of the other picture that shows the same part of the window, as an upright rectangle. */
function samePlace(area: Area, from: CardReading, to: CardReading): Area {
  const middle = unproject(from.homography, area.x + area.width / 2, area.y + area.height / 2);
  const [x, y] = project(to.homography, ...middle);
  const [width, height] = [area.width, area.height].map((px) =>
    Math.max(1, Math.round((px * from.mmPerPx) / to.mmPerPx)),
  ) as [number, number];
  return { x: Math.round(x - width / 2), y: Math.round(y - height / 2), width, height };
}

const labsOf = ({ cloth }: Seen, of: readonly AreaLight[]): readonly Lab[] =>
  of.map((place) => labFromLinear(cloth.balance(place)));

const less = (p: Lab, q: Lab): Lab => ({ L: p.L - q.L, a: p.a - q.a, b: p.b - q.b });

/**
 * Staining grade of a blot from two photographs: the cloth before the test and after it, under the same card.
 *
 * The clean cloth of the second picture is the measure, moved by what the blot's place differed from it before.
 *
 * @param before - the cloth untested
 * @param after - the same cloth after the test
 * @param places - in the picture after; found when left out
 * @returns the grade with its chances, and the places measured in the picture after
 * @refuses what readCardBlot refuses; blot-other-card; blot-before-stained - the cloth was stained before the test,
 * or the pictures are swapped; blot-control-moved - the clean cloth differs by more than ΔE 3 between the pictures
 * @source iso-105-a04, the grade; workshop-setting, the limits (data/colour/blot.json)
 */
export function readBlotPair(
  before: CardPicture,
  after: CardPicture,
  places?: BlotPlaces,
): Result<CardBlot, BlotProblem> {
  if (before.card.serial !== after.card.serial)
    return refused('blot-other-card', { before: before.card.serial, after: after.card.serial });
  const [litBefore, litAfter] = [before, after].map(({ picture, card }) => cardLight(picture, card));
  if (litBefore === undefined || litAfter === undefined) throw new Error('two pictures were lit above');
  if (!litBefore.ok) return litBefore;
  if (!litAfter.ok) return litAfter;
  const cellsBefore = windowCells(before.picture, before.card, litBefore.value);
  // What the cloth had before is taken off where the blot lies; a file's coarse colours alone step by ΔE 2.
  const earlier = findBlot(cellsBefore, findLimits.stainedBefore);
  let isSeen = true;
  let pair: readonly [Result<Seen, BlotProblem>, Result<Seen, BlotProblem>];
  if (places === undefined) {
    const cells = windowCells(after.picture, after.card, litAfter.value);
    const found = findBlot(cells);
    if (!found.ok) return found;
    isSeen = found.value.seen;
    if (!earlier.ok || earlier.value.seen) return refused('blot-before-stained', { afterClean: !isSeen });
    const { controls, sample } = found.value;
    pair = [
      fromSquares(cellsBefore, litBefore.value, controls, sample),
      fromSquares(cells, litAfter.value, controls, sample),
    ];
  } else {
    const there: BlotPlaces = {
      control: samePlace(places.control, after.card, before.card),
      sample: samePlace(places.sample, after.card, before.card),
    };
    pair = [fromPlaces(before, litBefore.value, there), fromPlaces(after, litAfter.value, places)];
  }
  const [was, is] = pair;
  if (!was.ok) return was;
  if (!is.ok) return is;
  const controlsWere = labsOf(was.value, was.value.cloth.controls);
  const controlWas = meanLab(controlsWere);
  const moved = colourDifference(controlWas, meanLab(labsOf(is.value, is.value.cloth.controls)));
  if (moved > limits.controlMoved)
    return refused('blot-control-moved', { deltaE: moved, most: limits.controlMoved });
  const sampleWas = labFromLinear(was.value.cloth.balance(was.value.cloth.sample));
  const graded = gradeBlot(
    { ...is.value.cloth, notes: isSeen ? [] : ['no-blot-seen'] },
    { offset: less(sampleWas, controlWas), sigma: spreadOfLabs(controlsWere) },
  );
  return graded.ok ? done({ ...graded.value, places: is.value.places }) : graded;
}
