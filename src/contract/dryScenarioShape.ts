import * as z from 'zod/mini';
import { extractions, postures, touches } from '../core/drying/index.ts';
import { fibres } from '../core/wash/index.ts';

const text = z.string().check(z.minLength(1), z.maxLength(100));
const number = z.number();
const optional = z.optional(number);

const reading = z.union([
  z.strictObject({ hour: number, massKg: number }),
  z.strictObject({ hour: number, pocketRh: number }),
  z.strictObject({ hour: number, meterRegain: number, points: optional }),
  z.strictObject({ hour: number, meterAboveDry: number }),
  z.strictObject({ hour: number, touch: z.enum(touches) }),
]);

const running = { fromHour: number, untilHour: optional };
const runs = z.optional(z.array(z.strictObject(running)).check(z.maxLength(500)));
const measured = z
  .array(z.strictObject({ hour: number, airC: number, rh: number }))
  .check(z.maxLength(20_000));

const rug = z.strictObject({
  id: text,
  areaM2: number,
  dryMassKg: number,
  fibres: z.partialRecord(z.enum(fibres), number),
  construction: z.optional(text),
  startRegain: optional,
  extraction: z.optional(z.enum(extractions)),
  faces: optional,
  posture: z.optional(z.enum(postures)),
  targetRegain: optional,
  criticalRegain: optional,
  resistance: optional,
  g: optional,
  spreads: z.optional(
    z.strictObject({
      ...{ startRegain: optional, resistance: optional },
      ...{ criticalRegain: optional, dryMass: optional },
    }),
  ),
  turnings: z.optional(
    z
      .array(z.strictObject({ hour: number, posture: z.optional(z.enum(postures)), faces: optional }))
      .check(z.maxLength(200)),
  ),
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
    gSpread: optional,
    startC: optional,
    wallsWPerK: optional,
    openings: z.optional(
      z.array(z.strictObject({ ...running, airChangesPerHour: number })).check(z.maxLength(500)),
    ),
    measured: z.optional(measured),
    air: z.optional(
      z.array(z.strictObject({ hour: number, airC: number, rh: optional })).check(z.maxLength(20_000)),
    ),
  }),
  outside: z.strictObject({ airC: number, rh: number, series: z.optional(measured) }),
  dehumidifiers: z.optional(
    z.array(
      z.strictObject({
        litresPerDay: number,
        ratedC: optional,
        ratedRh: optional,
        type: z.optional(z.enum(['refrigerant', 'desiccant'])),
        kw: optional,
        runs,
      }),
    ),
  ),
  fans: z.optional(z.array(z.strictObject({ airSpeed: number, kw: optional, runs }))),
  heaters: z.optional(z.array(z.strictObject({ kw: number, untilC: optional, runs }))),
  rugs: z.array(rug).check(z.maxLength(500)),
});

const evidence = z.nullable(
  z.strictObject({ likely: z.number().check(z.gt(0)), spread: z.number().check(z.gt(0)) }),
);

/** What past rugs of a room said once they were dry: the `evidence` of earlier answers, kept. */
export const pastRugsShape = z
  .array(
    z.strictObject({
      ...{ rug: text, construction: z.nullable(text) },
      ...{ g: evidence, resistance: evidence, criticalRegain: evidence },
    }),
  )
  .check(z.maxLength(5000));
