import { type RugCorners, type RugFrame, rugFrame } from '../../core/condition/index.ts';
import type { RugStanding } from '../../dossier/index.ts';
import type { Mark, PadPicture } from './surface.ts';

const cornersOf = (corners: readonly { readonly x: number; readonly y: number }[]): RugCorners | null => {
  const [a, b, c, d] = corners;
  return a && b && c && d ? [a, b, c, d] : null;
};

/** Pictures of both sides from one occasion, and all that were drawn on. */
export function picturesOf(standing: RugStanding, of: 'intake' | 'after work'): readonly PadPicture[] {
  const drawnOn = new Set(standing.marks.flatMap(({ drawn }) => (drawn === undefined ? [] : [drawn.photo])));
  return standing.photographs
    .filter(
      ({ photo, shows, occasion }) =>
        (of === 'intake' && drawnOn.has(photo) && occasion !== 'after work') ||
        (occasion === of && (shows === 'face' || shows === 'back')),
    )
    .map(({ photo, widthPx, heightPx, shows, caption }) => ({
      photo,
      widthPx,
      heightPx,
      shows,
      caption: caption ?? (of === 'after work' ? `The ${shows} after the work` : undefined),
      corners: cornersOf(standing.corners[photo]?.corners ?? []),
    }));
}

/** What the mark pad needs of a rug that has a dossier: its frame at intake, its pictures, its marks. */
export function marksAndPictures(standing: RugStanding): {
  readonly frame: RugFrame | null;
  readonly pictures: readonly PadPicture[];
  readonly marks: readonly Mark[];
} {
  const measured = standing.measurements.findLast(({ occasion }) => occasion === 'intake');
  return {
    frame: measured === undefined ? null : rugFrame(measured),
    pictures: picturesOf(standing, 'intake'),
    marks: standing.marks.map(plainMark),
  };
}

/** The fact without where it stands in the record. */
const plainMark = ({ entry: _entry, when: _when, by: _by, ...mark }: RugStanding['marks'][number]): Mark =>
  mark;
