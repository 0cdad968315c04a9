import * as z from 'zod/mini';
import {
  agentKinds,
  hardnessUnits,
  hazardStatements,
  signalWords,
  strengthUnits,
} from '../core/chemistry/index.ts';
import { agents } from '../core/wash/index.ts';
import type { Entry } from './entry.ts';
import {
  acidity,
  conductivityUsPerCm,
  day,
  type Frozen,
  fact,
  id,
  line,
  money,
  passage,
  temperatureC,
} from './facts/shape.ts';

const between = (least: number, most: number) => z.number().check(z.gte(least), z.lte(most));
/** Grams or millilitres: a tonne in one container is a slip of the pen. */
const amount = between(0, 1_000_000);
const drawn = amount.check(z.gt(0));
const lot = line;
/** A price is nothing or more; what is given back is no price. */
const price = z.object({ ...money.shape, amountMinor: z.int().check(z.gte(0), z.lte(1_000_000_000)) });

const part = z.discriminatedUnion('unit', [
  z.strictObject({
    kind: z.enum(agentKinds),
    chemical: z.optional(line),
    /** Absent where the supplier does not say; counted as the strongest it can be. */
    value: z.optional(between(0, 100)),
    unit: z.literal(strengthUnits[0]),
  }),
  z.strictObject({
    kind: z.enum(agentKinds),
    chemical: z.optional(line),
    value: z.optional(between(0, 3000)),
    unit: z.literal(strengthUnits[1]),
  }),
]);

/** Where the supplier's safety data sheet stands; a page on the net or in the house. */
const sheetAddress = z.string().check(z.trim(), z.regex(/^https?:\/\/\S+$/), z.maxLength(500));

/** What stands on the shelf, and the water that comes out of the tap. */
export const shelfFacts = {
  /** A product, or its description anew: the latest counts. */
  AgentShelved: fact('AgentShelved', {
    agent: id,
    name: line,
    /** Which agents of the plans it is used as. */
    serves: z.array(z.enum(agents)).check(z.maxLength(12)),
    parts: z.array(part).check(z.minLength(1), z.maxLength(8)),
    /** How it is measured out and counted. */
    unit: z.enum(['g', 'mL']),
    densityGPerMl: z.optional(between(0.3, 3)),
    /** pH of a dilution as the supplier states it. */
    ph: z.optional(z.strictObject({ value: acidity, gramsPerLitre: between(0, 1000) })),
    /** Absent until its safety data sheet was read. */
    signal: z.optional(z.enum(signalWords)),
    hazards: z
      .array(
        z
          .string()
          .check(z.refine((code) => hazardStatements.some((one) => one.code === code), 'a known H code')),
      )
      .check(z.maxLength(20)),
    safetySheet: z.optional(sheetAddress),
    supplier: z.optional(line),
    /** Of one pack. */
    price: z.optional(price),
    /** What one pack holds, in its unit; 1 kg or 1 L where it is absent. */
    pack: z.optional(drawn),
    /** Stock below which it stands on the reorder list, in its unit. */
    reorderBelow: z.optional(amount),
  }),
  LotReceived: fact('LotReceived', {
    agent: id,
    lot,
    amount: drawn,
    receivedOn: z.optional(day),
    expires: z.optional(day),
  }),
  /** The days of a lot as its container truly bears them; null: it bears none. */
  LotCorrected: fact('LotCorrected', {
    agent: id,
    lot,
    receivedOn: z.nullable(day),
    expires: z.nullable(day),
  }),
  /** What is left in the containers of a lot, counted. */
  StockCounted: fact('StockCounted', { agent: id, lot, amount }),
  /** Taken for a step of a rug; recorded together with the step. */
  StockDrawn: fact('StockDrawn', { agent: id, lot, amount: drawn, rug: id, step: id, entry: id }),
  /** The entry that drew it was withdrawn. */
  StockReturned: fact('StockReturned', { agent: id, lot, amount: drawn, entry: id }),
  AgentRemoved: fact('AgentRemoved', { agent: id, why: passage }),
  WaterMeasured: fact('WaterMeasured', {
    on: day,
    from: z.optional(line),
    alkalinity: z.optional(z.strictObject({ value: between(0, 5000), unit: z.enum(hardnessUnits) })),
    hardness: z.optional(z.strictObject({ value: between(0, 5000), unit: z.enum(hardnessUnits) })),
    ph: z.optional(acidity),
    conductivityUsPerCm: z.optional(conductivityUsPerCm),
    ironMgPerL: z.optional(between(0, 100)),
    temperatureC: z.optional(temperatureC),
  }),
};

export type ShelfFactType = keyof typeof shelfFacts;
export type ShelfFactOf<Type extends ShelfFactType> = Frozen<z.infer<(typeof shelfFacts)[Type]>>;
export type ShelfFact = { [Type in ShelfFactType]: ShelfFactOf<Type> }[ShelfFactType];
export type ShelfEntry = Entry<ShelfFact>;
