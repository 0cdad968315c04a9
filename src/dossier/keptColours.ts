import { type CardBlot, colourVersion } from '../core/colour/index.ts';
import type { RugFactOf } from './facts/index.ts';

type Measured = Extract<RugFactOf<'DyeTested'>['reading'], { readonly by: 'photograph' }>;

interface Size {
  readonly widthPx: number;
  readonly heightPx: number;
}

const to3 = (value: number): number => Number(value.toFixed(3));
const lab = ({ L, a, b }: Measured['clean']): Measured['clean'] => ({ L: to3(L), a: to3(a), b: to3(b) });
const ofOne = (value: number): number => Math.min(1, Math.max(0, value));

/**
 * A measured blot as the record keeps it.
 *
 * @param blot - as it was read
 * @param made - the card, how many pictures, and the size of the picture its places lie on [px]
 * @source none: shape of this project's record
 */
export function measuredReading(
  blot: CardBlot,
  made: { readonly card: string; readonly pictures: Measured['pictures'] } & Size,
): Measured {
  const { deltaE, deltaEGS, grade, gradeInterval, probability, sigma, control, dye, notes, places } = blot;
  const [lowest, highest] = gradeInterval;
  const shares = (outline: CardBlot['places']['sample']) =>
    outline.map(([x, y]) => ({ x: ofOne(x / made.widthPx), y: ofOne(y / made.heightPx) }));
  return {
    kind: 'graded',
    by: 'photograph',
    staining: grade,
    gradeInterval: { lowest, highest },
    probability,
    deltaE: to3(deltaE),
    // Kept whole: at the edge of a band a rounded figure may give another grade.
    deltaEGS,
    sigma: to3(sigma),
    clean: lab(control),
    dye: lab(dye),
    card: made.card,
    pictures: made.pictures,
    places: { controls: places.controls.map(shares), sample: shares(places.sample) },
    notes,
    algorithm: colourVersion,
  };
}
