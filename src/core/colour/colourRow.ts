import blotLimits from '../../../data/colour/blot.json' with { type: 'json' };
import limits from '../../../data/colour/compare.json' with { type: 'json' };
import type { Grade } from '../wash/index.ts';
import { colourChangeGrade } from './fastnessGrade.ts';
import { type GradeChances, gradeChances } from './gradeChances.ts';
import { type Lab, type LinearRgb, labFromLinear, linearFromByte } from './lab.ts';
import type { LinearPicture } from './linearPicture.ts';
import { type Area, robustLight } from './measureArea.ts';

/** A colour of the rug, shown by a person on the first picture. */
export interface NamedArea {
  readonly name: string;
  readonly area: Area;
}

/** What became of one colour. */
export interface ColourRow extends GradeChances {
  readonly name: string;
  readonly before: Lab;
  readonly after: Lab;
  readonly deltaEF: number;
  /** Grade of the grey scale for change in colour. */
  readonly grade: Grade;
  /** Noise of the difference for each axis, root mean square. */
  readonly sigma: number;
  /** Turn of the hue, anticlockwise in the plane of a* and b* [°]. */
  readonly hueTurnDeg: number;
  /** The hue moved, and neither noise nor a veil of soil that went or came explains it: dye, not soil. */
  readonly hueMoved: boolean;
}

/** A colour that could not be measured, and why. */
export interface UnmeasuredColour {
  readonly name: string;
  readonly why: 'too-small' | 'not-in-both' | 'clipped';
}

/** Doubt that both pictures share: of the light on L* [share of light], of the cards on each axis, of the contrast. */
export interface SharedDoubt {
  readonly lightAt: (x: number, y: number) => number;
  readonly perAxis: number;
  readonly contrastSigma: number;
}

const hueOf = ({ a, b }: Lab): number => Math.atan2(b, a);

/** The part of a difference that turns the hue. */
const hueDifference = (p: Lab, q: Lab): number =>
  2 * Math.sqrt(Math.hypot(p.a, p.b) * Math.hypot(q.a, q.b)) * Math.abs(Math.sin((hueOf(p) - hueOf(q)) / 2));

const soils = limits.soils.map((soil): LinearRgb => {
  const [red = 0, green = 0, blue = 0] = soil.map(linearFromByte);
  return [red, green, blue];
});

/**
 * How far a colour is from the cleaner one under a veil of soil, at the best: its hue in full, lightness and
 * chroma by half, since a veil is never quite even.
 */
function offVeil(cleaner: LinearRgb, soiled: Lab): number {
  let least = Number.POSITIVE_INFINITY;
  for (const soil of soils)
    for (let share = 0; share <= limits.soilMost; share += 0.02) {
      const of = (band: 0 | 1 | 2): number => (1 - share) * cleaner[band] + share * soil[band];
      const veiled = labFromLinear([of(0), of(1), of(2)]);
      const dC = Math.hypot(veiled.a, veiled.b) - Math.hypot(soiled.a, soiled.b);
      least = Math.min(least, Math.hypot(hueDifference(veiled, soiled), dC / 2, (veiled.L - soiled.L) / 2));
    }
  return least;
}

