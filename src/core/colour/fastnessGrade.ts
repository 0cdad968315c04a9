import bands from '../../../data/colour/fastnessBands.json' with { type: 'json' };
import { type Grade, grades } from '../wash/index.ts';
import type { Lab } from './lab.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/**
 * Plain CIELAB difference.
 *
 * @returns ΔE*ab ≥ 0
 * @source iso-cie-11664-4, the Euclidean difference
 */
export const colourDifference = (one: Lab, other: Lab): number =>
  Math.hypot(other.L - one.L, other.a - one.a, other.b - one.b);

/** Grade of the first band that holds; data knows grades as words only. */
const gradeIn = (band: { readonly grade: string } | undefined): Grade =>
  grades.find((grade) => grade === band?.grade) ?? '1';

/** A staining grade with the figures that led to it. */
export interface Staining {
  readonly deltaE: number;
  readonly deltaEGS: number;
  /** Rating before it is put into its band; 5 is no stain. */
  readonly rating: number;
  readonly grade: Grade;
}

/**
 * Staining of a white cloth.
 *
 * @param white - the cloth unstained
 * @param stained - the same cloth where it took up dye
 * @returns grade of the grey scale for staining, with the differences and the rating
 * @source iso-105-a04, the formula and its bands (data/colour/fastnessBands.json)
 */
export function stainingGrade(white: Lab, stained: Lab): Staining {
  const deltaE = colourDifference(white, stained);
  const deltaL = stained.L - white.L;
  const deltaEGS = deltaE - 0.4 * Math.sqrt(Math.max(0, deltaE ** 2 - deltaL ** 2));
  const first = 6.1 - 1.45 * Math.log(deltaEGS);
  const rating = first > 4 ? 5 - 0.23 * deltaEGS : first;
  const grade = gradeIn(bands.staining.find(({ atLeast }) => rating >= atLeast));
  return { deltaE, deltaEGS, rating, grade };
}

/** A colour-change grade with the difference that led to it. */
export interface ColourChange {
  readonly deltaEF: number;
  readonly grade: Grade;
}

/**
 * Change in colour of a dyed material.
 *
 * @param before - colour before the treatment
 * @param after - colour after it
 * @returns grade of the grey scale for change in colour, with ΔE_F
 * @source iso-105-a05, the formula and its bands (data/colour/fastnessBands.json)
 */
export function colourChangeGrade(before: Lab, after: Lab): ColourChange {
  const [C1, C2] = [Math.hypot(before.a, before.b), Math.hypot(after.a, after.b)];
  const hue = ({ a, b }: Lab): number => ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;
  const [h1, h2] = [hue(before), hue(after)];
  const turn = h2 - h1;
  const apart = Math.abs(turn) > 180;
  const dh = apart ? turn - Math.sign(turn) * 360 : turn;
  const dC = C2 - C1;
  const dH = 2 * Math.sqrt(C1 * C2) * Math.sin(radians(dh / 2));
  const C = (C1 + C2) / 2;
  const h = ((h1 + h2) / 2 + (apart ? 180 : 0)) % 360;
  const d = Math.abs(h - 280);
  const x = ((d <= 180 ? d : 360 - d) / 30) ** 2;
  const D = (dC * C * Math.exp(-x)) / 100;
  const dCF = (dC - D) / (1 + ((20 * C) / 1000) ** 2);
  const dHF = (dH - D) / (1 + ((10 * C) / 1000) ** 2);
  const deltaEF = Math.hypot(after.L - before.L, dCF, dHF);
  const grade = gradeIn(bands.change.find(({ below }) => deltaEF < below));
  return { deltaEF, grade };
}
