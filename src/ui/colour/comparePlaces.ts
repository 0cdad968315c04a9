import type { Area, NamedArea, Point } from '../../core/colour/index.ts';
import type { Corners } from './colourTalk.ts';

interface Size {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A place as shares of a picture's width and height, as the record keeps corners. */
export interface Share {
  readonly x: number;
  readonly y: number;
}

/** A colour to be followed from the first picture to the second. */
export interface NamedColour {
  /** Its id in the dossier; absent for a place nobody named. */
  readonly colour?: string;
  readonly name: string;
  /** Only to recognise it on a screen. */
  readonly looks?: string | undefined;
}

/** Names of the corners in the order they are kept. */
export const cornerNames = ['Start, left', 'Start, right', 'End, right', 'End, left'] as const;

/** Corners to begin from where nobody tapped any: a little inside the picture. */
export const firstCorners: readonly Share[] = [
  { x: 0.12, y: 0.88 },
  { x: 0.88, y: 0.88 },
  { x: 0.88, y: 0.12 },
  { x: 0.12, y: 0.12 },
];

const within = (value: number): number => Math.min(1, Math.max(0, value));

export const pointAt = ({ x, y }: Share, { widthPx, heightPx }: Size): Point => [x * widthPx, y * heightPx];
export const shareAt = (x: number, y: number, { widthPx, heightPx }: Size): Share => ({
  x: within(x / widthPx),
  y: within(y / heightPx),
});

/** Four corners as pixels, or null while one is missing. */
export function cornersIn(corners: readonly Share[], size: Size): Corners | null {
  const [a, b, c, d] = corners.map((corner) => pointAt(corner, size));
  return a === undefined || b === undefined || c === undefined || d === undefined ? null : [a, b, c, d];
}

/** Side of the square a colour is measured in [share of the picture's shorter side]. */
const sideShare = 0.03;
const leastSidePx = 16;

/** The square around a place in which its colour is measured. */
export function areaAt(place: Share, size: Size): Area {
  const side = Math.round(Math.max(leastSidePx, sideShare * Math.min(size.widthPx, size.heightPx)));
  const [x, y] = pointAt(place, size);
  return {
    x: Math.round(Math.min(size.widthPx - side, Math.max(0, x - side / 2))),
    y: Math.round(Math.min(size.heightPx - side, Math.max(0, y - side / 2))),
    width: side,
    height: side,
  };
}

/** Areas of the colours that were shown on the first picture. */
export const areasOf = (
  colours: readonly NamedColour[],
  places: Readonly<Record<string, Share>>,
  size: Size,
): readonly NamedArea[] =>
  colours.flatMap(({ name }) => {
    const place = places[name];
    return place === undefined ? [] : [{ name, area: areaAt(place, size) }];
  });
