import limits from '../../../data/colour/blot.json' with { type: 'json' };
import { normal, seededRandom } from '../drying/index.ts';
import { type Grade, grades } from '../wash/index.ts';
import type { Lab } from './lab.ts';

/** How sure a grade is. */
export interface GradeChances {
  /** Probability of each grade that occurs; they add up to 1. */
  readonly probability: Readonly<Partial<Record<Grade, number>>>;
  /** Lowest and highest grade of the central 95 %. */
  readonly gradeInterval: readonly [lowest: Grade, highest: Grade];
}

/**
 * Chances of each grade when a measured difference has noise.
 *
 * @param gradeOf - grades a difference: for staining or for change in colour
 * @param before - clean cloth, or the colour before
 * @param after - stained cloth, or the colour after
 * @param sigma - standard deviation of their difference on L*, a* and b* [≥ 0]
 * @param contrastSigma - standard deviation of the size of the whole difference [share], since a phone changes contrast
 * @returns probability of each grade and the interval of 95 %; the same for the same figures
 * @source none: 4000 draws of normal noise on each axis and on the size of the whole difference
 * (data/colour/blot.json)
 */
export function gradeChances(
  gradeOf: (before: Lab, after: Lab) => { readonly grade: Grade },
  before: Lab,
  after: Lab,
  sigma: Lab,
  contrastSigma: number,
): GradeChances {
  const random = seededRandom(1);
  const counts = new Map<Grade, number>(grades.map((grade) => [grade, 0]));
  for (let draw = 0; draw < limits.draws; draw += 1) {
    const size = Math.max(0, 1 + contrastSigma * normal(random));
    const drawn = (axis: keyof Lab): number =>
      before[axis] + size * (after[axis] - before[axis]) + sigma[axis] * normal(random);
    const { grade } = gradeOf(before, { L: drawn('L'), a: drawn('a'), b: drawn('b') });
    counts.set(grade, (counts.get(grade) ?? 0) + 1);
  }
  const share = (grade: Grade): number => (counts.get(grade) ?? 0) / limits.draws;
  const firstWith = (ordered: readonly Grade[]): Grade => {
    let sum = 0;
    for (const grade of ordered) {
      sum += share(grade);
      if (sum > 0.025) return grade;
    }
    return '1';
  };
  // Noise only ever adds to a difference, so the draws of an unchanged colour may all lie below what was measured.
  const measured = grades.indexOf(gradeOf(before, after).grade);
  const [lowest, highest] = [firstWith(grades), firstWith(grades.toReversed())];
  const reach = [lowest, highest].map((grade) => grades.indexOf(grade));
  return {
    probability: Object.fromEntries(
      grades.filter((grade) => share(grade) > 0).map((grade) => [grade, share(grade)]),
    ),
    gradeInterval: [
      grades[Math.min(measured, ...reach)] ?? lowest,
      grades[Math.max(measured, ...reach)] ?? highest,
    ],
  };
}
