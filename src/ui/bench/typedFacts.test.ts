import { describe, expect, test } from 'vitest';
import { nothingKnown, planFactsOfTyped, type TypedFacts } from './typedFacts.ts';

const sized = { ...nothingKnown, lengthCm: 300, widthCm: 200 };

describe('facts typed at the bench', () => {
  test('without a size there is nothing to plan from', () => {
    expect(planFactsOfTyped({ ...sized, widthCm: null })).toBeNull();
  });

  test('three metres by two are six square metres', () => {
    expect(planFactsOfTyped(sized)?.areaM2).toBe(6);
  });

  test('a rug nobody has looked over has no findings, not an empty list of them', () => {
    expect(planFactsOfTyped(sized)).not.toHaveProperty('findings');
    expect(planFactsOfTyped({ ...sized, isLookedOver: true })?.findings).toEqual([]);
  });

  test('what is left empty is left out, never taken as nought', () => {
    const facts = planFactsOfTyped(sized);
    expect(facts).not.toHaveProperty('dryMassKg');
    expect(facts).not.toHaveProperty('expectedDryingHours');
    expect(facts).not.toHaveProperty('pileHeightMm');
  });

  test('a blot that was not read yet proves nothing', () => {
    const blot = {
      id: 't1',
      colour: 'c1',
      side: 'face',
      liquid: 'cold water',
      colourChange: null,
      ph: null,
      temperatureC: 24,
      minutes: 10,
    } as const;
    expect(planFactsOfTyped({ ...sized, tests: [{ ...blot, grade: null }] })?.dyeTests).toEqual([]);
    expect(planFactsOfTyped({ ...sized, tests: [{ ...blot, grade: '4' }] })?.dyeTests).toMatchObject([
      { colour: 'c1', grade: '4', outcome: 'graded', temperatureC: 24 },
    ]);
  });

  test('the change of a colour in acid is only what was read, never taken from the staining', () => {
    const blot = { id: 't1', colour: 'c1', side: 'face', liquid: 'acid rinse', grade: '5' } as const;
    const open = { ...blot, colourChange: null, ph: 4.5, temperatureC: 24, minutes: 10 };
    const [test] = planFactsOfTyped({ ...sized, tests: [open] })?.dyeTests ?? [];
    expect(test).not.toHaveProperty('colourChangeGrade');
  });

  test('latex is asked of tufted rugs only', () => {
    expect(planFactsOfTyped({ ...sized, construction: 'flatweave' })).not.toHaveProperty('latex');
    expect(planFactsOfTyped({ ...sized, construction: 'tufted' })?.latex).toBe('unknown');
  });

  test('the cloth behind a piece is asked of tufted and hooked ones, and unknown until it is named', () => {
    const backingOf = (construction: TypedFacts['construction']) =>
      planFactsOfTyped({ ...sized, construction })?.foundation?.backing;
    expect([backingOf('knotted pile'), backingOf('tufted'), backingOf('hooked')]).toEqual([
      undefined,
      'unknown',
      'unknown',
    ]);
  });

  test('a bath of one’s own is weighed as soon as it holds anything, and its pH is never guessed', () => {
    expect(planFactsOfTyped(sized)?.plannedBaths).toEqual([]);
    expect(planFactsOfTyped({ ...sized, bathAgents: ['ammonia'] })?.plannedBaths).toEqual([
      { purpose: 'your own bath', agents: ['ammonia'] },
    ]);
  });
});
