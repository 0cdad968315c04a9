import * as z from 'zod/mini';
import { extractions } from '../../core/drying/index.ts';
import { fact, fractionOfOne, id, line, massKg, passage, pointMm, sha256, temperatureC } from './shape.ts';

const hours = z.number().check(z.gte(0), z.lte(2000));
export const postures = ['hung', 'flat on mesh', 'flat on floor', 'face down flat'] as const;

/** Which of the dry standards a workshop with its instruments can keep. */
export const dryStandards = ['full', 'without scale', 'without meter'] as const;

/** Ends of a pole or mesh as the drying room draws them. */
export const poleEnds = ['left', 'right'] as const;

/** Where along its pole or mesh a rug hangs or lies: from the end that is said to the rug's nearer edge. */
const position = z.strictObject({
  from: z.enum(poleEnds),
  mm: z.number().check(z.gte(0), z.lte(50_000)),
});

export const dryingFacts = {
  /**
   * When this rug would be dry if its wash began then, with what hung already: made by the server from the
   * record, with everything it was made from.
   */
  DryingForecast: fact('DryingForecast', {
    room: id,
    /** From first wetting until dry, within which the stated share of such rugs is dry; null: beyond the hours looked at. */
    hours: z.nullable(hours),
    medianHours: z.nullable(hours),
    share: fractionOfOne,
    lookedHours: hours,
    /** Rugs that hung there. */
    among: z.array(id).check(z.maxLength(500)),
    /** The drying scenario it was worked out from, so that it can be worked out again. */
    scenario: z.record(z.string(), z.unknown()),
  }),
  DryingStarted: fact('DryingStarted', {
    posture: z.enum(postures),
    place: line,
    /** The drying room, and the pole or mesh of it; absent where it dries elsewhere. */
    room: z.optional(id),
    spot: z.optional(id),
    /** On that pole or mesh; absent: nobody measured it. */
    position: z.optional(position),
    /** How water was taken out: it stands for the water in the rug until somebody weighs it. */
    extraction: z.optional(z.enum(extractions)),
    /** Whether the room or the machine heats; absent: unknown, which counts as heated. */
    heated: z.optional(z.boolean()),
  }),
  RugTurned: fact('RugTurned', {
    posture: z.enum(postures),
    room: z.optional(id),
    spot: z.optional(id),
    position: z.optional(position),
  }),
  DryingReading: fact('DryingReading', {
    massKg: z.optional(massKg),
    /** Moisture-meter readings, in the meter's own units, each at a point. */
    meter: z.optional(
      z.array(z.object({ reading: z.number().check(z.gte(0), z.lte(1000)), at: line })).check(z.minLength(1)),
    ),
    /** The same meter on a rug or piece known to be dry. */
    meterDryReference: z.optional(z.number().check(z.gte(0), z.lte(1000))),
    /** Relative humidity in a taped film pocket after 30 to 60 minutes. */
    pocketRh: z.optional(fractionOfOne),
    airRh: z.optional(fractionOfOne),
    airC: z.optional(temperatureC),
    touch: z.optional(z.enum(['dry', 'cool', 'damp', 'wet'])),
    smell: z.optional(z.enum(['none', 'musty', 'sour', 'wet wool'])),
    whiteCloth: z.optional(z.enum(['clean', 'colour'])),
    at: z.optional(pointMm),
    photos: z.array(sha256),
  }),
  DryAccepted: fact('DryAccepted', {
    standard: z.enum(dryStandards),
    note: z.optional(passage),
  }),
};
