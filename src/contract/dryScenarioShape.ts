import * as z from 'zod/mini';
import { extractions, postures, touches } from '../core/drying/index.ts';
import { fibres } from '../core/wash/index.ts';

const text = z.string().check(z.minLength(1), z.maxLength(100));
const number = z.number();
const optional = z.optional(number);

const reading = z.union([
  z.strictObject({ hour: number, massKg: number }),
  z.strictObject({ hour: number, pocketRh: number }),
  z.strictObject({ hour: number, meterRegain: number }),
  z.strictObject({ hour: number, touch: z.enum(touches) }),
]);

const rug = z.strictObject({
  id: text,
  areaM2: number,
  dryMassKg: number,
  fibres: z.partialRecord(z.enum(fibres), number),
  startRegain: optional,
  extraction: z.optional(z.enum(extractions)),
  faces: optional,
  posture: z.optional(z.enum(postures)),
  targetRegain: optional,
  criticalRegain: optional,
  resistance: optional,
  hungAtHour: optional,
  takenAtHour: optional,
  wettedAtHour: optional,
  readings: z.optional(z.array(reading).check(z.maxLength(500))),
});

/** A drying room and what hangs in it, as a scenario file or a request gives it. */
export const dryScenarioShape = z.strictObject({
  hours: number,
  uncertainty: z.optional(z.boolean()),
  draws: z.optional(z.int()),
  seed: z.optional(z.int()),
  room: z.strictObject({
    volumeM3: number,
    airC: optional,
    startRh: optional,
    airSpeed: number,
    airChangesPerHour: number,
    g: optional,
    air: z.optional(
      z.array(z.strictObject({ hour: number, airC: number, rh: optional })).check(z.maxLength(20_000)),
    ),
  }),
  outside: z.strictObject({ airC: number, rh: number }),
  dehumidifiers: z.optional(
    z.array(
      z.strictObject({
        litresPerDay: number,
        ratedC: optional,
        ratedRh: optional,
        type: z.optional(z.enum(['refrigerant', 'desiccant'])),
      }),
    ),
  ),
  rugs: z.array(rug).check(z.maxLength(500)),
});
