import limits from '../../../data/colour/blot.json' with { type: 'json' };
import { done, type Result, refused } from '../../units/index.ts';
import type { Grade } from '../wash/index.ts';
import type { AreaName, ColourProblem } from './colourProblem.ts';
import { colourDifference, stainingGrade } from './fastnessGrade.ts';
import { type GradeChances, gradeChances } from './gradeChances.ts';
import { type Lab, labFromLinear } from './lab.ts';
import { type Balance, lightPlane } from './lightPlane.ts';
import { type Area, type AreaLight, type ColourPicture, measureArea } from './measureArea.ts';

/** Where to look on the photograph of a blot. */
export interface BlotAreas {
  /** The cloth where it touched no dye. */
  readonly control: Area;
  /** The cloth where it touched the dye. */
  readonly sample: Area;
  /** Patches of white paper; none means the control is taken for the white. */
  readonly whites: readonly Area[];
}

/** What a person must know beside the grade. */
export type BlotNote = 'relative-colour' | 'control-is-the-white' | 'light-level-only' | 'uneven-blot';

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

const overlap = (p: Area, q: Area): boolean =>
  p.x < q.x + q.width && q.x < p.x + p.width && p.y < q.y + q.height && q.y < p.y + p.height;

const axes = ['L', 'a', 'b'] as const;

/** Standard deviation of the blocks of an area on each axis. */
function spreadOf(area: AreaLight, balance: Balance): Lab {
  const labs = area.blocks.map((block) => labFromLinear(balance(block)));
  const [L = 0, a = 0, b = 0] = axes.map((axis) => {
    const mean = labs.reduce((sum, lab) => sum + lab[axis], 0) / labs.length;
    return Math.sqrt(labs.reduce((sum, lab) => sum + (lab[axis] - mean) ** 2, 0) / (labs.length - 1));
  });
  return { L, a, b };
}

/** Share of the blocks of an area that have its colour; a clump left out of the mean as if it were threads shows here. */
function shareAlike(area: AreaLight, balance: Balance, apart: number): number {
  const whole = labFromLinear(balance(area));
  const alike = area.blocks.filter(
    (block) => colourDifference(whole, labFromLinear(balance(block))) <= apart,
  );
  return alike.length / area.blocks.length;
}

const size = ({ L, a, b }: Lab): number => Math.hypot(L, a, b) / Math.sqrt(3);

/**
 * Staining grade of a blot on one photograph: the stained place against a clean place of the same cloth.
 *
 * The noise of each axis is the spread of the 3 × 3 blocks in both areas, not divided by their number, because
 * light and cloth drift between neighbouring places and do not average out.
 *
 * @param picture - sRGB picture
 * @param areas - whole pixels; no two may overlap
 * @returns grade of the measured difference, its interval of 95 % and the probability of each grade
 * @refuses what measureArea and lightPlane refuse; blot-areas-overlap; blot-area-mixed - a block of an area is off
 * its colour by more than ΔE 3 and a quarter of the stain; blot-cloth-not-white;
 * blot-sample-lighter - a stain is never lighter than the clean cloth
 * @source iso-105-a04, the grade; workshop-setting, the limits (data/colour/blot.json)
 */
export function readBlot(picture: ColourPicture, areas: BlotAreas): Result<BlotReading, ColourProblem> {
  const named: readonly (readonly [AreaName, Area])[] = [
    ['control', areas.control],
    ['sample', areas.sample],
    ...areas.whites.map((area) => ['white', area] as const),
  ];
  for (const [index, [one, area]] of named.entries())
    for (const [other, second] of named.slice(index + 1))
      if (overlap(area, second)) return refused('blot-areas-overlap', { one, other });
  const lights: AreaLight[] = [];
  for (const [name, area] of named) {
    const measured = measureArea(picture, area, name);
    if (!measured.ok) return measured;
    lights.push(measured.value);
  }
  const [control, sample, ...whites] = lights;
  if (control === undefined || sample === undefined) throw new Error('both areas were measured above');

  const balanced = whites.length > 0;
  const found = lightPlane(balanced ? whites : [control], [control, sample]);
  if (!found.ok) return found;
  const { balance, shape } = found.value;
  const [clean, dye] = [labFromLinear(balance(control)), labFromLinear(balance(sample))];

  const seen = balanced ? clean : labFromLinear(control.light);
  const chroma = Math.hypot(seen.a, seen.b);
  const least = balanced ? limits.clothLeastLightness : limits.unbalancedLeastLightness;
  const most = balanced ? limits.clothMostChroma : limits.unbalancedMostChroma;
  if (!(seen.L >= least && chroma <= most))
    return refused('blot-cloth-not-white', { lightness: seen.L, chroma, balanced });

  const [cleanSpread, dyeSpread] = [spreadOf(control, balance), spreadOf(sample, balance)];
  const [L = 0, a = 0, b = 0] = axes.map((axis) =>
    Math.max(limits.leastSigma, Math.hypot(cleanSpread[axis], dyeSpread[axis])),
  );
  const sigma: Lab = { L, a, b };
  const lighterBy = dye.L - clean.L;
  if (lighterBy > Math.max(limits.lighterBy, 3 * sigma.L))
    return refused('blot-sample-lighter', { lighterBy });

  const apart = Math.max(limits.blockApart, limits.blockApartShare * colourDifference(clean, dye));
  for (const [name, area] of [
    ['control', control],
    ['sample', sample],
  ] as const) {
    const share = shareAlike(area, balance, apart);
    if (share < 1) return refused('blot-area-mixed', { name, keptPercent: Math.round(100 * share) });
  }

  const notes: BlotNote[] = ['relative-colour'];
  if (!balanced) notes.push('control-is-the-white');
  if (shape === 'level') notes.push('light-level-only');
  if (size(dyeSpread) > Math.max(1, 3 * size(cleanSpread))) notes.push('uneven-blot');
  const { deltaE, deltaEGS, grade } = stainingGrade(clean, dye);
  return done({
    ...{ deltaE, deltaEGS, grade, ...gradeChances(clean, dye, sigma) },
    ...{ sigma: size(sigma), control: clean, dye, notes },
  });
}
