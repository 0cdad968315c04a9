import { atMost, gradedTests, hasMarkedPlace, inDate, sidesToTest } from './dyeVerdict.ts';
import type { DyeTest, PlanColour, PlanFacts, Side } from './planFacts.ts';
import { bookOf, type Rulebook } from './rulebook.ts';

/**
 * Whether a reading was recorded fully enough to prove anything: a bath without its pH, warmth or minutes,
 * or of other agents, proves nothing; an acid rinse proves nothing without the colour's own change.
 *
 * @source workshop-setting (data/wash/dyeTests.json)
 */
export function isRecorded({ tests: settings }: Rulebook, test: DyeTest): boolean {
  const { liquid, agents, pH, temperatureC, minutes, colourChangeGrade } = test;
  switch (liquid) {
    case 'planned bath':
    case 'margin': {
      const same =
        agents === undefined || settings.bathAgents.every((one) => agents.some((it) => it === one));
      return same && pH !== undefined && temperatureC !== undefined && minutes !== undefined;
    }
    case 'acid rinse':
      return pH !== undefined && colourChangeGrade !== undefined;
    case 'cold water':
      return (minutes ?? settings.blotMinutes) >= settings.blotMinutes;
    case 'covered 24 h':
      return (minutes ?? 24 * 60) >= 24 * 60;
    case 'dry crock':
    case 'damp crock':
    case 'alkali challenge':
    case 'spotter':
      return true;
  }
}

/** A bath reading that covers a wash: graded above 2-3, in date and fully recorded. */
export interface ProvenBath {
  readonly pH: number;
  readonly temperatureC: number;
  readonly minutes: number;
  readonly strengthGPerL: number;
}

const provenAt = (
  book: Rulebook,
  facts: PlanFacts,
  colour: string,
  sides: readonly Side[],
  urine: boolean,
): ProvenBath | undefined =>
  gradedTests(facts, colour)
    .filter(
      ({ test, grade }) =>
        test.liquid === 'planned bath' &&
        sides.includes(test.side) &&
        (test.atUrinePlace ?? false) === urine &&
        !atMost(grade, '2-3') &&
        inDate(book, test) &&
        isRecorded(book, test),
    )
    .map(({ test: { pH = 7, temperatureC = 0, minutes = 0, strengthGPerL = book.tests.strengthGPerL } }) => ({
      pH,
      temperatureC,
      minutes,
      strengthGPerL,
    }))
    .sort((a, b) => b.temperatureC - a.temperatureC || b.minutes - a.minutes)[0];

/**
 * The bath each place of a colour was proven for: every side that counts, and the marked places.
 *
 * @returns one entry per place; undefined where no reading covers it
 * @source workshop-setting (data/wash/dyeTests.json)
 */
export function provenBaths(facts: PlanFacts, colour: PlanColour): readonly (ProvenBath | undefined)[] {
  const book = bookOf(facts);
  const places = sidesToTest(facts).map((sides) => provenAt(book, facts, colour.id, sides, false));
  return hasMarkedPlace(facts) && colour.atUrinePlace !== false
    ? [...places, provenAt(book, facts, colour.id, ['face', 'back'], true)]
    : places;
}
