import type { Noted } from '../dossier/index.ts';
import { intervalWords } from './factWords.ts';
import { figure, momentWords } from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import { facts, figures, heading, notice, row, table, text, words } from './parts.ts';
import { personWords } from './visitWords.ts';

type Compared = Noted<'ColoursCompared'>;

const labWords = ({ L, a, b }: Compared['colours'][number]['before']): string =>
  [L, a, b].map((value) => value.toFixed(1)).join(', ');

const changeWords = ({ by, half95 }: Compared['lightness']): string =>
  `${by > 0 ? '+' : ''}${figure(by)} ± ${figure(half95)}`;

/**
 * What changed between two photographs of the rug: sentence, pictures, map of differences, colours.
 *
 * @param compared - the comparison as it stands in the record
 * @source iso-105-a05, the grades of change in colour
 */
export function comparisonParts(compared: Compared, context: PaperContext): readonly PaperPart[] {
  const { shown, colours, before, after, unmeasured = [] } = compared;
  const moved = colours.filter(({ hueMoved }) => hueMoved);
  return [
    heading(1, 'Colours before and after'),
    text(compared.sentence, 'lead'),
    ...(moved.length === 0
      ? []
      : [
          notice('stop', `Hue moved: ${moved.map(({ name }) => name).join(', ')}`, [
            'That is dye, not soil. The client is told.',
          ]),
        ]),
    {
      kind: 'pictures',
      across: 2,
      pictures: [
        { photo: shown.before.photo, caption: `Before the work, light corrected with card ${before.card}` },
        { photo: shown.after.photo, caption: `After the work, light corrected with card ${after.card}` },
      ],
    },
    {
      kind: 'picture',
      photo: shown.map.photo,
      caption: `Difference at each place, ΔE00, with its scale. Half of the rug differs by more than ${figure(compared.middleDeltaE)}.`,
    },
    table(
      [
        words('Colour', 1.4),
        words('Before, L* a* b*', 1.4),
        words('After, L* a* b*', 1.4),
        figures('ΔE F', 0.6),
        words('Grade, 95 %', 1.1),
        words('Hue', 1.2),
      ],
      colours.map(({ name, before: was, after: is, deltaEF, grade, gradeInterval, hueMoved, hueTurnDeg }) => [
        name,
        labWords(was),
        labWords(is),
        figure(deltaEF),
        `${grade} (${intervalWords(gradeInterval)})`,
        hueMoved ? `moved by ${figure(Math.abs(hueTurnDeg), 0)}°` : 'as before, within measurement',
      ]),
      'No colour was measured by itself.',
      'Grades of the grey scale for change in colour, by the formula of ISO 105-A05.',
    ),
    ...(unmeasured.length === 0
      ? []
      : [text(`Not measured: ${unmeasured.map(({ name }) => name).join(', ')}.`, 'soft')]),
    facts(
      row('Lightness over the rug', changeWords(compared.lightness), 'L*, with its 95 % interval'),
      row('Colourfulness over the rug', changeWords(compared.chroma), 'C*, with its 95 % interval'),
      row(
        'What cannot have changed',
        `ΔE ${figure(compared.controlDeltaE)}`,
        'the card’s greys between the two pictures',
      ),
      row(
        'Compared by',
        personWords(context, compared.by),
        `${momentWords(compared.when, context.timeZone)}; laid over each other by the ${compared.alignedBy}; calculation ${compared.algorithm}`,
      ),
    ),
    text(
      'Colours of photographs are relative: they hold for these two pictures, not as a colour standard.',
      'soft',
    ),
  ];
}
