import { expect, test } from 'vitest';
import { stages } from '../../dossier/stage.ts';
import { stageOptions, stageWords } from './stageWords.ts';

test('a rug in the house is never said to be washed or dry before it is', () => {
  expect(stageWords({ stage: 'washed', inHouse: true })).toBe('to wash');
  expect(stageWords({ stage: 'dried', inHouse: true })).toBe('to dry');
  expect(stageWords({ stage: 'returned', inHouse: true })).toBe('to hand back');
});

test('a rug that went home is told as how its visit ended', () => {
  expect(stageWords({ stage: 'returned', inHouse: false })).toBe('returned');
  expect(stageWords({ stage: 'declined', inHouse: false })).toBe('declined');
});

test('every stage can be looked for', () => {
  expect(stageOptions.map(({ value }) => value)).toEqual([...stages, 'declined']);
});
