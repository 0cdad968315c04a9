import { type CardBlot, type Comparison, colourVersion } from '../core/colour/index.ts';
import type { RugFactOf } from './facts/index.ts';
import type { NotedColour } from './standing.ts';

type Measured = Extract<RugFactOf<'DyeTested'>['reading'], { readonly by: 'photograph' }>;
type Compared = RugFactOf<'ColoursCompared'>;

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

/** How a comparison was made: pictures, cards, corners, and the three pictures drawn from it. */
export interface ComparedHow {
  readonly before: Compared['before'];
  readonly after: Compared['after'];
  readonly shown: Compared['shown'];
  /** What the client is told. */
  readonly sentence: string;
  /** The colours named at intake, to which the measured ones belong by name. */
  readonly named: readonly NotedColour[];
}

/**
 * A comparison as the record keeps it.
 *
 * @param compared - its figures
 * @param how - pictures and words
 * @source none: shape of this project's record
 */
export function comparedFact(
  compared: Omit<Comparison, 'before' | 'after' | 'map'>,
  { before, after, shown, sentence, named }: ComparedHow,
): Compared {
  const { alignment, control, lightness, chroma, middleDeltaE, unmeasured, notes } = compared;
  return {
    type: 'ColoursCompared',
    before,
    after,
    alignedBy: alignment.from,
    ...(alignment.likeness === null ? {} : { likeness: ofOne(to3(alignment.likeness)) }),
    shown,
    middleDeltaE: to3(middleDeltaE),
    controlDeltaE: to3(control.deltaE),
    lightness: { by: to3(lightness.by), half95: to3(lightness.half95) },
    chroma: { by: to3(chroma.by), half95: to3(chroma.half95) },
    colours: compared.colours.map((row) => {
      const colour = named.find(({ name }) => name === row.name)?.colour;
      const [lowest, highest] = row.gradeInterval;
      return {
        ...(colour === undefined ? {} : { colour }),
        name: row.name,
        before: lab(row.before),
        after: lab(row.after),
        deltaEF: to3(row.deltaEF),
        grade: row.grade,
        gradeInterval: { lowest, highest },
        probability: row.probability,
        sigma: to3(row.sigma),
        hueTurnDeg: to3(row.hueTurnDeg),
        hueMoved: row.hueMoved,
      };
    }),
    ...(unmeasured.length === 0 ? {} : { unmeasured }),
    notes,
    sentence,
    algorithm: colourVersion,
  };
}
