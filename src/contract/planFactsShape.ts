import * as z from 'zod/mini';
import {
  agents,
  certainties,
  colourKinds,
  constructions,
  dryingHoursFrom,
  dyes,
  equipment,
  fibres,
  findingCodes,
  grades,
  latexStates,
  routes,
  ruleIds,
  sides,
  signatories,
  stainClasses,
  testLiquids,
} from '../core/wash/index.ts';

const text = z.string().check(z.minLength(1), z.maxLength(300));
const share = z.number().check(z.gte(0), z.lte(1));
const fibre = z.enum(fibres);
const atLeastZero = z.number().check(z.gte(0));
const ph = z.number().check(z.gte(0), z.lte(14));

const colour = z.strictObject({
  id: text,
  name: text,
  kind: z.enum(colourKinds),
  dyeClass: z.optional(z.enum(dyes)),
  besideLightField: z.optional(z.boolean()),
  atUrinePlace: z.optional(z.boolean()),
});

const dyeTest = z.strictObject({
  colour: text,
  side: z.enum(sides),
  liquid: z.enum(testLiquids),
  agents: z.optional(z.array(z.enum(agents))),
  strengthGPerL: z.optional(atLeastZero),
  pH: z.optional(ph),
  temperatureC: z.optional(z.number().check(z.gte(0), z.lte(100))),
  minutes: z.optional(atLeastZero),
  outcome: z.enum(['graded', 'unclear', 'refused']),
  grade: z.optional(z.enum(grades)),
  gradeProbabilities: z.optional(z.partialRecord(z.enum(grades), share)),
  colourChangeGrade: z.optional(z.enum(grades)),
  atUrinePlace: z.optional(z.boolean()),
  afterPretreatment: z.optional(z.boolean()),
  ageDays: z.optional(atLeastZero),
});

const stain = z.strictObject({
  id: text,
  class: z.optional(z.enum(stainClasses)),
  areaCm2: z.optional(atLeastZero),
  colours: z.optional(z.array(text)),
  at: z.optional(text),
});

/** What is known of a rug when its wash is planned, as a file or a request holds it. */
export const planFactsShape = z.strictObject({
  $schema: z.optional(z.string()),
  route: z.enum(routes),
  construction: z.optional(z.enum(constructions)),
  pile: z.optional(z.partialRecord(fibre, share)),
  foundation: z.optional(
    z.strictObject({ warp: z.optional(fibre), weft: z.optional(fibre), backing: z.optional(fibre) }),
  ),
  latex: z.optional(z.enum(latexStates)),
  areaM2: z.number().check(z.gt(0), z.lte(500)),
  dryMassKg: z.optional(z.number().check(z.gt(0), z.lte(1000))),
  lengthM: z.optional(z.number().check(z.gt(0), z.lte(50))),
  pileHeightMm: z.optional(z.number().check(z.gte(0), z.lte(300))),
  colours: z.optional(z.array(colour)),
  dyeTests: z.optional(z.array(dyeTest)),
  findings: z.optional(
    z.array(
      z.union([
        z.enum(findingCodes),
        z.strictObject({
          code: z.enum(findingCodes),
          certainty: z.optional(z.enum(certainties)),
          at: z.optional(text),
        }),
      ]),
    ),
  ),
  stains: z.optional(z.array(stain)),
  expectedDryingHours: z.optional(atLeastZero),
  expectedDryingFrom: z.optional(z.enum(dryingHoursFrom)),
  soiling: z.optional(z.enum(['dust only', 'soiled'])),
  monthsSinceWash: z.optional(atLeastZero),
  promiseHours: z.optional(atLeastZero),
  valueAboveAuthority: z.optional(z.boolean()),
  liftingLimitKg: z.optional(z.number().check(z.gt(0))),
  poleLengthM: z.optional(z.number().check(z.gt(0))),
  equipmentDown: z.optional(z.array(z.enum(equipment))),
  clientRefusals: z.optional(
    z.array(z.strictObject({ what: z.enum(['dye test', 'disclosure']), signed: z.boolean() })),
  ),
  signOffs: z.optional(z.array(z.enum(signatories))),
  correctiveAimAgreed: z.optional(z.boolean()),
  overrides: z.optional(
    z.array(z.strictObject({ rule: z.enum(ruleIds), reason: text, about: z.optional(z.array(text)) })),
  ),
  plannedBaths: z.optional(
    z.array(z.strictObject({ purpose: text, agents: z.array(z.enum(agents)), pH: z.optional(ph) })),
  ),
});

/** The shape as JSON Schema; kept in the repository as examples/plan/facts.schema.json. */
export const planFactsSchema = (): object => z.toJSONSchema(planFactsShape, { io: 'input' });
