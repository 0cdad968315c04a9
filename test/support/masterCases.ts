import { describe, expect, test } from 'vitest';
import {
  type Agent,
  type DyeTest,
  type Grade,
  type PlanColour,
  type PlanFacts,
  planWash,
  type Stain,
} from '../../src/core/wash/index.ts';
import { bathTest, soundRug, tested } from './soundRug.ts';

/** An invented rug, and what a master would say of it. */
export interface MasterCase {
  readonly rug: string;
  readonly facts: PlanFacts;
  /** Method, or the code of the refusal. */
  readonly gives: string;
  /** The rule that binds, and why a master would say so. */
  readonly rule: string;
  readonly because: string;
}

export const expects = (
  rug: string,
  facts: PlanFacts,
  gives: string,
  rule: string,
  because: string,
): MasterCase => ({
  rug,
  facts,
  gives,
  rule,
  because,
});

export const backed = (backing: 'cotton' | 'jute') => ({ warp: 'wool', weft: 'wool', backing }) as const;

/** A second colour, tested like the red. */
export const withColour = (
  facts: PlanFacts,
  colour: Pick<PlanColour, 'id' | 'name' | 'kind'>,
  tests: readonly DyeTest[] = tested(),
): PlanFacts => ({
  ...facts,
  colours: [
    ...(facts.colours ?? []),
    { ...colour, dyeClass: 'chrome', besideLightField: false, atUrinePlace: false },
  ],
  dyeTests: [...(facts.dyeTests ?? []), ...tests.map((one) => ({ ...one, colour: colour.id }))],
});

/** The red lies where the mark is, and nobody has said whether it was tested there. */
export const marked = (facts: PlanFacts): PlanFacts => ({
  ...facts,
  colours: [{ id: 'red', name: 'red', kind: 'field colour', dyeClass: 'chrome', besideLightField: false }],
});
export const stained = (stain: Stain): PlanFacts => marked({ ...soundRug, stains: [stain] });
export const dyed = (dyeClass: 'natural' | 'indigo' | 'unknown'): PlanFacts => ({
  ...soundRug,
  colours: [
    {
      id: 'red',
      name: 'the dye',
      kind: 'field colour',
      dyeClass,
      besideLightField: false,
      atUrinePlace: false,
    },
  ],
});
export const planned = (facts: PlanFacts, agents: readonly Agent[], pH?: number): PlanFacts => ({
  ...facts,
  plannedBaths: [{ purpose: 'the bath', agents, ...(pH === undefined ? {} : { pH }) }],
});
export const onlyFace = (facts: PlanFacts): PlanFacts => ({
  ...facts,
  dyeTests: tested().filter(({ side }) => side === 'face'),
});
export const challenged = (grade: Grade): readonly DyeTest[] => [
  ...tested(),
  bathTest('alkali challenge', grade, { pH: 8.5, agents: ['alkaline detergent'] }),
];
export const cottonRug: PlanFacts = {
  ...soundRug,
  pile: { cotton: 1 },
  foundation: { warp: 'cotton', weft: 'cotton' },
};

/** So few cases of a subject would be no table. */
const leastCases = 20;

/** Holds the planner against a master's table: the method or the refusal, and the rule that binds. */
export function agreesWithMaster(subject: string, cases: readonly MasterCase[]): void {
  describe(`a master’s table: ${subject}`, () => {
    test.each(cases.map((one) => [one.rug, one] as const))('%s', (_rug, { facts, gives, rule }) => {
      const plan = planWash(facts);
      if (!plan.ok) {
        expect(plan.problem.code).toBe(gives);
        expect(JSON.stringify(plan.problem.facts)).toContain(`"${rule}"`);
        return;
      }
      expect(plan.value.method).toBe(gives);
      const binding: readonly string[] = plan.value.limits
        .filter((limit) => limit.binding)
        .map((limit) => limit.rule);
      expect(binding).toContain(rule);
    });
    test(`holds at least ${leastCases} cases, and each says why`, () => {
      expect(cases.length).toBeGreaterThanOrEqual(leastCases);
      for (const { because } of cases) expect(because.length).toBeGreaterThan(3);
    });
  });
}
