import { expect, test } from 'vitest';
import {
  coloursNamed,
  entriesOf,
  identified,
  lookedOver,
  measured,
  opened,
  received,
  weighed,
} from '../../../test/support/rugStory.ts';
import { firstSettings, type RugFact, standingOf } from '../../dossier/index.ts';
import { stillInItWords } from './stillInIt.ts';

const stain: RugFact = {
  ...{ type: 'MarkRecorded', mark: 'm1', word: 'stain', side: 'face', shape: 'point', stain: 'tannin' },
  ...{ pointsMm: [{ xMm: 400, yMm: 900 }], grade: 1, activity: 'stable', photos: [] },
} as const satisfies RugFact;
const spotted = (agent: 'citric acid' | 'acetone'): RugFact => ({
  ...{ type: 'SpotTreated', mark: 'm1', golden: 'tannin', agents: [agent] },
  ...{ outcome: 'lighter', photos: [] },
});
const wordsAfter = (...facts: readonly RugFact[]) =>
  stillInItWords(
    standingOf(
      entriesOf([opened, received, measured, weighed, lookedOver, identified, coloursNamed, stain, ...facts]),
    ),
    firstSettings,
  );

test('nothing is said of a rug in which nothing was laid', () => {
  expect(wordsAfter()).toBeNull();
});

test('what this visit laid is rinsed and read, and nobody may answer for it', () => {
  const words = wordsAfter(spotted('citric acid'));
  expect(words?.what).toEqual(['citric acid, mark 1, tannin']);
  const now = words?.now.join(' ') ?? '';
  expect(now).toContain('two readings in a row stand at the supply');
  expect(now).toContain('dried and proven dry again');
  expect(now).not.toContain('answered for');
  expect(now).toContain('It may go home as it is');
});

test('a solvent is aired, not rinsed', () => {
  const now = wordsAfter(spotted('acetone'))?.now.join(' ') ?? '';
  expect(now).toContain('away from any flame or spark');
  expect(now).not.toContain('two readings');
});

test('what others left may be answered for, with the reason', () => {
  const words = wordsAfter({ type: 'OldTreatmentTold', agents: ['sodium carbonate'], toldBy: 'the client' });
  expect(words?.what).toEqual(['sodium carbonate, all over the rug']);
  expect(words?.now.join(' ')).toContain('may also be answered for, with the reason');
});
