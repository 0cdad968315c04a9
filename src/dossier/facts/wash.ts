import * as z from 'zod/mini';
import {
  acidity,
  conductivityUsPerCm,
  fact,
  grade,
  id,
  line,
  passage,
  sha256,
  temperatureC,
} from './shape.ts';

/** `wetted` is what starts the wet clock; a step of the agreed plan carries its own id. */
export const washFacts = {
  StepStarted: fact('StepStarted', { step: id, wets: z.boolean(), helpers: z.optional(line) }),
  StepDone: fact('StepDone', {
    step: id,
    note: z.optional(passage),
    lot: z.optional(line),
    /** What was taken from the shelf, in the product's own unit; the stock falls by it. */
    used: z.optional(
      z
        .array(z.strictObject({ agent: id, lot: line, amount: z.number().check(z.gt(0), z.lte(1_000_000)) }))
        .check(z.maxLength(8)),
    ),
  }),
  BathMeasured: fact('BathMeasured', {
    step: z.optional(id),
    ph: z.optional(acidity),
    temperatureC: z.optional(temperatureC),
    whiteClothGrade: z.optional(grade),
    runOff: z.optional(z.enum(['clear', 'soil', 'faint colour', 'strong colour'])),
    photos: z.array(sha256),
  }),
  RinseMeasured: fact('RinseMeasured', {
    step: z.optional(id),
    ph: z.optional(acidity),
    conductivityUsPerCm: z.optional(conductivityUsPerCm),
    supplyConductivityUsPerCm: z.optional(conductivityUsPerCm),
    supplyPh: z.optional(acidity),
    temperatureC: z.optional(temperatureC),
    foam: z.optional(z.enum(['none', 'some', 'much'])),
    whiteClothGrade: z.optional(grade),
    runOff: z.optional(z.enum(['clear', 'soil', 'faint colour', 'strong colour'])),
  }),
  /** Work halts until somebody says how it was resolved. */
  StopCalled: fact('StopCalled', { stop: id, condition: line, note: z.optional(passage) }),
  StopCleared: fact('StopCleared', { stop: id, how: passage }),
};
