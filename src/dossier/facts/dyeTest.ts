import * as z from 'zod/mini';
import { agents, sides, testLiquids } from '../../core/wash/index.ts';
import { gradeChances, gradeInterval, lab, outlineOfOne } from './colour.ts';
import { acidity, fact, grade, id, line, minutes, passage, pointMm, sha256, temperatureC } from './shape.ts';

const tested = {
  colour: id,
  side: z.enum(sides),
  liquid: z.enum(testLiquids),
};

/** A blot graded from a photograph with the formula of ISO 105-A04. */
const measured = z.object({
  kind: z.literal('graded'),
  by: z.literal('photograph'),
  /** Grade of the measured difference itself; the worst with a probability above 5 % rules. */
  staining: grade,
  gradeInterval,
  probability: gradeChances,
  deltaE: z.number().check(z.gte(0), z.lte(400)),
  deltaEGS: z.number().check(z.gte(0), z.lte(400)),
  /** Noise of the difference for each axis. */
  sigma: z.number().check(z.gte(0), z.lte(100)),
  /** Clean cloth, and the cloth where it met the dye. */
  clean: lab,
  dye: lab,
  /** Serial of the weave card that corrected the light. */
  card: line,
  /** One picture of clean and stained cloth, or one before the test and one after it. */
  pictures: z.enum(['one', 'before and after']),
  /** Where the clean and the stained place lie on the last photograph. */
  places: z.object({
    controls: z.array(outlineOfOne).check(z.minLength(1), z.maxLength(12)),
    sample: outlineOfOne,
  }),
  notes: z.array(line),
  algorithm: line,
  /** For acid: change of the colour itself, by eye. */
  colourChange: z.optional(grade),
});

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
      z.discriminatedUnion('by', [
        z.object({
          kind: z.literal('graded'),
          by: z.literal('eye'),
          staining: grade,
          /** For acid: change of the colour itself. */
          colourChange: z.optional(grade),
          /** The blotter that touched no rug. */
          control: grade,
        }),
        measured,
      ]),
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
  DyeTestStarted: fact('DyeTestStarted', {
    ...tested,
    minutes,
    /** Of a spotter: which one lies here. */
    agents: z.optional(z.array(z.enum(agents))),
    atUrinePlace: z.optional(z.boolean()),
  }),
  DyeTestRefused: fact('DyeTestRefused', { colour: id, words: passage, signed: z.boolean() }),
};
