import { expect, test } from 'vitest';
import { inventedPlan } from '../../test/support/inventedPlan.ts';
import { entriesOf, knownRug, minutesLater } from '../../test/support/rugStory.ts';
import type { PlanStep } from '../core/wash/index.ts';
import { type RugFact, standingOf, stepId, wetMinutesAhead } from './index.ts';

const [pattern] = inventedPlan.steps;
if (pattern === undefined) throw new Error('the invented plan has no step');
const { dwellMinutes: _none, ...bare } = pattern;
const step = (order: number, kind: PlanStep['kind'], more: Partial<PlanStep>): PlanStep => ({
  ...{ ...bare, order, kind, wet: true, amounts: [] },
  ...more,
});
const minutes = (least: number, most: number): PlanStep['amounts'] => [
  { agent: 'work', least, most, unit: 'min', source: 'workshop-setting' },
];
const soak = step(1, 'acid pre-treatment', { dwellMinutes: 15 });
const wash = step(2, 'wash', { dwellMinutes: 8, amounts: minutes(20, 30) });
const extract = step(3, 'extract', { amounts: minutes(3, 8) });
const fringe = step(4, 'fringe', { dwellMinutes: 40 });
const onRecord = {
  ...{ type: 'PlanAgreed', rulebook: 'r', fingerprint: 'f', method: 'flow wash' },
  plan: { ...inventedPlan, steps: [soak, wash, extract, fringe] },
} as unknown as RugFact;

/** Told a minute apart; `at` is the moment of the last of them. */
function told(...facts: readonly RugFact[]) {
  const entries = entriesOf([...knownRug().entries.map(({ fact }) => fact), onRecord, ...facts]);
  return { standing: standingOf(entries), at: entries.at(-1)?.at ?? '' };
}

// Sums by hand from the minutes above.
test('what the rest of the plan keeps the rug wet counts up to its extraction, done steps left out', () => {
  const { standing, at } = told();
  expect(wetMinutesAhead(standing, at)).toEqual({ least: 15 + 8 + 3, most: 15 + 30 + 8 });
  const begun = told(
    { type: 'StepStarted', step: stepId(soak), wets: true },
    { type: 'StepDone', step: stepId(soak), early: 'clean' },
    { type: 'StepStarted', step: stepId(wash), wets: true },
  );
  const fiveOn = minutesLater(begun.at, 5);
  expect(wetMinutesAhead(begun.standing, fiveOn)).toEqual({ least: 3 + 3, most: 25 + 8 });
});

test('a step that runs over its time takes none away from the steps after it', () => {
  const { standing, at } = told({ type: 'StepStarted', step: stepId(wash), wets: true });
  expect(wetMinutesAhead(standing, minutesLater(at, 90))).toEqual({ least: 15 + 3, most: 15 + 8 });
});
