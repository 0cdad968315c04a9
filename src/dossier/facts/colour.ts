import * as z from 'zod/mini';
import { grades } from '../../core/wash/index.ts';
import { fact, fractionOfOne, grade, id, line, passage, sha256 } from './shape.ts';

const figure = z.number().check(z.gte(-1000), z.lte(1000));
const spread = z.number().check(z.gte(0), z.lte(1000));

/** A colour in CIELAB under D65, relative to the white of its own picture. */
export const lab = z.object({ L: figure, a: figure, b: figure });

const [worst, ...better] = grades;
/** Probability of each grade that occurs. */
export const gradeChances = z.partialRecord(z.enum([worst, ...better]), fractionOfOne);

/** Lowest and highest grade of the central 95 %. */
export const gradeInterval = z.object({ lowest: grade, highest: grade });

/** A corner of an area, in 0 … 1 of the picture. */
const cornerOfOne = z.object({ x: fractionOfOne, y: fractionOfOne });
export const outlineOfOne = z.array(cornerOfOne).check(z.minLength(3), z.maxLength(12));

/** A mean over the rug and half its interval of 95 %. */
const change = z.object({ by: figure, half95: spread });

/** A photograph with the serial of the weave card that lies in it. */
const pictured = z.object({
  photo: sha256,
  card: line,
  /** The rug's corners, in the same order on both pictures; absent where the card aligned them. */
  corners: z.optional(z.array(z.object({ x: z.number(), y: z.number() })).check(z.length(4))),
});
const shown = z.object({ photo: sha256 });

export const colourFacts = {
  /** Two photographs of the same rug, aligned, each corrected by its card, and what changed between them. */
  ColoursCompared: fact('ColoursCompared', {
    before: pictured,
    after: pictured,
    alignedBy: z.enum(['corners', 'card']),
    /** How alike the two pictures lie over each other, 1 for the same; absent where it cannot be said. */
    likeness: z.optional(fractionOfOne),
    /** Corrected and laid over each other, as they were compared, and the map of differences. */
    shown: z.object({ before: shown, after: shown, map: shown }),
    /** ΔE00 that half of the rug exceeds. */
    middleDeltaE: spread,
    /** ΔE00 of what should not have changed at all: the card's own patches. */
    controlDeltaE: spread,
    lightness: change,
    chroma: change,
    colours: z
      .array(
        z.object({
          /** The colour named at intake; absent for a place nobody named. */
          colour: z.optional(id),
          name: line,
          before: lab,
          after: lab,
          deltaEF: spread,
          grade,
          gradeInterval,
          probability: gradeChances,
          sigma: spread,
          hueTurnDeg: z.number().check(z.gte(-180), z.lte(180)),
          hueMoved: z.boolean(),
        }),
      )
      .check(z.maxLength(40)),
    /** Colours that were shown but could not be measured, and why. */
    unmeasured: z.optional(z.array(z.object({ name: line, why: line }))),
    notes: z.array(line),
    sentence: passage,
    /** Of the calculation: another version may give other figures. */
    algorithm: line,
  }),
};
