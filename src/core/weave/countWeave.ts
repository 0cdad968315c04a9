import { done, type Problem, type Result, refused } from '../../units/index.ts';
import type { Axis } from './candidate.ts';
import type { FollowedStrip } from './followed.ts';
import { confidenceOf, distinctMeasured, type LikelyRepeat, likelihoods } from './likely.ts';
import { type NodesHint, nodesHint } from './nodes.ts';
import type { Picture, Window } from './picture.ts';
import type { MeasuredRepeat } from './repeat.ts';
import { mostDeg, type Survey, survey } from './survey.ts';

export type WeaveProblem =
  | Problem<
      'weave-window-outside',
      { readonly window: Window; readonly width: number; readonly height: number }
    >
  | Problem<
      'weave-picture-too-small',
      { readonly width: number; readonly height: number; readonly least: number }
    >
  | Problem<'weave-not-seen', { readonly axis: Axis | 'both' }>
  | Problem<'weave-too-fine', { readonly axis: Axis; readonly pitchPx: number; readonly least: number }>
  | Problem<
      'weave-undecided',
      {
        readonly axis: Axis;
        readonly pitchesPx: readonly number[];
        readonly candidates: readonly WeaveCandidate[];
      }
    >
  | Problem<
      'taps-not-usable',
      { readonly reason: 'along-no-axis' | 'too-few' | 'too-close' | 'same-axis-twice' }
    >;

/** Two places a person tapped and the number of repeats between them. */
export interface Taps {
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
  readonly repeats: number;
}

export interface WeaveOptions {
  /** Part of the picture to look at; the whole of it when absent. */
  readonly window?: Window;
  readonly taps?: readonly Taps[];
  /** Repeats a person saw drawn over the picture and found right [px]. */
  readonly confirmed?: { readonly weftwisePx: number; readonly warpwisePx: number };
}

/** How a count along an axis came about. */
export type WeaveBasis = 'automatic' | 'confirmed' | 'tapped';

export interface AxisCount {
  /** The visible repeat at the window's centre [px of the picture]. */
  readonly pitchPx: number;
  readonly pitchInterval95: readonly [number, number];
  readonly confidence: number;
  readonly basis: WeaveBasis;
  /** Repeats followed along each strip. */
  readonly strips: readonly FollowedStrip[];
}

/** A pair of repeats that may be the visible ones [px], with its share of what speaks for all of them. */
export interface WeaveCandidate {
  readonly weftwise: number;
  readonly warpwise: number;
  readonly weight: number;
}

/** What was counted, in pixels; scale and nodes per knot come after. */
export interface WeaveCount {
  readonly weftwise: AxisCount;
  readonly warpwise: AxisCount;
  /** Direction of the wefts from the picture's horizontal, clockwise [°]. */
  readonly angleDeg: number;
  readonly candidates: readonly WeaveCandidate[];
  readonly window: Window;
  /** What colour changes say about nodes per knot; null where too little colour changes. */
  readonly nodesHint: NodesHint | null;
}

const leastSide = 96;
const leastPitchPx = 3.6;
/** Below this an answer is no better than a guess between factors. */
const leastConfidence = 0.685;

const notSeen = (axis: Axis | 'both'): Result<never, WeaveProblem> => refused('weave-not-seen', { axis });

const axes = ['weftwise', 'warpwise'] as const;

interface Tapped {
  readonly axis: Axis;
  readonly pitchPx: number;
}

function readTaps({ directions }: Survey, taps: readonly Taps[]): Result<readonly Tapped[], WeaveProblem> {
  const read: Tapped[] = [];
  for (const { from, to, repeats } of taps) {
    if (!(repeats >= 2)) return refused('taps-not-usable', { reason: 'too-few' });
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const length = Math.hypot(dx, dy);
    if (!(length >= 3 * repeats)) return refused('taps-not-usable', { reason: 'too-close' });
    // Repeats are crossed along the normal of their own family, whatever the line between the taps.
    const columns = Math.abs(dx * Math.cos(directions.columns) + dy * Math.sin(directions.columns));
    const rows = Math.abs(-dx * Math.sin(directions.rows) + dy * Math.cos(directions.rows));
    const axis = columns >= rows ? 'weftwise' : 'warpwise';
    if (Math.max(columns, rows) < 0.85 * length)
      return refused('taps-not-usable', { reason: 'along-no-axis' });
    if (read.some((other) => other.axis === axis))
      return refused('taps-not-usable', { reason: 'same-axis-twice' });
    read.push({ axis, pitchPx: Math.max(columns, rows) / repeats });
  }
  return done(read);
}

interface Pair {
  readonly weftwise: LikelyRepeat;
  readonly warpwise: LikelyRepeat;
  readonly weight: number;
}

/** Every pairing of the likely repeats of both axes, heaviest first. */
function pairUp(weftwise: readonly LikelyRepeat[], warpwise: readonly LikelyRepeat[]): readonly Pair[] {
  const pairs = weftwise.flatMap((across) =>
    warpwise.map((along) => ({
      weftwise: across,
      warpwise: along,
      weight: across.likelihood * along.likelihood,
    })),
  );
  const sum = pairs.reduce((total, { weight }) => total + weight, 0);
  return pairs
    .map((pair) => ({ ...pair, weight: sum > 0 ? pair.weight / sum : 0 }))
    .sort((a, b) => b.weight - a.weight);
}

