import { stainingGrade } from '../../core/colour/index.ts';
import { type Grade, grades } from '../../core/wash/index.ts';
import type { RugFactOf } from '../facts/index.ts';
import type { RugProblem } from '../rugProblem.ts';
import type { RugStanding } from '../standing.ts';
import type { Rules } from './rule.ts';

type Reading = RugFactOf<'DyeTested'>['reading'];
type Measured = Extract<Reading, { readonly by: 'photograph' }>;

/** Probabilities are kept with three places at least. */
const roundingSlack = 0.02;

const colourUnnamed = (standing: RugStanding, colour: string): RugProblem | null =>
  standing.colours.some((named) => named.colour === colour)
    ? null
    : { code: 'colour-not-named', facts: { colour } };

interface Chances {
  readonly grade: Grade;
  readonly gradeInterval: { readonly lowest: Grade; readonly highest: Grade };
  readonly probability: Readonly<Partial<Record<Grade, number>>>;
}

/** A grade outside its own interval, or chances that do not add up, were not measured together. */
function chancesDisagree({ grade, gradeInterval, probability }: Chances): RugProblem | null {
  const [at, lowest, highest] = [grade, gradeInterval.lowest, gradeInterval.highest].map((one) =>
    grades.indexOf(one),
  ) as [number, number, number];
  if (at < lowest || at > highest)
    return {
      code: 'measured-figures-disagree',
      facts: {
        figure: 'grade',
        given: grade,
        expected: `${gradeInterval.lowest} to ${gradeInterval.highest}`,
      },
    };
  const sum = Object.values(probability).reduce((total, share) => total + (share ?? 0), 0);
  return Math.abs(sum - 1) > roundingSlack
    ? {
        code: 'measured-figures-disagree',
        facts: { figure: 'sum of the probabilities', given: sum.toFixed(2), expected: '1.00' },
      }
    : null;
}

function measuredProblem(reading: Measured, photos: readonly string[]): RugProblem | null {
  if (photos.length === 0) return { code: 'measured-without-photograph', facts: {} };
  const { staining, deltaEGS } = reading;
  // A difference of lightness alone is its own ΔE_GS.
  const expected = stainingGrade({ L: 0, a: 0, b: 0 }, { L: -deltaEGS, a: 0, b: 0 }).grade;
  if (staining !== expected)
    return { code: 'measured-figures-disagree', facts: { figure: 'grade', given: staining, expected } };
  return chancesDisagree({ ...reading, grade: staining });
}

function readingProblem(reading: Reading, photos: readonly string[]): RugProblem | null {
  if (reading.kind === 'unclear') return null;
  if (reading.by === 'photograph') return measuredProblem(reading, photos);
  return reading.control === '5' || reading.control === '4-5'
    ? null
    : { code: 'control-stained', facts: { control: reading.control } };
}

export const colourRules: Rules = {
  DyeTested: (standing, { colour, reading, liquid, minutes, photos }) => {
    const problem = colourUnnamed(standing, colour) ?? readingProblem(reading, photos);
    if (problem !== null) return problem;
    const timed = liquid !== 'dry crock' && liquid !== 'damp crock';
    return timed && reading.kind === 'graded' && minutes === undefined
      ? { code: 'test-without-minutes', facts: { liquid } }
      : null;
  },
  DyeTestStarted: (standing, { colour }) => colourUnnamed(standing, colour),
  DyeTestRefused: (standing, { colour }) => colourUnnamed(standing, colour),
  ColoursCompared: (standing, { before, after, colours }) => {
    for (const { colour, ...row } of colours) {
      const problem = (colour === undefined ? null : colourUnnamed(standing, colour)) ?? chancesDisagree(row);
      if (problem !== null) return problem;
    }
    const [first, second] = [before, after].map(({ photo }) =>
      standing.photographs.find((known) => known.photo === photo),
    );
    if (first === undefined) return { code: 'picture-of-another-rug', facts: { photo: before.photo } };
    if (second === undefined) return { code: 'picture-of-another-rug', facts: { photo: after.photo } };
    return second.when > first.when
      ? null
      : { code: 'pictures-swapped', facts: { beforeAt: first.when, afterAt: second.when } };
  },
};
