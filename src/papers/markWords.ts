import type { Noted, RugStanding } from '../dossier/index.ts';
import type { NumberedMark } from './conditionMap.ts';
import { figure, shortDay } from './measureWords.ts';
import type { PaperContext } from './paperContext.ts';
import { personWords } from './visitWords.ts';

/** Grades of the condition list: a workshop setting. */
export const gradeWords = [
  'inherent',
  'soil or finish',
  'pile or colour',
  'foundation exposed or edge open',
  'hole, rot or active life',
] as const;

/** Marks with the numbers they carry on every paper: the order of first mention. */
export const numberedMarks = (rug: RugStanding): readonly NumberedMark[] =>
  rug.marks.map((mark, at) => ({ number: String(at + 1), mark }));

export const extentWords = (mark: Noted<'MarkRecorded'>): string =>
  [
    mark.areaCm2 === undefined ? [] : `${figure(mark.areaCm2)} cm²`,
    mark.lengthCm === undefined ? [] : `${figure(mark.lengthCm)} cm`,
    mark.count === undefined ? [] : `${mark.count} in number`,
  ]
    .flat()
    .join(', ');

/** Where a mark lies: the middle of its points, in the rug's own centimetres. */
export function placeWords(mark: Noted<'MarkRecorded'>): string {
  const { pointsMm } = mark;
  if (pointsMm.length === 0)
    return `${mark.side}${mark.drawn === undefined ? '' : ', drawn on a photograph'}`;
  const middle = (axis: 'xMm' | 'yMm') => {
    const values = pointsMm.map((point) => point[axis]);
    return figure((Math.min(...values) + Math.max(...values)) / 20, 0);
  };
  return `${mark.side}, ${middle('xMm')} across, ${middle('yMm')} up`;
}

/** A mark's word with what is known of it: stain class, cause and how sure that is. */
export const markWords = (mark: Noted<'MarkRecorded'>): string => {
  const stain = mark.stain === undefined ? '' : ` (${mark.stain})`;
  const sure = mark.causeConfidence === undefined ? '' : `, ${mark.causeConfidence}`;
  const cause = mark.cause === undefined ? '' : `\ncause: ${mark.cause}${sure}`;
  return `${mark.word}${stain}${cause}`;
};

export const markNote = (mark: Noted<'MarkRecorded'>, context: PaperContext): string =>
  [
    ...(mark.note === undefined ? [] : [mark.note]),
    ...(mark.foundDuringWork === true ? ['found during work'] : []),
    ...(mark.clientInitials === undefined || mark.clientInitials === ''
      ? []
      : [`client’s initials: ${mark.clientInitials}`]),
    `${personWords(context, mark.by)}, ${shortDay(mark.when, context.timeZone)}`,
  ].join('\n');