const axisCount = (repeat: MeasuredRepeat, confidence: number, basis: WeaveBasis): AxisCount => ({
  pitchPx: repeat.pitchPx,
  pitchInterval95: [repeat.pitchPx * (1 - repeat.halfInterval), repeat.pitchPx * (1 + repeat.halfInterval)],
  confidence,
  basis,
  strips: repeat.follow(),
});

function isInside(picture: Picture, { x, y, width, height }: Window): boolean {
  return (
    [x, y, width, height].every(Number.isInteger) &&
    x >= 0 &&
    y >= 0 &&
    x + width <= picture.width &&
    y + height <= picture.height &&
    width > 0 &&
    height > 0
  );
}

/**
 * Counts columns and rows of a weave in a picture: what the eye sees repeat, along both axes.
 *
 * Several sizes of the picture are looked at; every repeat that may be the visible one is kept as a
 * candidate with its weight; the heaviest are measured in strips, which tells how likely each is; the
 * likeliest pair is followed across the window.
 * Taps or a confirmed pair decide the factor; the picture then only refines within a tenth.
 *
 * @param picture - upright sRGB
 * @param options - window [px], taps, a confirmed pair
 * @refuses weave-window-outside - the window is not wholly inside the picture
 * @refuses weave-picture-too-small - under 96 px on a side
 * @refuses weave-not-seen - nothing repeats steadily along an axis
 * @refuses weave-too-fine - the repeat is under 3.6 px, where the camera's own raster is mistaken for weave
 * @refuses weave-undecided - something repeats, but no factor is likely enough to be named
 * @refuses taps-not-usable - taps that lie along no axis, too close, or over fewer than two repeats
 * @source none: this project's; its accuracy is shown by bench/weave.ts
 */
export function countWeave(picture: Picture, options: WeaveOptions = {}): Result<WeaveCount, WeaveProblem> {
  const window = options.window ?? { x: 0, y: 0, width: picture.width, height: picture.height };
  if (!isInside(picture, window))
    return refused('weave-window-outside', { window, width: picture.width, height: picture.height });
  if (Math.min(window.width, window.height) < leastSide)
    return refused('weave-picture-too-small', {
      width: window.width,
      height: window.height,
      least: leastSide,
    });

  const seen = survey(picture, window, mostDeg);
  const taps = readTaps(seen, options.taps ?? []);
  if (!taps.ok) return taps;
  const given = (axis: Axis): number | undefined => {
    const tapped = taps.value.find((one) => one.axis === axis);
    if (tapped !== undefined) return tapped.pitchPx;
    return axis === 'weftwise' ? options.confirmed?.weftwisePx : options.confirmed?.warpwisePx;
  };
  const measured = (axis: Axis): readonly MeasuredRepeat[] => {
    const pitchPx = given(axis);
    return distinctMeasured(
      seen,
      axis,
      pitchPx === undefined ? undefined : [{ pitchPx, weight: 1, scale: 1 }],
    );
  };
  const found = { weftwise: likelihoods(measured('weftwise')), warpwise: likelihoods(measured('warpwise')) };
  const pairs = pairUp(found.weftwise, found.warpwise);
  const [chosen] = pairs;
  if (chosen === undefined) {
    const missing = axes.filter((axis) => found[axis].length === 0);
    return notSeen(missing.length === 1 && missing[0] !== undefined ? missing[0] : 'both');
  }

  const candidates = pairs
    .filter(({ weight }, index) => index === 0 || weight >= 0.01)
    .slice(0, 6)
    .map((pair) => ({
      weftwise: pair.weftwise.repeat.pitchPx,
      warpwise: pair.warpwise.repeat.pitchPx,
      weight: pair.weight,
    }));
  const counts = new Map<Axis, AxisCount>();
  for (const axis of axes) {
    const { repeat, likelihood } = chosen[axis];
    const confidence = confidenceOf(likelihood);
    const known = given(axis);
    if (known !== undefined) {
      // The person decided the factor; the picture may move it by a tenth, no more.
      const agrees = Math.abs(Math.log(repeat.pitchPx / known)) < 0.1;
      const kept = agrees ? repeat : { ...repeat, pitchPx: known, halfInterval: 0.05 };
      const basis = taps.value.some((one) => one.axis === axis) ? 'tapped' : 'confirmed';
      counts.set(axis, axisCount(kept, agrees ? Math.max(0.9, confidence) : 0.6, basis));
      continue;
    }
    if (repeat.pitchPx < leastPitchPx)
      return refused('weave-too-fine', { axis, pitchPx: repeat.pitchPx, least: leastPitchPx });
    if (confidence < leastConfidence) {
      const steady = repeat.field.within >= 0.5 && repeat.field.height > 0.6;
      return steady
        ? refused('weave-undecided', {
            axis,
            pitchesPx: found[axis].map((one) => one.repeat.pitchPx),
            candidates,
          })
        : notSeen(axis);
    }
    counts.set(axis, axisCount(repeat, confidence, 'automatic'));
  }
  const [weftwise, warpwise] = [counts.get('weftwise'), counts.get('warpwise')];
  if (weftwise === undefined || warpwise === undefined) return notSeen('both');
  return done({
    weftwise,
    warpwise,
    angleDeg: (seen.directions.rows * 180) / Math.PI,
    candidates,
    window,
    nodesHint: nodesHint(seen, chosen.weftwise.repeat, chosen.warpwise.repeat.pitchPx),
  });
}
