import {
  acrossTheBack,
  type ConditionProblem,
  type PicturePoint,
  pictureMap,
  pointingOnRugMm,
  type RugCorners,
  type RugFrame,
  type RugPoint,
  tapeUncertaintyMm,
} from '../../core/condition/index.ts';
import type { RugFactOf } from '../../dossier/facts/index.ts';

export type Mark = RugFactOf<'MarkRecorded'>;

/** A photograph that marks may be drawn on. */
export interface PadPicture {
  readonly photo: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly shows: RugFactOf<'PhotographTaken'>['shows'];
  readonly caption?: string | undefined;
  readonly corners: RugCorners | null;
}

/** Something to draw on: a photograph, or the rug's outline drawn from its sizes. */
export interface Surface {
  readonly key: string;
  readonly words: string;
  readonly side: 'face' | 'back';
  /** Null on the outline. */
  readonly photo: string | null;
  readonly widthPx: number;
  readonly heightPx: number;
  /** On the outline: where the woven body lies, in px. */
  readonly body: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  } | null;
  readonly isRound: boolean;
  readonly corners: RugCorners | null;
  readonly toRug: ((point: PicturePoint) => RugPoint) | null;
  readonly toSurface: ((point: RugPoint) => PicturePoint) | null;
  /** Standard uncertainty of places drawn while so much of the surface filled the screen. */
  readonly pointingMm: (points: readonly PicturePoint[], seenShare: number) => readonly number[];
  /** Why the tapped corners are of no use. */
  readonly problem: ConditionProblem | null;
}

const sideOf = (shows: PadPicture['shows']): 'face' | 'back' => (shows === 'back' ? 'back' : 'face');

const pictureWords = ({ shows, caption }: PadPicture, number: number): string =>
  caption ??
  (shows === 'face' || shows === 'back' ? `Picture of the ${shows}` : `Picture ${number}, ${shows}`);

const pictureSurface = (picture: PadPicture, number: number, frame: RugFrame | null): Surface => {
  const side = sideOf(picture.shows);
  const map = frame === null || picture.corners === null ? null : pictureMap(picture.corners, frame, side);
  const good = map?.ok === true ? map.value : null;
  return {
    key: picture.photo,
    words: pictureWords(picture, number),
    side,
    photo: picture.photo,
    widthPx: picture.widthPx,
    heightPx: picture.heightPx,
    body: null,
    isRound: frame?.outline === 'ellipse',
    corners: picture.corners,
    toRug: good?.toRug ?? null,
    toSurface: good?.toPicture ?? null,
    pointingMm: (points, seenShare) => (good === null ? [] : pointingOnRugMm(points, good, seenShare)),
    problem: map?.ok === false ? map.problem : null,
  };
};

const outlineSurface = (frame: RugFrame, side: 'face' | 'back'): Surface => {
  const { widthMm, lengthMm, fringeStartMm, fringeEndMm } = frame;
  const margin = Math.max(widthMm, lengthMm) * 0.055;
  const below = margin + fringeStartMm;
  const above = margin + fringeEndMm;
  const widthPx = widthMm + 2 * margin;
  const heightPx = lengthMm + below + above;
  const turned = (point: RugPoint) => (side === 'back' ? acrossTheBack(point, widthMm) : point);
  return {
    key: `outline ${side}`,
    words: `Outline of the ${side}`,
    side,
    photo: null,
    widthPx,
    heightPx,
    body: { x: margin, y: above, width: widthMm, height: lengthMm },
    isRound: frame.outline === 'ellipse',
    corners: null,
    toRug: ({ x, y }) => turned({ xMm: x * widthPx - margin, yMm: (1 - y) * heightPx - below }),
    toSurface: (point) => {
      const { xMm, yMm } = turned(point);
      return { x: (xMm + margin) / widthPx, y: 1 - (yMm + below) / heightPx };
    },
    // Drawn by eye on an outline: about a fiftieth of the rug's width, never better than a tape.
    pointingMm: (points) => points.map(() => Math.max(tapeUncertaintyMm, widthMm / 50) / 2),
    problem: null,
  };
};

/**
 * What can be drawn on: the photographs first, then the outline of each side that has no photograph, once
 * the size is known.
 *
 * @param pictures - in the order they were taken
 * @param frame - of the measured rug, or null before it is measured
 */
export function surfacesOf(pictures: readonly PadPicture[], frame: RugFrame | null): readonly Surface[] {
  const drawn = (['face', 'back'] as const).filter((side) => !pictures.some(({ shows }) => shows === side));
  return [
    ...pictures.map((picture, index) => pictureSurface(picture, index + 1, frame)),
    ...(frame === null ? [] : drawn.map((side) => outlineSurface(frame, side))),
  ];
}

/** Where a mark stands on a surface, or null where it does not show there. */
export function pointsOn(
  mark: Pick<Mark, 'drawn' | 'pointsMm' | 'side'>,
  surface: Surface,
): readonly PicturePoint[] | null {
  if (mark.drawn !== undefined && mark.drawn.photo === surface.photo) return mark.drawn.points;
  const { toSurface } = surface;
  if (toSurface === null || mark.pointsMm.length === 0) return null;
  if (mark.side !== 'both' && mark.side !== surface.side) return null;
  return mark.pointsMm.map(toSurface);
}
