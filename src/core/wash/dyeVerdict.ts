import {
  type DyeTest,
  type FindingCode,
  type Grade,
  grades,
  type PlanColour,
  type PlanFacts,
  type Side,
  type Stain,
  type TestLiquid,
} from './planFacts.ts';
import { bookOf, type Rulebook, shippedRulebook } from './rulebook.ts';
import type { ColourVerdict, DyeStanding, DyeTrait } from './washPlan.ts';

export const worse = (a: Grade, b: Grade): Grade => (grades.indexOf(a) <= grades.indexOf(b) ? a : b);
export const atMost = (grade: Grade, limit: Grade): boolean => grades.indexOf(grade) <= grades.indexOf(limit);

/** Failure: grade 3 or worse. */
export const fails = (grade: Grade): boolean => atMost(grade, '3');

/**
 * The grade that rules a reading: by eye the grade, from a photograph the worst grade whose probability
 * is above 5 %.
 *
 * @source workshop-setting (data/wash/dyeTests.json)
 */
export function rulingGrade({ outcome, grade, gradeProbabilities }: DyeTest): Grade | null {
  if (outcome !== 'graded') return null;
  const likely = grades.find(
    (one) => (gradeProbabilities?.[one] ?? 0) > shippedRulebook.tests.worstProbability,
  );
  if (likely === undefined) return grade ?? null;
  return grade === undefined ? likely : worse(grade, likely);
}

/** A reading clears a bath for the rulebook’s days; a bad reading counts for ever. */
export const inDate = ({ tests }: Rulebook, { ageDays }: DyeTest): boolean =>
  ageDays !== undefined && ageDays <= tests.validDays;

export interface GradedTest {
  readonly test: DyeTest;
  readonly grade: Grade;
}

/** The same readings are asked for many times while a plan is made; graded once per list. */
const gradedByColour = new WeakMap<readonly DyeTest[], ReadonlyMap<string, readonly GradedTest[]>>();

/** Graded readings of one colour, in the order they were given. */
export function gradedTests({ dyeTests }: PlanFacts, colour: string): readonly GradedTest[] {
  if (dyeTests === undefined) return [];
  let byColour = gradedByColour.get(dyeTests);
  if (byColour === undefined) {
    const gathered = new Map<string, GradedTest[]>();
    for (const test of dyeTests) {
      const grade = rulingGrade(test);
      if (grade === null) continue;
      const own = gathered.get(test.colour);
      if (own === undefined) gathered.set(test.colour, [{ test, grade }]);
      else own.push({ test, grade });
    }
    byColour = gathered;
    gradedByColour.set(dyeTests, byColour);
  }
  return byColour.get(colour) ?? [];
}

/** A finding that is there or may be there; a stain of unknown class may be urine. */
export const mayHave = (facts: PlanFacts, ...codes: readonly FindingCode[]): boolean =>
  (facts.findings ?? []).some(({ code, certainty }) => codes.includes(code) && certainty !== 'ruled out') ||
  (codes.includes('urine') && urineStains(facts).length > 0);

/** Stains that are urine or, while their class is unknown, may be. */
export const urineStains = ({ stains = [] }: PlanFacts): readonly Stain[] =>
  stains.filter(({ class: kind = 'unknown' }) => kind === 'urine' || kind === 'unknown');

/**
 * Whether there is a place where dyes may stand worse than elsewhere: urine, a water mark or an old run.
 * Each colour that lies there is tested there as well.
 *
 * @source workshop-setting, sites of the dye tests (data/wash/dyeTests.json)
 */
export const hasMarkedPlace = (facts: PlanFacts): boolean =>
  mayHave(facts, 'urine', 'colour run') ||
  (facts.stains ?? []).some(({ class: kind = 'unknown' }) => kind === 'tide line');

/** Sides on which every colour is tested: both where the two faces may differ. */
export function sidesToTest(facts: PlanFacts): readonly (readonly Side[])[] {
  const { construction = 'unknown' } = facts;
  const bothFaces =
    construction === 'flatweave' ||
    construction === 'unknown' ||
    mayHave(facts, 'painted', 'inked', 'touched up', 'tip fading');
  return bothFaces ? [['face'], ['back']] : [['face', 'back']];
}

/** Liquids whose staining decides what bath a colour bears. */
const bathLiquids: readonly TestLiquid[] = [
  'damp crock',
  'cold water',
  'planned bath',
  'acid rinse',
  'spotter',
];

const worstOf = (tests: readonly GradedTest[]): GradedTest | undefined =>
  tests.reduce<GradedTest | undefined>(
    (worst, one) => (worst === undefined || worse(one.grade, worst.grade) !== worst.grade ? one : worst),
    undefined,
  );

function standingOf(colour: PlanColour, worst: GradedTest | undefined, missing: boolean): DyeStanding {
  if (worst === undefined) return missing ? 'unknown' : 'stable';
  const { grade } = worst;
  if (atMost(grade, '2-3')) return 'do not immerse';
  if (atMost(grade, '3') && colour.besideLightField !== false) return 'do not immerse';
  if (missing) return 'unknown';
  if (atMost(grade, '3-4')) return 'controlled';
  return grade === '4' ? 'watch' : 'stable';
}

function traitsOf(book: Rulebook, tests: readonly GradedTest[]): readonly DyeTrait[] {
  const of = (...liquids: readonly TestLiquid[]) => tests.filter(({ test }) => liquids.includes(test.liquid));
  const crocks = of('dry crock').some(({ grade }) => atMost(grade, '4'));
  const acid = tests.some(
    ({ test }) =>
      test.liquid === 'acid rinse' &&
      test.colourChangeGrade !== undefined &&
      atMost(test.colourChangeGrade, '4'),
  );
  const margin = of('margin', 'alkali challenge');
  const proven = margin.some(
    ({ test, grade }) => test.liquid === 'margin' && !fails(grade) && inDate(book, test),
  );
  const slow = of('covered 24 h').some(({ grade }) => fails(grade));
  return [
    ...(crocks ? (['surface colour'] as const) : []),
    ...(acid ? (['acid sensitive'] as const) : []),
    ...(margin.some(({ grade }) => fails(grade)) || !proven ? (['thin margin'] as const) : []),
    ...(slow ? (['slow bleeder'] as const) : []),
  ];
}

/**
 * What the tests say of one colour.
 *
 * @param facts - all facts of the rug
 * @param colour - the colour
 * @param missing - whether a test that wet work waits for is still missing
 * @source workshop-setting, table of dye classes (data/wash/dyeTests.json); the test is one of many factors (cci-13-14)
 */
export function dyeClassOf(facts: PlanFacts, colour: PlanColour, missing: boolean): ColourVerdict {
  const tests = gradedTests(facts, colour.id);
  // A day under cover that fails makes a slow bleeder; one that only marks the cloth counts like a bath.
  const worst = worstOf(
    tests.filter(
      ({ test, grade }) =>
        bathLiquids.includes(test.liquid) || (test.liquid === 'covered 24 h' && !fails(grade)),
    ),
  );
  const { id, name, kind } = colour;
  return {
    colour: id,
    name,
    kind,
    standing: standingOf(colour, worst, missing),
    traits: traitsOf(bookOf(facts), tests),
    ...(worst === undefined
      ? {}
      : { binding: { liquid: worst.test.liquid, side: worst.test.side, grade: worst.grade } }),
  };
}
