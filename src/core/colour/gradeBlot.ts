import limits from '../../../data/colour/blot.json' with { type: 'json' };
import { done, type Result, refused } from '../../units/index.ts';
import type { Grade } from '../wash/index.ts';
import type { BlotProblem } from './colourProblem.ts';
import { colourDifference, stainingGrade } from './fastnessGrade.ts';
import { type GradeChances, gradeChances } from './gradeChances.ts';
import { type Lab, labFromLinear } from './lab.ts';
import type { Balance } from './lightPlane.ts';
import type { AreaLight } from './measureArea.ts';

/** What a person must know beside the grade. */
export type BlotNote =
  | 'relative-colour'
  | 'control-is-the-white'
  | 'light-level-only'
  | 'uneven-blot'
  | 'no-blot-seen'
  | 'one-picture';

export interface BlotReading extends GradeChances {
  readonly deltaE: number;
  readonly deltaEGS: number;
  /** Grade of the measured difference itself. */
  readonly grade: Grade;
  /** Noise of the difference for each axis, root mean square. */
  readonly sigma: number;
  readonly control: Lab;
  /** Colour the cloth took on. */
  readonly dye: Lab;
  readonly notes: readonly BlotNote[];
}

/** Places of one picture that were measured, and how their light becomes colour. */
export interface MeasuredCloth {
  /** Clean cloth, one place or several. */
  readonly controls: readonly AreaLight[];
  readonly sample: AreaLight;
  readonly balance: Balance;
  /** False where the control itself had to be taken for the white. */
  readonly balanced: boolean;
  /** Doubt about the light between two places [share]. */
  readonly lightSigma: number;
  readonly contrastSigma: number;
  readonly notes: readonly BlotNote[];
}

const onEachAxis = (of: (axis: keyof Lab) => number): Lab => ({ L: of('L'), a: of('a'), b: of('b') });

/** The mean of colours. */
export const meanLab = (labs: readonly Lab[]): Lab =>
  onEachAxis((axis) => labs.reduce((sum, lab) => sum + lab[axis], 0) / labs.length);

/** Standard deviation of colours on each axis; none for a single one. */
export function spreadOfLabs(labs: readonly Lab[]): Lab {
  const mean = meanLab(labs);
  return onEachAxis((axis) =>
    labs.length < 2
      ? 0
      : Math.sqrt(labs.reduce((sum, lab) => sum + (lab[axis] - mean[axis]) ** 2, 0) / (labs.length - 1)),
  );
}

const blockLabs = (area: AreaLight, balance: Balance): readonly Lab[] =>
  area.blocks.map((block) => labFromLinear(balance(block)));

const size = ({ L, a, b }: Lab): number => Math.hypot(L, a, b) / Math.sqrt(3);

/**
 * Staining grade of cloth measured at clean places and at a stained one.
 *
 * The noise of each axis is the spread of the 3 × 3 blocks of the areas, not divided by their number, because
 * light and cloth drift between neighbouring places and do not average out; several clean places add their own.
 *
 * @param cloth - areas of one picture
 * @param before - what the sample's place was lighter (positive) than the clean places before the test, if known
 * @returns grade of the measured difference, its interval of 95 % and the probability of each grade
 * @refuses blot-area-mixed - a block of an area is off its colour by more than ΔE 3 and a quarter of the stain;
 * blot-cloth-not-white; blot-sample-lighter - a stain is never lighter than the clean cloth; blot-too-noisy - clean
 * cloth could not be told from stained
 * @source iso-105-a04, the grade; workshop-setting, the limits (data/colour/blot.json)
 */
export function gradeBlot(
  cloth: MeasuredCloth,
  before: { readonly offset: Lab; readonly sigma: Lab } | null = null,
): Result<BlotReading, BlotProblem> {
  const { controls, sample, balance, balanced } = cloth;
  const controlLabs = controls.map((place) => labFromLinear(balance(place)));
  const now = meanLab(controlLabs);
  const clean = onEachAxis((axis) => now[axis] + (before?.offset[axis] ?? 0));
  const dye = labFromLinear(balance(sample));

  const raw = meanLab(controls.map(({ light }) => labFromLinear(light)));
  const seen = balanced ? clean : raw;
  const chroma = Math.hypot(seen.a, seen.b);
  const least = balanced ? limits.clothLeastLightness : limits.unbalancedLeastLightness;
  const most = balanced ? limits.clothMostChroma : limits.unbalancedMostChroma;
  if (!(seen.L >= least && chroma <= most))
    return refused('blot-cloth-not-white', { lightness: seen.L, chroma, balanced });

  const cleanSpreads = controls.map((place) => spreadOfLabs(blockLabs(place, balance)));
  const cleanSpread = onEachAxis((axis) =>
    Math.sqrt(cleanSpreads.reduce((sum, spread) => sum + spread[axis] ** 2, 0) / cleanSpreads.length),
  );
  const dyeSpread = spreadOfLabs(blockLabs(sample, balance));
  const between = spreadOfLabs(controlLabs);
  const ofLight = (axis: keyof Lab): number => (axis === 'L' ? (cloth.lightSigma * (clean.L + 16)) / 3 : 0);
  const doubt = onEachAxis((axis) =>
    Math.hypot(cleanSpread[axis], between[axis], ofLight(axis), before?.sigma[axis] ?? 0),
  );
  const sigma = onEachAxis((axis) => Math.max(limits.leastSigma, Math.hypot(doubt[axis], dyeSpread[axis])));
  const lighterBy = dye.L - clean.L;
  if (lighterBy > Math.max(limits.lighterBy, 3 * sigma.L))
    return refused('blot-sample-lighter', { lighterBy });

  const apart = Math.max(limits.blockApart, limits.blockApartShare * colourDifference(clean, dye));
  for (const [name, area] of [
    ...controls.map((control) => ['control', control] as const),
    ['sample', sample] as const,
  ]) {
    const whole = labFromLinear(balance(area));
    const labs = blockLabs(area, balance);
    const alike = labs.filter((lab) => colourDifference(whole, lab) <= apart).length / labs.length;
    if (alike < 1) return refused('blot-area-mixed', { name, keptPercent: Math.round(100 * alike) });
  }

  if (size(doubt) > limits.mostSigma)
    return refused('blot-too-noisy', { sigma: size(doubt), most: limits.mostSigma });

  const isUneven = size(dyeSpread) > Math.max(1, 3 * size(cleanSpread));
  const { deltaE, deltaEGS, grade } = stainingGrade(clean, dye);
  return done({
    ...{ deltaE, deltaEGS, grade, ...gradeChances(stainingGrade, clean, dye, sigma, cloth.contrastSigma) },
    ...{ sigma: size(sigma), control: clean, dye },
    notes: ['relative-colour', ...cloth.notes, ...(isUneven ? (['uneven-blot'] as const) : [])],
  });
}
