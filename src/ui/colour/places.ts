import { type CardReading, project } from '../../core/card/index.ts';
import type { Area, BlotPlaces, CardBlot, Outline } from '../../core/colour/index.ts';

export type PlaceName = keyof BlotPlaces;

/** Share of the window a place has at first, as a person would set it. */
const firstShare = 0.16;

const squareAround = ([x, y]: readonly [number, number], side: number): Area => ({
  x: Math.round(x - side / 2),
  y: Math.round(y - side / 2),
  width: Math.round(side),
  height: Math.round(side),
});

export const middleOf = (outline: Outline): readonly [number, number] => [
  outline.reduce((sum, [x]) => sum + x, 0) / outline.length,
  outline.reduce((sum, [, y]) => sum + y, 0) / outline.length,
];

export const outlineOf = ({ x, y, width, height }: Area): Outline => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

/** Side of the window [px of the picture]. */
const windowPx = ({ halfWindowMm, mmPerPx }: CardReading): number => (2 * halfWindowMm) / mmPerPx;

/** Places to begin from: where they were found, else clean cloth in a corner of the window and blot in its middle. */
export function firstPlaces(card: CardReading, found: CardBlot | null): BlotPlaces {
  const side = windowPx(card) * firstShare;
  const [control] = found?.places.controls ?? [];
  const corner = card.halfWindowMm * 0.68;
  return {
    control: squareAround(
      control === undefined ? project(card.homography, -corner, -corner) : middleOf(control),
      side,
    ),
    sample: squareAround(
      found === null ? project(card.homography, 0, 0) : middleOf(found.places.sample),
      side,
    ),
  };
}

/** A place made larger or smaller about its middle; never less than the smallest that can be measured. */
export function scaled(area: Area, by: number, leastPx: number): Area {
  const side = Math.max(leastPx, area.width * by);
  return squareAround([area.x + area.width / 2, area.y + area.height / 2], side);
}

/** A place with its middle there. */
export const movedTo = (area: Area, x: number, y: number): Area => squareAround([x, y], area.width);

/** The part of the picture that shows the window with the card around it. */
export function windowView(
  card: CardReading,
  picture: { readonly widthPx: number; readonly heightPx: number },
) {
  const [x, y] = project(card.homography, 0, 0);
  const half = windowPx(card) * 0.8;
  const left = Math.max(0, x - half);
  const top = Math.max(0, y - half);
  return {
    x: left,
    y: top,
    width: Math.min(picture.widthPx, x + half) - left,
    height: Math.min(picture.heightPx, y + half) - top,
  };
}
