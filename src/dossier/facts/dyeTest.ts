import * as z from 'zod/mini';
import { agents, sides, testLiquids } from '../../core/wash/index.ts';
import { acidity, fact, grade, id, minutes, passage, pointMm, sha256, temperatureC } from './shape.ts';

const tested = {
  colour: id,
  side: z.enum(sides),
  liquid: z.enum(testLiquids),
};

export const dyeTestFacts = {
  /** A blot read on the grey scale, or a reason why it could not be read. */
  DyeTested: fact('DyeTested', {
    ...tested,
    /** What the liquid was made of; absent: what the liquid's name stands for. */
    agents: z.optional(z.array(z.enum(agents))),
    strengthGPerL: z.optional(z.number().check(z.gte(0), z.lte(500))),
    ph: z.optional(acidity),
    temperatureC: z.optional(temperatureC),
    minutes: z.optional(minutes),
    reading: z.discriminatedUnion('kind', [
      z.object({
        kind: z.literal('graded'),
        by: z.literal('eye'),
        staining: grade,
        /** For acid: change of the colour itself. */
        colourChange: z.optional(grade),
        /** The blotter that touched no rug. */
        control: grade,
      }),
      z.object({ kind: z.literal('unclear'), why: passage }),
    ]),
    atUrinePlace: z.optional(z.boolean()),
    /** Made after the acid pre-treatment of a colour that bled a little. */
    afterPretreatment: z.optional(z.boolean()),
    at: z.optional(pointMm),
    photos: z.array(sha256),
    note: z.optional(passage),
  }),
  /** The blot lies and its time runs: shown on every tablet. */
  DyeTestStarted: fact('DyeTestStarted', { ...tested, minutes, atUrinePlace: z.optional(z.boolean()) }),
  DyeTestRefused: fact('DyeTestRefused', { colour: id, words: passage, signed: z.boolean() }),
};
