import { describe, expect, test } from 'vitest';
import { findingCodes, stainClasses } from '../wash/index.ts';
import {
  conditionFamilies,
  conditionGrades,
  conditionWord,
  conditionWords,
  familyTitles,
  findingsSuggested,
  gradeMeanings,
  markShapes,
} from './conditionWords.ts';

describe('the condition list', () => {
  test('every word stands once, in a known family, with a grade and a shape', () => {
    expect(new Set(conditionWords.map(({ word }) => word)).size).toBe(conditionWords.length);
    for (const row of conditionWords) {
      expect(conditionFamilies).toContain(row.family);
      expect(conditionGrades).toContain(row.gradeHint);
      expect(markShapes).toContain(row.shape);
      expect(row.means).toMatch(/\.$/);
    }
  });

  test('every finding a word speaks for is a finding of the plan', () => {
    for (const { suggests, suggestsUnlessStable } of conditionWords) {
      for (const code of [...suggests, ...suggestsUnlessStable]) expect(findingCodes).toContain(code);
    }
  });

  test('every class a stain word begins from is a class of the plan', () => {
    const classes = conditionWords.flatMap(({ stain }) => (stain === undefined ? [] : [stain]));
    expect(classes.length).toBeGreaterThan(0);
    for (const stain of classes) expect(stainClasses).toContain(stain);
  });

  test('every family has a title and words, and every grade a meaning', () => {
    expect(familyTitles.map(({ family }) => family)).toEqual([...conditionFamilies]);
    for (const family of conditionFamilies)
      expect(conditionWords.some((row) => row.family === family)).toBe(true);
    expect(gradeMeanings.map(({ grade }) => grade)).toEqual([...conditionGrades]);
  });

  test('old moth tracks speak for living moth until somebody calls them stable', () => {
    expect(findingsSuggested('moth grazing', 'unknown')).toContain('active moth');
    expect(findingsSuggested('moth grazing', 'stable')).not.toContain('active moth');
  });

  test('a hole is a hole whatever is said of it', () => {
    expect(findingsSuggested('hole', 'stable')).toEqual(['hole']);
    expect(findingsSuggested('no such word', 'active')).toEqual([]);
    expect(conditionWord('no such word')).toBeUndefined();
  });
});
