import type { Noted } from '../dossier/index.ts';
import { comparisonParts } from './comparison.ts';
import { conditionMap } from './conditionMap.ts';
import { leftInItParts } from './leftInItParts.ts';
import { extentWords, numberedMarks, placeWords } from './markWords.ts';
import {
  figure,
  humidityWords,
  lengthsWords,
  massWords,
  mean,
  momentWords,
  shortMoment,
} from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import type { PaperBody } from './paperKinds.ts';
import { facts, figures, heading, notice, row, table, text, words } from './parts.ts';
import { photographsOf, setPhotographs } from './photographs.ts';
import { duringVisit, personWords } from './visitWords.ts';

type Measured = Noted<'RugMeasured'>;

/**
 * Change of a length between two measurings, told only where it is more than the tape can hide.
 *
 * @param before - three lengths [mm]
 * @param after - three lengths [mm]
 * @param uncertainMm - both ends of both measurings at their worst [mm]
 */
const change = (before: readonly number[], after: readonly number[], uncertainMm: number): string => {
  const differenceMm = mean(after) - mean(before);
  const shown = `${differenceMm > 0 ? '+' : ''}${figure(differenceMm / 10)} cm`;
  return Math.abs(differenceMm) <= uncertainMm
    ? `${shown}: no more than measuring can hide (± ${figure(uncertainMm / 10)} cm)`
    : `${shown}: changed (measuring hides ± ${figure(uncertainMm / 10)} cm)`;
};

const sizeParts = (before: Measured | undefined, after: Measured | undefined): readonly PaperPart[] => {
  if (before === undefined || after === undefined)
    return [
      notice('caution', before === undefined ? 'Not measured at intake' : 'Not measured after the work', [
        'Whether the rug changed its size cannot be said.',
      ]),
    ];
  const uncertainMm = 2 * (before.uncertaintyMm + after.uncertaintyMm);
  return [
    table(
      [
        words('', 0.8),
        words('At the door', 1.5),
        words('After the work', 1.5),
        words('Change of the mean', 2.4),
      ],
      [
        [
          'Length',
          lengthsWords(before.lengthsMm),
          lengthsWords(after.lengthsMm),
          change(before.lengthsMm, after.lengthsMm, uncertainMm),
        ],
        [
          'Width',
          lengthsWords(before.widthsMm),
          lengthsWords(after.widthsMm),
          change(before.widthsMm, after.widthsMm, uncertainMm),
        ],
      ],
      '',
    ),
  ];
};

const massParts = (context: PaperContext): readonly PaperPart[] => {
  const { units } = context.workshop.settings;
  const weighings = context.rug.weighings.filter(duringVisit(context));
  if (weighings.length === 0) return [];
  return [
    facts(
      ...weighings.map((weighing) =>
        row(
          `Mass, ${weighing.occasion}`,
          massWords(weighing.massKg, units),
          `${weighing.airRh === undefined ? 'air not recorded' : `in air of ${humidityWords(weighing.airRh)}`}, ${momentWords(weighing.when, context.timeZone)}`,
        ),
      ),
    ),
    text(
      'Masses compare only in like air: wool gains about 6 % between 40 and 70 % RH with nothing washed.',
      'soft',
    ),
  ];
};

/**
 * The rug after the work against the rug at the door: every mark, the sizes, colour, smell.
 *
 * @source none: contents by this project's rules for papers; measuring ± 0.5 cm an end is a workshop setting
 */
export function finalInspection(context: PaperContext): PaperBody {
  const { rug, visit, timeZone } = context;
  const { inspected } = visit;
  const compared = visit.comparisons.at(-1);
  const during = duringVisit(context);
  const measurements = rug.measurements.filter(during);
  const outcomeOf = (mark: string) => inspected?.marks.find((one) => one.mark === mark);
  const marks = numberedMarks(rug);
  const outcomes = marks.map(({ number, mark }) => {
    const outcome = outcomeOf(mark.mark);
    const isNew = mark.foundDuringWork === true || outcome?.outcome === 'new';
    return {
      number,
      mark,
      outcome: isNew ? 'new' : (outcome?.outcome ?? 'not looked at'),
      note: outcome?.note ?? '',
    };
  });
  const count = (what: string) => outcomes.filter(({ outcome }) => outcome === what).length;
  const [worse, fresh, unseen] = [count('worse'), count('new'), count('not looked at')];
  const size = measurements.find(({ occasion }) => occasion === 'intake');
  const newMarks = marks.filter(({ mark }) => mark.foundDuringWork === true);
  const outline =
    size === undefined
      ? null
      : {
          widthMm: mean(size.widthsMm),
          lengthMm: mean(size.lengthsMm),
          round: size.shape === 'round' || size.shape === 'oval',
        };
  const map = outline === null ? null : conditionMap(newMarks, outline);
  return {
    subtitle: 'What is different from the day it came in.',
    parts: [
      ...(inspected === null
        ? [
            notice('stop', 'The final inspection has not been done', [
              'The rug does not go home before it has.',
            ]),
          ]
        : []),
      ...(worse + fresh > 0
        ? [notice('caution', `${worse} worse, ${fresh} new`, ['The client is told of each.'])]
        : []),
      ...(inspected !== null && unseen > 0
        ? [notice('caution', `${unseen} of ${marks.length} marks were not looked at again`)]
        : []),
      ...leftInItParts(context),
      ...(inspected === null
        ? []
        : [
            facts(
              row('Inspected by', personWords(context, inspected.by), momentWords(inspected.when, timeZone)),
              row('Odour', inspected.odour),
              row('Colour', inspected.colour),
              inspected.note === undefined ? null : row('Note', inspected.note),
            ),
          ]),
      heading(1, 'Marks'),
      text(
        `${count('unchanged')} unchanged, ${count('improved')} improved, ${worse} worse, ${fresh} new.`,
        'lead',
      ),
      table(
        [
          figures('No.', 0.5),
          words('Word', 1.5),
          words('Where, cm', 1.4),
          words('At the door', 1.5),
          words('Now', 1),
          words('Note', 1.8),
        ],
        outcomes.map(({ number, mark, outcome, note }) => [
          number,
          mark.word,
          placeWords(mark),
          mark.foundDuringWork === true
            ? 'not seen'
            : [extentWords(mark), `grade ${mark.grade}`].filter((one) => one !== '').join(', '),
          outcome,
          note,
        ]),
        'No mark is on record.',
      ),
      ...(map === null ? [] : [map]),
      ...(compared === undefined ? [] : comparisonParts(compared, context)),
      heading(1, 'Size'),
      ...sizeParts(
        size,
        measurements.findLast(({ occasion }) => occasion === 'after work'),
      ),
      heading(1, 'Mass'),
      ...massParts(context),
      heading(1, 'Finishing'),
      table(
        [words('Work', 2), words('Note', 2), words('Who and when', 1.6)],
        visit.finishings.map((finishing) => [
          finishing.works.join(', '),
          finishing.note ?? '',
          `${personWords(context, finishing.by)}\n${shortMoment(finishing.when, timeZone)}`,
        ]),
        'No finishing work is on record.',
      ),
      heading(1, 'Photographs after the work'),
      ...setPhotographs(
        photographsOf(context, 'after work'),
        context,
        'No photograph was taken after the work.',
      ),
    ],
  };
}
