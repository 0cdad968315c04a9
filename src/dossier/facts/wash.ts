import * as z from 'zod/mini';
import { agents, runOffs } from '../../core/wash/index.ts';
import {
  acidity,
  conductivityUsPerCm,
  fact,
  grade,
  id,
  lengthMm,
  line,
  minutes,
  passage,
  sha256,
  temperatureC,
} from './shape.ts';

export const spotOutcomes = ['gone', 'lighter', 'unchanged', 'harm'] as const;

/** `wetted` is what starts the wet clock; a step of the agreed plan carries its own id. */
export const washFacts = {
  StepStarted: fact('StepStarted', { step: id, wets: z.boolean(), helpers: z.optional(line) }),
  /** Somebody stands ready to help with a step; recorded by that person, which is what makes it count. */
  HandLent: fact('HandLent', { step: id }),
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
    /** Why it ended before its dwell was over. */
    early: z.optional(line),
  }),
  BathMeasured: fact('BathMeasured', {
    step: z.optional(id),
    ph: z.optional(acidity),
    temperatureC: z.optional(temperatureC),
    whiteClothGrade: z.optional(grade),
    /** Id of the colour the cloth was pressed on; absent: unknown, judged by the one that held best. */
    clothOn: z.optional(id),
    runOff: z.optional(z.enum(runOffs)),
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
    clothOn: z.optional(id),
    runOff: z.optional(z.enum(runOffs)),
    /** The place it was taken at; absent: of the whole rug. */
    mark: z.optional(id),
    photos: z.optional(z.array(sha256)),
  }),
  /** Length or width under work, to set beside the intake's. */
  LengthChecked: fact('LengthChecked', { lengthMm: z.optional(lengthMm), widthMm: z.optional(lengthMm) }),
  /** One treatment laid on one stain, and what came of it. */
  SpotTreated: fact('SpotTreated', {
    mark: id,
    step: z.optional(id),
    /** Its place in the golden order. */
    golden: line,
    agents: z.array(z.enum(agents)),
    ph: z.optional(acidity),
    temperatureC: z.optional(temperatureC),
    minutes: z.optional(minutes),
    outcome: z.enum(spotOutcomes),
    lot: z.optional(line),
    photos: z.array(sha256),
    note: z.optional(passage),
  }),
  /** What others put on the rug before it came, as far as anybody knows; absent mark: all over it. */
  OldTreatmentTold: fact('OldTreatmentTold', {
    agents: z.array(z.enum(agents)).check(z.minLength(1), z.maxLength(8)),
    mark: z.optional(id),
    /** Who says so, or what shows it. */
    toldBy: line,
    note: z.optional(passage),
  }),
  /** Why an agent of an earlier visit, or of others, is held to be out of the rug though no rinse was read. */
  ResidueAnswered: fact('ResidueAnswered', {
    agent: z.enum(agents),
    mark: z.optional(id),
    reason: passage,
  }),
  /** A solvent left to leave by itself; it has left when no smell is. */
  SpotAired: fact('SpotAired', { mark: z.optional(id), smell: z.enum(['none', 'some']) }),
  /** Work halts until somebody says how it was resolved. */
  /** One question of the differential of a stain nobody knows, answered. */
  StainAnswered: fact('StainAnswered', { mark: id, question: id, answer: id }),
  /** A flow of its own begun by a person, where nothing on record calls for it; its findings count as suspected. */
  FlowBegun: fact('FlowBegun', {
    flow: id,
    /** The mark it is for; absent: the whole rug, or where the words say. */
    mark: z.optional(id),
    where: z.optional(line),
    why: line,
  }),
  /** One step of a flow of its own (urine, browning, flood …), with what it asks to be written down. */
  FlowLogged: fact('FlowLogged', {
    flow: id,
    step: id,
    /** The place it was done at; absent: the whole rug. */
    mark: z.optional(id),
    choice: z.optional(id),
    conductivityUsPerCm: z.optional(conductivityUsPerCm),
    supplyConductivityUsPerCm: z.optional(conductivityUsPerCm),
    ph: z.optional(acidity),
    supplyPh: z.optional(acidity),
    photos: z.array(sha256),
    note: z.optional(passage),
  }),
  StopCalled: fact('StopCalled', {
    stop: id,
    condition: line,
    note: z.optional(passage),
    /** Id of the entry whose reading raised it; absent: a person called it. */
    raisedBy: z.optional(id),
    /** What was read, and the band it left by the limits of that hour. */
    broke: z.optional(
      z.union([
        z.strictObject({ quantity: z.literal('pH'), read: acidity, least: acidity, most: acidity }),
        z.strictObject({
          ...{ quantity: z.literal('temperature'), read: temperatureC },
          ...{ least: temperatureC, most: temperatureC },
        }),
      ]),
    ),
  }),
  StopCleared: fact('StopCleared', { stop: id, how: passage }),
};
