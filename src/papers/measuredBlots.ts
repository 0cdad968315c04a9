import { grades } from '../core/wash/index.ts';
import { countsAs, type Noted, type RugFactOf } from '../dossier/index.ts';
import { intervalWords } from './factWords.ts';
import { figure } from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import { figures, heading, table, text, words } from './parts.ts';

type Measured = Extract<RugFactOf<'DyeTested'>['reading'], { readonly by: 'photograph' }>;

/** How a measured blot is labelled: the short blot is no result of the four hours of a standard test. */
export const measuredLabel = 'Blot, graded with the ISO 105-A04 formula.';

/** Whether a blot was graded from a photograph. */
export const isMeasured = ({ reading }: Noted<'DyeTested'>): boolean =>
  reading.kind === 'graded' && reading.by === 'photograph';

/** `3 (3 to 3-4)`: the grade with its interval, where that is wider than the grade. */
export const measuredGrade = ({ staining, gradeInterval }: Measured): string => {
  const interval = intervalWords(gradeInterval);
  return interval === staining ? staining : `${staining} (${interval})`;
};

/** Grades with their probabilities, worst first; what is below one in two hundred is left out. */
export const chancesWords = (probability: Measured['probability']): string =>
  grades
    .flatMap((grade) => {
      const share = probability[grade] ?? 0;
      return share < 0.005 ? [] : [`${grade}: ${figure(share * 100, 0)} %`];
    })
    .join(', ');

const setWith = ({ card, pictures, sigma, algorithm }: Measured): string =>
  [
    `card ${card}`,
    pictures === 'one' ? 'one picture' : 'pictures before and after the test',
    `noise ${figure(sigma)}`,
    `calculation ${algorithm}`,
  ].join(', ');

/**
 * What was measured on each photograph of a blot, with the measured places drawn on it.
 *
 * @param nameOf - name of a colour by its id
 * @source iso-105-a04, the formula
 */
export function measuredBlots(
  context: PaperContext,
  nameOf: (colour: string) => string,
): readonly PaperPart[] {
  const measured = context.rug.dyeTests.flatMap((test) =>
    test.reading.kind === 'graded' && test.reading.by === 'photograph'
      ? [{ test, reading: test.reading }]
      : [],
  );
  if (measured.length === 0) return [];
  const name = ({ colour, side, liquid }: Noted<'DyeTested'>) => `${nameOf(colour)}, ${side}, ${liquid}`;
  return [
    heading(1, 'Measured on photographs'),
    text(measuredLabel, 'lead'),
    table(
      [
        words('Blot', 1.6),
        figures('ΔE', 0.6),
        figures('ΔE GS', 0.7),
        words('Grade, 95 %', 1.1),
        words('Probability of each grade', 1.5),
        figures('Counts as', 0.8),
        words('Measured with', 1.6),
      ],
      measured.map(({ test, reading }) => [
        name(test),
        figure(reading.deltaE),
        figure(reading.deltaEGS),
        measuredGrade(reading),
        chancesWords(reading.probability),
        countsAs(test) ?? '–',
        setWith(reading),
      ]),
      '',
    ),
    text(
      'Colours are relative to their own photograph, corrected with the weave card in it. The worst grade with a probability above 5 % counts (workshop setting).',
      'soft',
    ),
    {
      kind: 'pictures',
      across: 2,
      pictures: measured.flatMap(({ test, reading }) => {
        const photo = test.photos.at(-1);
        if (photo === undefined) return [];
        const outlined = (label: string) => (place: Measured['places']['sample']) => ({
          ...{ label, shape: 'polygon' as const },
          points: place.map(({ x, y }) => [x, y] as const),
        });
        const { controls, sample } = reading.places;
        const marks = [...controls.map(outlined('C')), outlined('B')(sample)];
        return [{ photo, caption: `${name(test)}. C: clean cloth, B: blot.`, marks }];
      }),
    },
  ];
}
