import { colourVersion } from '../../../core/colour/index.ts';
import type { RugFactOf } from '../../../dossier/index.ts';
import type { BlotMade } from '../../colour/BlotReader.tsx';

type Measured = Extract<RugFactOf<'DyeTested'>['reading'], { readonly by: 'photograph' }>;

const to = (digits: number, value: number): number => Number(value.toFixed(digits));

/** A measured blot as the record keeps it. */
export function measuredReading({ reading, card, pictures, places }: BlotMade): Measured {
  const { deltaE, deltaEGS, grade, gradeInterval, probability, sigma, control, dye, notes } = reading;
  const [lowest, highest] = gradeInterval;
  const lab = ({ L, a, b }: typeof control) => ({ L: to(3, L), a: to(3, a), b: to(3, b) });
  return {
    kind: 'graded',
    by: 'photograph',
    staining: grade,
    gradeInterval: { lowest, highest },
    probability,
    deltaE: to(3, deltaE),
    deltaEGS,
    sigma: to(3, sigma),
    clean: lab(control),
    dye: lab(dye),
    card,
    pictures,
    places,
    notes,
    algorithm: colourVersion,
  };
}