/** Mean colours of an area and of its nine parts in both pictures. */
function measured(before: LinearPicture, after: LinearPicture, area: Area) {
  const side = blotLimits.blocksPerSide;
  const blocks = Array.from({ length: side * side }, (): [LinearRgb[], LinearRgb[]] => [[], []]);
  const all: [LinearRgb[], LinearRgb[]] = [[], []];
  let [asked, clipped] = [0, 0];
  for (let y = area.y; y < area.y + area.height; y += 1)
    for (let x = area.x; x < area.x + area.width; x += 1) {
      asked += 1;
      const at = y * before.wide + x;
      const of = ({ rgb }: LinearPicture): LinearRgb => [
        rgb[3 * at] ?? Number.NaN,
        rgb[3 * at + 1] ?? Number.NaN,
        rgb[3 * at + 2] ?? Number.NaN,
      ];
      const [p, q] = [of(before), of(after)];
      if (x < 0 || x >= before.wide || Number.isNaN(p[0]) || Number.isNaN(q[0])) continue;
      clipped += Math.max(before.clipped[at] ?? 0, after.clipped[at] ?? 0);
      const down = Math.floor(((y - area.y) * side) / area.height);
      const along = Math.floor(((x - area.x) * side) / area.width);
      for (const [which, light] of [p, q].entries()) {
        all[which]?.push(light);
        blocks[down * side + along]?.[which]?.push(light);
      }
    }
  const labs = ([p, q]: readonly [LinearRgb[], LinearRgb[]]): readonly [Lab, Lab] => [
    labFromLinear(robustLight(p).light),
    labFromLinear(robustLight(q).light),
  ];
  const lights = [robustLight(all[0]).light, robustLight(all[1]).light] as const;
  return {
    lights,
    ...{ share: all[0].length / asked, clippedShare: clipped / Math.max(1, all[0].length) },
    whole: labs(all),
    parts: blocks.filter(([p]) => p.length > 0).map(labs),
  };
}

/**
 * What became of one colour between two pictures that lie on each other.
 *
 * @param before - the first picture, corrected
 * @param after - the second in the first one's view, corrected
 * @param colour - its name and where it is [px of these pictures]
 * @param doubt - what both pictures share
 * @returns the colours, ΔE_F with its grade, interval and chances, and whether the hue moved; or why it was not measured
 * @source iso-105-a05, the grade; workshop-setting, the limits (data/colour/compare.json)
 */
export function colourRow(
  before: LinearPicture,
  after: LinearPicture,
  { name, area }: NamedArea,
  doubt: SharedDoubt,
): ColourRow | UnmeasuredColour {
  if (area.width * area.height < limits.smallestArea) return { name, why: 'too-small' };
  const { lights, share, clippedShare, whole, parts } = measured(before, after, area);
  if (share < 0.9) return { name, why: 'not-in-both' };
  if (clippedShare > limits.clippedShare) return { name, why: 'clipped' };
  const [was, is] = whole;
  // Parts of one colour differ by pile and by pictures not lying quite on each other; their mean by a third of that.
  const spread = (axis: keyof Lab): number => {
    const steps = parts.map(([p, q]) => q[axis] - p[axis]);
    const mean = steps.reduce((sum, step) => sum + step, 0) / steps.length;
    return (
      Math.sqrt(steps.reduce((sum, step) => sum + (step - mean) ** 2, 0) / Math.max(1, steps.length - 1)) / 3
    );
  };
  const light = (doubt.lightAt(area.x + area.width / 2, area.y + area.height / 2) * (was.L + 16)) / 3;
  const chroma = Math.sqrt(Math.hypot(was.a, was.b) * Math.hypot(is.a, is.b));
  // A phone's filters are not the eye's: with another light a strong colour moves though nothing changed.
  const sigmaOf = (axis: keyof Lab): number =>
    Math.max(
      limits.leastSigma,
      Math.hypot(spread(axis), doubt.perAxis, axis === 'L' ? light : limits.chromaShare * chroma),
    );
  const sigma: Lab = { L: sigmaOf('L'), a: sigmaOf('a'), b: sigmaOf('b') };
  const { deltaEF, grade } = colourChangeGrade(was, is);
  const turn = hueOf(is) - hueOf(was);
  const hueTurn = Math.atan2(Math.sin(turn), Math.cos(turn));
  const hueBound = Math.max(
    ...[limits.hueLeast, limits.hueTurnShare * chroma, limits.deviations * Math.max(sigma.a, sigma.b)],
  );
  return {
    ...{ name, before: was, after: is, deltaEF, grade },
    ...gradeChances(colourChangeGrade, was, is, sigma, doubt.contrastSigma),
    sigma: Math.hypot(sigma.L, sigma.a, sigma.b) / Math.sqrt(3),
    hueTurnDeg: (hueTurn * 180) / Math.PI,
    hueMoved:
      hueDifference(was, is) > hueBound &&
      Math.min(offVeil(lights[1], was), offVeil(lights[0], is)) > hueBound,
  };
}
