import { expect, test } from 'vitest';
import { entriesOf } from '../../test/support/rugStory.ts';
import { standingOf } from './evolve.ts';
import type { RugFact } from './facts/index.ts';

const on = { colour: 'red', side: 'face', liquid: 'spotter' } as const;
const read: RugFact = {
  ...{ type: 'DyeTested', ...on, agents: ['metabisulfite'], minutes: 10, photos: [] },
  reading: { kind: 'graded', by: 'eye', staining: '5', control: '5', colourChange: '5' },
};

test('a blot of one spotter lies on when another is read at the same colour', () => {
  const lying = (agent: 'citric acid' | 'metabisulfite') =>
    standingOf(entriesOf([{ type: 'DyeTestStarted', ...on, agents: [agent], minutes: 10 }, read])).lyingBlots;
  expect(lying('citric acid')).toHaveLength(1);
  expect(lying('metabisulfite')).toHaveLength(0);
});
