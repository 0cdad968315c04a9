import Color from 'colorjs.io';
import { expect, test } from 'vitest';
import table from '../../../../data/wash/greyScales.json' with { type: 'json' };
import { agreesWith } from '../../../../test/support/agreesWith.ts';
import { type Grade, grades } from '../../../core/wash/index.ts';
import { greyPair } from './greyPair.ts';

const lightnessOf = (colour: string): number => new Color(colour).to('lab-d65').coords[0] ?? Number.NaN;
const drawn = (scale: 'staining' | 'change', grade: Grade): number => {
  const [from, to] = greyPair(scale, grade);
  return Math.abs(lightnessOf(from) - lightnessOf(to));
};

const tolerances: { readonly [G in Grade]: readonly [staining: number, change: number] } = {
  '5': [0.2, 0.2],
  '4-5': [0.3, 0.2],
  '4': [0.3, 0.3],
  '3-4': [0.4, 0.35],
  '3': [0.5, 0.4],
  '2-3': [0.7, 0.5],
  '2': [1.0, 0.6],
  '1-2': [1.5, 0.7],
  '1': [2.0, 1.0],
};

// The colours are read back by another open library; 0.25 is half a step of an eight-bit grey.
agreesWith(
  {
    source: 'iso-105-a03',
    where: 'colour difference of each step of the staining scale',
    readFrom: 'the standard’s table of steps and tolerances',
    within: (expected) => {
      const row = table.rows.find(({ staining }) => staining === expected);
      return (tolerances[row?.grade as Grade]?.[0] ?? 0) + 0.25;
    },
    because: 'the tolerance the standard allows a printed scale, and half a step of the screen',
    rows: [
      { grade: '5' as Grade, expected: 0 },
      { grade: '4-5' as Grade, expected: 2.2 },
      { grade: '4' as Grade, expected: 4.3 },
      { grade: '3-4' as Grade, expected: 6.0 },
      { grade: '3' as Grade, expected: 8.5 },
      { grade: '2-3' as Grade, expected: 12.0 },
      { grade: '2' as Grade, expected: 16.9 },
      { grade: '1-2' as Grade, expected: 24.0 },
      { grade: '1' as Grade, expected: 34.1 },
    ],
  },
  ({ grade }) => drawn('staining', grade),
);

agreesWith(
  {
    source: 'iso-105-a02',
    where: 'colour difference of each step of the scale for change in colour',
    readFrom: 'the standard’s table of steps and tolerances',
    within: (expected) => {
      const row = table.rows.find(({ change }) => change === expected);
      return (tolerances[row?.grade as Grade]?.[1] ?? 0) + 0.25;
    },
    because: 'the tolerance the standard allows a printed scale, and half a step of the screen',
    rows: [
      { grade: '5' as Grade, expected: 0 },
      { grade: '4-5' as Grade, expected: 0.8 },
      { grade: '4' as Grade, expected: 1.7 },
      { grade: '3-4' as Grade, expected: 2.5 },
      { grade: '3' as Grade, expected: 3.4 },
      { grade: '2-3' as Grade, expected: 4.8 },
      { grade: '2' as Grade, expected: 6.8 },
      { grade: '1-2' as Grade, expected: 9.6 },
      { grade: '1' as Grade, expected: 13.6 },
    ],
  },
  ({ grade }) => drawn('change', grade),
);

test('a worse grade is never drawn fainter than a better one', () => {
  for (const scale of ['staining', 'change'] as const) {
    const steps = grades.map((grade) => drawn(scale, grade));
    expect(steps).toEqual([...steps].sort((a, b) => b - a));
  }
});
