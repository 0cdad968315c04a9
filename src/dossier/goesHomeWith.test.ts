import { describe, expect, test } from 'vitest';
import { inventedPlan } from '../../test/support/inventedPlan.ts';
import {
  coloursNamed,
  entriesOf,
  identified,
  lookedOver,
  measured,
  opened,
  received,
  weighed,
} from '../../test/support/rugStory.ts';
import type { PlanStep } from '../core/wash/index.ts';
import { standingOf } from './evolve.ts';
import type { RugFact } from './facts/index.ts';
import { goesHomeWith } from './goesHomeWith.ts';
import { stepId } from './planFacts.ts';
import { firstSettings } from './workshopFacts.ts';

const [firstStep] = inventedPlan.steps;
if (firstStep === undefined) throw new Error('the invented plan has steps');
const { stain: _stain, targetPh: _targetPh, ...whole } = firstStep;
const wash: PlanStep = { ...whole, order: 1, kind: 'wash', wet: true, agents: ['neutral detergent'] };
const acidRinse: PlanStep = { ...whole, order: 2, kind: 'acid rinse', wet: true, agents: ['citric acid'] };
const worked = (step: PlanStep, ...during: readonly RugFact[]): readonly RugFact[] => [
  { type: 'StepStarted', step: stepId(step), wets: true },
  ...during,
  { type: 'StepDone', step: stepId(step) },
];
const acidAt = (ph: number): RugFact => ({ type: 'BathMeasured', step: stepId(acidRinse), ph, photos: [] });
const atSupply: RugFact = {
  ...{ type: 'RinseMeasured', conductivityUsPerCm: 410, supplyConductivityUsPerCm: 400 },
  ...{ ph: 7.3, supplyPh: 7.4, foam: 'none' },
} as const satisfies RugFact;
const agreed: RugFact = {
  ...{ type: 'PlanAgreed', rulebook: '2026-1', method: 'flow wash', fingerprint: 'f'.repeat(64) },
  plan: { ...inventedPlan, steps: [wash, acidRinse].map((step) => ({ ...step })) },
};
const known = [opened, received, measured, weighed, lookedOver, identified, coloursNamed, agreed];
const leftAfter = (...facts: readonly RugFact[]) =>
  goesHomeWith(standingOf(entriesOf([...known, ...facts])), firstSettings).map(({ agent }) => agent);

// What the final acid rinse leaves, and what clears the rest: common practice, no published source.
describe('what goes home in a rug', () => {
  test('is its detergent until two readings stand at the supply, named once however often it was laid', () => {
    expect(leftAfter(...worked(wash))).toEqual(['neutral detergent']);
    expect(leftAfter(...worked(wash), ...worked(wash))).toEqual(['neutral detergent']);
    expect(leftAfter(...worked(wash, atSupply))).toEqual(['neutral detergent']);
    expect(leftAfter(...worked(wash, atSupply, atSupply))).toEqual([]);
  });
  test('is not the acid the plan leaves in it, as long as its pH was read within its band', () => {
    // The invented plan leaves the rug at pH 4.5 to 6.5.
    expect(leftAfter(...worked(acidRinse, acidAt(5.2)))).toEqual([]);
    expect(leftAfter(...worked(acidRinse, acidAt(3.4)))).toEqual(['citric acid']);
    expect(leftAfter(...worked(acidRinse))).toEqual(['citric acid']);
  });
});
