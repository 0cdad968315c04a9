import * as z from 'zod';
import {
  type BathRecipe,
  carryOver,
  type DoseUncertainty,
  effluent,
  hardnessConsumed,
  hardnessUnits,
  peroxideVolumes,
  rinsePlans,
  surfactantByArea,
  surfactantByBath,
  usualCorrectors,
  usualSewerLimits,
} from '../core/chemistry/index.ts';
import type { Problem, Result } from '../units/index.ts';

export const agentAmount = z.strictObject({
  agent: z.string(),
  grams: z.number().optional(),
  millilitres: z.number().optional(),
  strength: z.number().optional(),
  densityGPerMl: z.number().optional(),
});

const correctors = {
  acid: z.string().default(usualCorrectors.acid),
  base: z.string().default(usualCorrectors.base),
};

/** Questions beside the pH of the bath; each is answered under its own name. */
export const mixParts = {
  carryOver: z
    .strictObject({
      massKg: z.number(),
      retainedLPerKg: z.number(),
      freshLitres: z.number().default(0),
      pH: z.number(),
      ...correctors,
    })
    .optional(),
  effluent: z
    .strictObject({
      with: z
        .array(
          z.strictObject({
            litres: z.number(),
            temperatureC: z.number(),
            alkalinityMgPerLCaCO3: z.number(),
            add: z.array(agentAmount).default([]),
          }),
        )
        .default([]),
      leastPh: z.number().default(usualSewerLimits.leastPh),
      mostPh: z.number().default(usualSewerLimits.mostPh),
      mostTemperatureC: z.number().default(usualSewerLimits.mostTemperatureC),
      ...correctors,
    })
    .optional(),
  hardness: z
    .strictObject({
      value: z.number(),
      unit: z.enum(hardnessUnits).exclude(['mmol/L acid']),
      agent: z.string(),
    })
    .optional(),
  surfactant: z
    .union([
      z.strictObject({ areaM2: z.number() }),
      z.strictObject({
        activeGPerL: z.number(),
        strength: z.number(),
        strengthUncertainty: z.number().min(0).max(0.9).default(0.05),
      }),
    ])
    .optional(),
  rinse: z
    .strictObject({
      massKg: z.number(),
      end: z.number().default(0.005),
      prices: z
        .strictObject({ waterPerM3: z.number().nonnegative(), hour: z.number().nonnegative() })
        .optional(),
    })
    .optional(),
  peroxide: z.strictObject({ molPerL: z.number().nonnegative() }).optional(),
};

const parts = z.strictObject(mixParts);
export type MixParts = z.infer<typeof parts>;

/** Answers to what is asked of a bath besides its pH, by name; the first refusal ends it. */
export function answerParts(
  bath: BathRecipe,
  asked: MixParts,
  uncertainty: DoseUncertainty,
): Result<Readonly<Record<string, unknown>>, Problem> {
  const { carryOver: held, effluent: waste, hardness, surfactant, rinse, peroxide } = asked;
  const fresh = { ...bath, litres: held?.freshLitres ?? 0, add: [] };
  const answers: readonly (readonly [string, Result<unknown, Problem> | null])[] = [
    [
      'carryOver',
      held === undefined
        ? null
        : carryOver(bath, held, fresh.litres > 0 ? fresh : null, held.pH, held, uncertainty),
    ],
    [
      'effluent',
      waste === undefined
        ? null
        : effluent([bath, ...waste.with.map((other) => ({ ...bath, ...other }))], waste, waste),
    ],
    ['hardness', hardness === undefined ? null : hardnessConsumed(hardness, bath.litres, hardness.agent)],
    [
      'surfactant',
      surfactant === undefined
        ? null
        : 'areaM2' in surfactant
          ? surfactantByArea(surfactant.areaM2, bath.litres)
          : surfactantByBath(
              surfactant.activeGPerL,
              bath.litres,
              surfactant.strength,
              surfactant.strengthUncertainty,
            ),
    ],
    ['rinse', rinse === undefined ? null : rinsePlans(rinse.massKg, rinse.end, rinse.prices ?? null)],
    [
      'peroxide',
      peroxide === undefined ? null : { ok: true, value: { volumes: peroxideVolumes(peroxide.molPerL) } },
    ],
  ];
  const told: Record<string, unknown> = {};
  for (const [name, answer] of answers) {
    if (answer === null) continue;
    if (!answer.ok) return answer;
    told[name] = answer.value;
  }
  return { ok: true, value: told };
}
