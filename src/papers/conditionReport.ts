import { sizeOf } from '../dossier/index.ts';
import { conditionMap } from './conditionMap.ts';
import { limitRows } from './limitWords.ts';
import { extentWords, gradeWords, markNote, markWords, numberedMarks, placeWords } from './markWords.ts';
import {
  areaWords,
  dayOfInstant,
  figure,
  humidityWords,
  lengthsWords,
  massWords,
  momentWords,
  temperatureWords,
} from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import type { PaperBody } from './paperKinds.ts';
import { facts, figures, heading, list, notice, row, table, text, words } from './parts.ts';
import { photographsOf, setPhotographs } from './photographs.ts';
import { presentPlan } from './planInForce.ts';
import { claimAbout, clientName, duringVisit, personWords } from './visitWords.ts';

const measured = (context: PaperContext): readonly PaperPart[] => {
  const { rug, workshop } = context;
  const during = duringVisit(context);
  const size =
    rug.measurements.filter(during).find(({ occasion }) => occasion === 'intake') ?? rug.measurements[0];
  const area = sizeOf(rug, 'intake')?.areaM2;
  const weighed = rug.weighings.filter(during).find(({ occasion }) => occasion === 'intake');
  const air = [
    ...(weighed?.airRh === undefined ? [] : [humidityWords(weighed.airRh)]),
    ...(weighed?.airC === undefined ? [] : [temperatureWords(weighed.airC)]),
  ];
  const rested = weighed?.restedADay === true ? '' : '; it had not lain there a day';
  return [
    facts(
      row('Shape', size?.shape),
      row(
        'Three lengths',
        size === undefined ? undefined : lengthsWords(size.lengthsMm),
        size === undefined ? '' : `each end ± ${figure(size.uncertaintyMm / 10)} cm`,
      ),
      row('Three widths', size === undefined ? undefined : lengthsWords(size.widthsMm)),
      row('Area', area === undefined ? undefined : areaWords(area, workshop.settings.units)),
      row(
        'Fringe',
        size?.fringeStartMm === undefined && size?.fringeEndMm === undefined
          ? undefined
          : `${figure((size.fringeStartMm ?? 0) / 10)} cm at the start, ${figure((size.fringeEndMm ?? 0) / 10)} cm at the end`,
      ),
      row('Pile height', size?.pileHeightMm === undefined ? undefined : `${figure(size.pileHeightMm)} mm`),
      row(
        'Mass',
        weighed === undefined ? undefined : massWords(weighed.massKg, workshop.settings.units),
        weighed === undefined
          ? ''
          : air.length === 0
            ? 'air of the room not recorded'
            : `in air of ${air.join(' and ')}${rested}`,
      ),
    ),
  ];
};

/** What was found during work is no part of the state at the door; it keeps its number. */
const atTheDoor = ({ rug }: PaperContext) =>
  numberedMarks(rug).filter(({ mark }) => mark.foundDuringWork !== true);

const markTable = (context: PaperContext): PaperPart =>
  table(
    [
      figures('No.', 0.45),
      words('Word', 1.5),
      words('Where, cm', 1.9),
      words('Extent', 1.1),
      figures('Grade', 0.65),
      words('State', 0.85),
      words('Note, who, when', 2.1),
    ],
    atTheDoor(context).map(({ number, mark }) => [
      number,
      markWords(mark),
      placeWords(mark),
      extentWords(mark),
      String(mark.grade),
      mark.activity,
      markNote(mark, context),
    ]),
    'No mark is on record.',
    'Places are centimetres across from the left and up from the start, seen face up with the pile lying toward you.',
  );

const maps = (context: PaperContext): readonly PaperPart[] => {
  const size = sizeOf(context.rug, 'intake');
  const shape = context.rug.measurements.at(-1)?.shape;
  if (size === null) return [];
  const map = conditionMap(atTheDoor(context), { ...size, round: shape === 'round' || shape === 'oval' });
  return map === null ? [] : [map];
};

const examination = (context: PaperContext): readonly PaperPart[] => {
  const surveys = context.rug.surveys.filter(duringVisit(context));
  const lights = new Set([
    ...surveys.map(({ light }) => light),
    ...photographsOf(context, 'intake').flatMap(({ light }) => light ?? []),
  ]);
  const both = surveys.some(({ sides }) => sides === 'face and back');
  return [
    facts(
      row('Examined by', surveys.map(({ by }) => personWords(context, by)).join(', ')),
      row('When', surveys.map(({ when }) => momentWords(when, context.timeZone)).join('\n')),
      row('Sides looked over', surveys.map(({ sides }) => sides).join(', ')),
      row('Light', [...lights].join('; ')),
      ...surveys.flatMap(({ limits }) => (limits === undefined ? [] : [row('Could not be seen', limits)])),
    ),
    ...(both
      ? []
      : [
          notice('caution', 'Not looked over on both sides', [
            'What was not seen counts as unknown; the wash plan takes it as the worst case.',
          ]),
        ]),
  ];
};

/**
 * The state of the rug, set out after the frame of EN 16095: the object, why and how it was examined, its
 * state with map and photographs, what follows from it, and what the examination could not tell.
 *
 * @source en-16095, frame of a condition report (from memory of the standard); grades are ours
 */
export function conditionReport(context: PaperContext): PaperBody {
  const { rug, visit, timeZone } = context;
  const present = presentPlan(context);
  const { received } = visit;
  const worst = atTheDoor(context).filter(({ mark }) => mark.grade >= 3);
  const later = rug.marks.length - atTheDoor(context).length;
  return {
    subtitle: `State at the door on ${dayOfInstant(received.when, timeZone)}, before any work of this visit.`,
    parts: [
      heading(1, 'The object'),
      facts(
        row('Rug', rug.opened?.title),
        row('Client', clientName(context)),
        row('Construction', claimAbout(rug, 'construction')?.construction),
        row('Examined because', received.scope.join(', '), received.reason),
        row('Route', received.route),
      ),
      ...measured(context),
      heading(1, 'How it was examined'),
      ...examination(context),
      heading(1, 'State'),
      ...(worst.length === 0
        ? []
        : [
            notice('caution', `${worst.length} ${worst.length === 1 ? 'mark' : 'marks'} of grade 3 or 4`, [
              'Held or supported before any wet work where they lie in the body (workshop setting).',
            ]),
          ]),
      markTable(context),
      text(
        `Grades (workshop setting): ${gradeWords.map((word, grade) => `${grade} ${word}`).join('; ')}.`,
        'soft',
      ),
      ...(later === 0 ? [] : [text(`${later} more found during work: see the final inspection.`, 'soft')]),
      ...maps(context),
      heading(1, 'Photographs'),
      ...setPhotographs(photographsOf(context, 'intake'), context, 'No photograph was taken at the door.'),
      heading(1, 'What follows for the work'),
      ...(present.ok
        ? [facts(...limitRows(present.plan))]
        : [notice('stop', present.words.happened, [present.words.matters, present.words.now])]),
      heading(1, 'What this report cannot tell'),
      list([
        'It describes what could be seen and felt on the day, in the light named; soil, lining and backing hide what lies under them.',
        'Causes are named with how sure they are; a cause without that is an impression.',
        'It is not an appraisal and states no value.',
      ]),
      text(
        'Set out after the frame of EN 16095, condition recording for movable cultural heritage. Condition words and grades are the workshop’s own.',
        'soft',
      ),
    ],
  };
}
