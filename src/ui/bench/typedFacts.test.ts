import { describe, expect, test } from 'vitest';
import { nothingKnown, planFactsOfTyped } from './typedFacts.ts';

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
      ph: null,
      temperatureC: 24,
      minutes: 10,
    } as const;
    expect(planFactsOfTyped({ ...sized, tests: [{ ...blot, grade: null }] })?.dyeTests).toEqual([]);
    expect(planFactsOfTyped({ ...sized, tests: [{ ...blot, grade: '4' }] })?.dyeTests).toMatchObject([
      { colour: 'c1', grade: '4', outcome: 'graded', temperatureC: 24 },
    ]);
  });

  test('latex is asked of tufted rugs only', () => {
    expect(planFactsOfTyped({ ...sized, construction: 'flatweave' })).not.toHaveProperty('latex');
    expect(planFactsOfTyped({ ...sized, construction: 'tufted' })?.latex).toBe('unknown');
  });
});
