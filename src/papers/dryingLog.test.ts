import { expect, test } from 'vitest';
import { paperContextOf } from '../../test/support/paperStory.ts';
import { type Told, wholeTold } from '../../test/support/paperTold.ts';
import type { RugFact } from '../dossier/index.ts';
import { makePaper, type PaperContext } from './index.ts';

const isPut = ([, fact]: Told<RugFact>): boolean => fact.type === 'DryingStarted';
/** The story with its drying place told otherwise, and a move an hour later. */
const moved = wholeTold.flatMap((told): readonly Told<RugFact>[] => {
  const [hour, fact] = told;
  if (!isPut(told) || fact.type !== 'DryingStarted') return [told];
  const hung = { ...fact, heated: false, position: { from: 'left', mm: 1800 } } as const;
  return [
    [hour, hung],
    [hour + 1, { ...fact, place: 'drying room, mesh 3', heated: true }],
  ];
});

const wordsOf = (units: 'metric' | 'customary'): string => {
  const context: PaperContext = paperContextOf({ told: moved });
  const settings = { ...context.workshop.settings, units };
  const paper = makePaper('drying-log', { ...context, workshop: { ...context.workshop, settings } });
  if (!paper.ok) throw new Error(paper.problem.code);
  return JSON.stringify(paper.value);
};

test('a drying log tells every place the rug dried at, where along it, and whether heat was on', () => {
  expect(wholeTold.some(isPut)).toBe(true);
  const words = wordsOf('metric');
  expect(words).toContain('mesh 2, 180 cm from its left end');
  expect(words).toContain('without heat');
  expect(words).toContain('drying room, mesh 3');
  expect(words).toContain('with heat');
  expect(words).not.toContain('°F');
});

// NIST SP 811, appendix B.8: an inch is 25.4 mm, a pound 0.45359237 kg, °F = 1.8 × °C + 32.
test('a workshop of feet and pounds reads them beside the metric figures', () => {
  const words = wordsOf('customary');
  expect(words).toContain('180 cm (5 ft 11 in) from its left end');
  expect(words).toMatch(/[\d.]+ lb\)/);
  expect(words).toMatch(/°C \([\d.]+ °F\)/);
});
