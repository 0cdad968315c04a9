import limits from '../../../data/colour/blot.json' with { type: 'json' };
import { type Result, refused } from '../../units/index.ts';
import type { AreaName, BlotProblem } from './colourProblem.ts';
import { type BlotReading, gradeBlot } from './gradeBlot.ts';
import { lightPlane } from './lightPlane.ts';
import { type Area, type AreaLight, areasOverlap, type ColourPicture, measureArea } from './measureArea.ts';

/** Where to look on the photograph of a blot. */
export interface BlotAreas {
  /** The cloth where it touched no dye. */
  readonly control: Area;
  /** The cloth where it touched the dye. */
  readonly sample: Area;
  /** Patches of white paper; none means the control is taken for the white. */
  readonly whites: readonly Area[];
}

/**
 * Staining grade of a blot on one photograph without a card: the stained place against a clean place of the same
 * cloth.
 *
 * @param picture - sRGB picture
 * @param areas - whole pixels; no two may overlap
 * @returns grade of the measured difference, its interval of 95 % and the probability of each grade
 * @refuses what measureArea, lightPlane and gradeBlot refuse; blot-areas-overlap
 * @source iso-105-a04, the grade; workshop-setting, the limits (data/colour/blot.json)
 */
export function readBlot(picture: ColourPicture, areas: BlotAreas): Result<BlotReading, BlotProblem> {
  const named: readonly (readonly [AreaName, Area])[] = [
    ['control', areas.control],
    ['sample', areas.sample],
    ...areas.whites.map((area) => ['white', area] as const),
  ];
  for (const [index, [one, area]] of named.entries())
    for (const [other, second] of named.slice(index + 1))
      if (areasOverlap(area, second)) return refused('blot-areas-overlap', { one, other });
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
  return gradeBlot({
    ...{ controls: [control], sample, balance, balanced },
    lightSigma: 0,
    contrastSigma: limits.toneCurveShare,
    notes: [
      ...(balanced ? [] : (['control-is-the-white'] as const)),
      ...(shape === 'level' ? (['light-level-only'] as const) : []),
    ],
  });
}
