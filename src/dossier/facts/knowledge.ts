import * as z from 'zod/mini';
import {
  certainties,
  colourKinds,
  constructions,
  dyes,
  fibres,
  findingCodes,
  latexStates,
} from '../../core/wash/index.ts';
import { knotsCounted } from './knots.ts';
import { confidence, fact, id, line, passage, pointMm, sha256 } from './shape.ts';

const evidence = z.enum([
  'seen',
  'felt',
  'burn test',
  'solubility test',
  'microscope',
  'laboratory',
  'label',
  'papers',
  'client says',
  'comparison',
]);

const claimed = { evidence, confidence, note: z.optional(passage) };
const year = z.int().check(z.gte(-3000), z.lte(2200));

/** One thing said about the rug, with the evidence for it and how sure it is. */
const claim = z.discriminatedUnion('about', [
  z.strictObject({ about: z.literal('construction'), construction: z.enum(constructions), ...claimed }),
  /** Shares of dry mass; they add up to 1. */
  z.strictObject({
    about: z.literal('pile'),
    fibres: z.partialRecord(z.enum(fibres), z.number().check(z.gt(0), z.lte(1))),
    ...claimed,
  }),
  z.strictObject({ about: z.enum(['warp', 'weft', 'backing']), fibre: z.enum(fibres), ...claimed }),
  /** Asked of tufted pieces; failing is powdery, hard or smelling. */
  z.strictObject({ about: z.literal('latex'), latex: z.enum(latexStates), ...claimed }),
  z.strictObject({
    about: z.literal('knot'),
    knot: z.enum(['symmetrical', 'asymmetrical', 'offset', 'jufti', 'none', 'unknown']),
    ...claimed,
  }),
  z.strictObject({
    about: z.literal('period'),
    fromYear: z.optional(year),
    untilYear: z.optional(year),
    ...claimed,
  }),
  z.strictObject({
    about: z.enum([
      'finish',
      'origin',
      'maker',
      'subject',
      'title',
      'inscriptions and markings',
      'distinguishing features',
      'description',
    ]),
    words: passage,
    ...claimed,
  }),
]);

export const knowledgeFacts = {
  RugIdentified: fact('RugIdentified', { claims: z.array(claim).check(z.minLength(1)) }),
  /** Something that decides what the rug can bear: seen, suspected, or looked for and ruled out. */
  FindingNoted: fact('FindingNoted', {
    finding: z.enum(findingCodes),
    certainty: z.enum(certainties),
    at: z.optional(line),
    evidence,
    note: z.optional(passage),
  }),
  ColoursNamed: fact('ColoursNamed', {
    colours: z
      .array(
        z.object({
          colour: id,
          name: line,
          kind: z.enum(colourKinds),
          dyeClass: z.enum(dyes),
          /** Whether a light colour touches it, where a run would show; absent counts as yes. */
          besideLightField: z.optional(z.boolean()),
          /** Whether urine, a water mark or an old run lies on it; absent counts as yes once one is found. */
          atUrinePlace: z.optional(z.boolean()),
          /** Only to recognise it on a screen. */
          looks: z.optional(z.string().check(z.regex(/^#[0-9a-f]{6}$/))),
        }),
      )
      .check(z.minLength(1)),
  }),
  KnotsCounted: knotsCounted,
  FoundationTested: fact('FoundationTested', {
    method: z.enum(['folded by ear', 'needle', 'yarn pull', 'seen']),
    result: z.enum(['sound', 'weak', 'dry rot']),
    where: line,
    at: z.optional(pointMm),
    photos: z.array(sha256),
    note: z.optional(passage),
  }),
};
