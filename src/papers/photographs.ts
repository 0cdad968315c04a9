import type { Noted } from '../dossier/index.ts';
import { numberedMarks } from './markWords.ts';
import { dayOfInstant } from './measureWords.ts';
import type { PaperMark, PaperPart, PaperPicture } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import { text } from './parts.ts';
import { duringVisit } from './visitWords.ts';

type Photograph = Noted<'PhotographTaken'>;

const captionWords = (photo: Photograph, { timeZone }: PaperContext): string =>
  [
    photo.caption ?? photo.shows,
    ...(photo.light === undefined ? [] : [`light: ${photo.light}`]),
    dayOfInstant(photo.when, timeZone),
  ].join(', ');

/** Marks that were drawn on this very photograph, with the numbers of the list. */
const marksOn = (photo: string, { rug }: PaperContext): readonly PaperMark[] =>
  numberedMarks(rug).flatMap(({ number, mark }) =>
    mark.drawn?.photo === photo && mark.drawn.points.length > 0
      ? [{ label: number, shape: mark.shape, points: mark.drawn.points.map(({ x, y }) => [x, y] as const) }]
      : [],
  );

/** Photographs of the visit taken on one of these occasions. */
export const photographsOf = (
  context: PaperContext,
  ...occasions: readonly Photograph['occasion'][]
): readonly Photograph[] =>
  context.rug.photographs.filter(
    (photo) =>
      duringVisit(context)(photo) &&
      occasions.includes(photo.occasion) &&
      // Papers show who the client is, and go with the client's name.
      (photo.shows !== 'paper' || context.client?.kind === 'known'),
  );

/**
 * Photographs set on the page: one that carries marks by itself and large, the others two beside each other.
 *
 * @param photographs - in the order they are to stand
 * @param nothing - what is printed when there are none
 * @param marking - whether the marks drawn on them are shown
 */
export function setPhotographs(
  photographs: readonly Photograph[],
  context: PaperContext,
  nothing: string,
  marking: 'marked' | 'plain' = 'marked',
): readonly PaperPart[] {
  if (photographs.length === 0) return [text(nothing, 'soft')];
  const pictures = photographs.map(
    (photo): PaperPicture => ({
      kind: 'picture',
      photo: photo.photo,
      caption: captionWords(photo, context),
      marks: marking === 'marked' ? marksOn(photo.photo, context) : [],
    }),
  );
  const marked = pictures.filter(({ marks = [] }) => marks.length > 0);
  const plain = pictures.filter(({ marks = [] }) => marks.length === 0);
  return [
    ...marked,
    ...(plain.length === 0
      ? []
      : [
          {
            kind: 'pictures' as const,
            across: 2 as const,
            pictures: plain.map(({ photo, caption }) => ({ photo, caption })),
          },
        ]),
  ];
}
