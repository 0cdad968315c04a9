import * as z from 'zod/mini';
import {
  hardnessUnits,
  usualCorrectors,
  usualDoseUncertainty,
  usualSewerLimits,
} from '../core/chemistry/index.ts';

const number = z.number();
const optional = z.optional(number);
const share = z.optional(z.number().check(z.minimum(0), z.maximum(0.9)));
const price = z.number().check(z.minimum(0));

/** So much of an agent, in one of these units. */
const amountUnits = ['grams', 'kilograms', 'milligrams', 'moles', 'millilitres', 'litres'] as const;

const amount = z
  .strictObject({
    agent: z.string(),
    grams: optional,
    kilograms: optional,
    milligrams: optional,
    moles: optional,
    millilitres: optional,
    litres: optional,
    strength: optional,
    densityGPerMl: optional,
  })
  .check(
    z.refine((one) => amountUnits.filter((unit) => one[unit] !== undefined).length <= 1, {
      error: `an object with one of ${amountUnits.join(', ')}`,
    }),
  );
export type MixAmount = z.infer<typeof amount>;

const correctors = {
  acid: z._default(z.string(), usualCorrectors.acid),
  base: z._default(z.string(), usualCorrectors.base),
};

const hardnessUnit = z.enum(hardnessUnits.filter((unit) => unit !== 'mmol/L acid'));

/** A bath to compute, and what else is asked about it: the file `wefthouse mix` reads. */
export const mixShape = z.strictObject({
  litres: z._default(number, 1),
  temperatureC: z._default(number, 25),
  water: z._default(z.strictObject({ alkalinityMgPerLCaCO3: optional }), {}),
  activity: z._default(z.enum(['ideal', 'davies']), 'davies'),
  openToAir: z._default(z.boolean(), false),
  add: z._default(z.array(amount), []),
  target: z.optional(
    z.strictObject({
      agent: z.string(),
      pH: number,
      strength: optional,
      densityGPerMl: optional,
      strengthUncertainty: share,
      alkalinityUncertainty: share,
    }),
  ),
  carryOver: z.optional(
    z.strictObject({
      massKg: number,
      retainedLPerKg: number,
      freshLitres: z._default(number, 0),
      pH: number,
      ...correctors,
    }),
  ),
  effluent: z.optional(
    z.strictObject({
      with: z._default(
        z.array(
          z.strictObject({
            litres: number,
            temperatureC: number,
            alkalinityMgPerLCaCO3: number,
            add: z._default(z.array(amount), []),
          }),
        ),
        [],
      ),
      leastPh: z._default(number, usualSewerLimits.leastPh),
      mostPh: z._default(number, usualSewerLimits.mostPh),
      mostTemperatureC: z._default(number, usualSewerLimits.mostTemperatureC),
      ...correctors,
    }),
  ),
  hardness: z.optional(z.strictObject({ value: number, unit: hardnessUnit, agent: z.string() })),
  surfactant: z.optional(
    z.union([
      z.strictObject({ areaM2: number }),
      z.strictObject({
        activeGPerL: number,
        strength: number,
        strengthUncertainty: z._default(
          z.number().check(z.minimum(0), z.maximum(0.9)),
          usualDoseUncertainty.strength,
        ),
      }),
    ]),
  ),
  rinse: z.optional(
    z.strictObject({
      massKg: number,
      end: z._default(number, 0.005),
      prices: z.optional(z.strictObject({ waterPerM3: price, hour: price })),
    }),
  ),
  peroxide: z.optional(z.strictObject({ molPerL: price })),
});
export type MixScenario = z.infer<typeof mixShape>;
