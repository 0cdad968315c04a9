import blotLimits from '../../../data/colour/blot.json' with { type: 'json' };
import limits from '../../../data/colour/findBlot.json' with { type: 'json' };
import { type CardReading, project } from '../card/index.ts';
import type { CardLight } from './cardLight.ts';
import { type Lab, type LinearRgb, labFromLinear, linearFromByte } from './lab.ts';
import { type AreaLight, type ColourPicture, robustLight } from './measureArea.ts';

/** A square of cells of the window. */
export interface CellSquare {
  readonly column: number;
  readonly row: number;
  readonly side: number;
}

/** The card's window cut into small squares, light as it is in the picture. */
export interface WindowCells {
  /** Cells to a side. */
  readonly count: number;
  readonly lights: readonly LinearRgb[];
  readonly labs: readonly Lab[];
  /** Share of the pixels too bright or too dark to be measured. */
  readonly clipped: Float32Array;
  /** Where a corner of a cell falls in the picture. */
  readonly toPicture: (column: number, row: number) => readonly [number, number];
}

/**
 * Cuts the card's window into cells of half a millimetre.
 *
 * @param picture - the picture the card was read in
 * @param card - from `readCard`
 * @param light - from `cardLight`
 * @returns linear light, balanced colour and clipping of each cell, row by row
 * @source none: means of up to 36 pixels of each cell (data/colour/findBlot.json)
 */
export function windowCells(picture: ColourPicture, card: CardReading, light: CardLight): WindowCells {
  const half = card.halfWindowMm - limits.edge;
  const count = Math.floor((2 * half) / limits.cell);
  const perSide = Math.max(1, Math.min(6, Math.round(limits.cell / card.mmPerPx)));
  const lights: LinearRgb[] = [];
  const labs: Lab[] = [];
  const clipped = new Float32Array(count * count);
  const toPicture = (column: number, row: number): readonly [number, number] =>
    project(card.homography, column * limits.cell - half, row * limits.cell - half);
  for (let row = 0; row < count; row += 1)
    for (let column = 0; column < count; column += 1) {
      let [r, g, b, lost] = [0, 0, 0, 0];
      for (let v = 0; v < perSide; v += 1)
        for (let u = 0; u < perSide; u += 1) {
          const [px, py] = toPicture(column + (u + 0.5) / perSide, row + (v + 0.5) / perSide);
          const x = Math.min(picture.widthPx - 1, Math.max(0, Math.round(px)));
          const y = Math.min(picture.heightPx - 1, Math.max(0, Math.round(py)));
          const at = 3 * (y * picture.widthPx + x);
          const [red = 0, green = 0, blue = 0] = picture.data.subarray(at, at + 3);
          if (
            Math.max(red, green, blue) >= blotLimits.clippedFrom ||
            Math.min(red, green, blue) <= blotLimits.clippedTo
          )
            lost += 1;
          r += linearFromByte(red);
          g += linearFromByte(green);
          b += linearFromByte(blue);
        }
      const pixels = perSide * perSide;
      const mean: LinearRgb = [r / pixels, g / pixels, b / pixels];
      const [x, y] = toPicture(column + 0.5, row + 0.5);
      clipped[row * count + column] = lost / pixels;
      lights.push(mean);
      labs.push(labFromLinear(light.balance({ x, y, light: mean })));
    }
  return { count, lights, labs, clipped, toPicture };
}

/** Light of a square of cells and of its 3 × 3 blocks, threads and specks left out; null where too little belongs together. */
export function lightOfSquare(cells: WindowCells, { column, row, side }: CellSquare): AreaLight {
  const within = (fromX: number, fromY: number, untilX: number, untilY: number): readonly LinearRgb[] => {
    const held: LinearRgb[] = [];
    for (let y = Math.floor(fromY); y < Math.floor(untilY); y += 1)
      for (let x = Math.floor(fromX); x < Math.floor(untilX); x += 1) {
        const light = cells.lights[y * cells.count + x];
        if (light !== undefined) held.push(light);
      }
    return held;
  };
  const { blocksPerSide } = blotLimits;
  const step = side / blocksPerSide;
  const [x, y] = cells.toPicture(column + side / 2, row + side / 2);
  return {
    ...{ x, y, light: robustLight(within(column, row, column + side, row + side)).light },
    blocks: Array.from({ length: blocksPerSide ** 2 }, (_, index) => {
      const [left, top] = [
        column + (index % blocksPerSide) * step,
        row + Math.floor(index / blocksPerSide) * step,
      ];
      const [px, py] = cells.toPicture(left + step / 2, top + step / 2);
      return { x: px, y: py, light: robustLight(within(left, top, left + step, top + step)).light };
    }),
  };
}

/** Share of the cells of a square with pixels too bright or too dark to be measured. */
export function clippedIn(cells: WindowCells, { column, row, side }: CellSquare): number {
  let sum = 0;
  for (let y = row; y < row + side; y += 1)
    for (let x = column; x < column + side; x += 1) sum += cells.clipped[y * cells.count + x] ?? 0;
  return sum / (side * side);
}

/** Corners of a square of cells in the picture. */
export const outlineOf = (
  { toPicture }: WindowCells,
  { column, row, side }: CellSquare,
): readonly (readonly [number, number])[] => [
  toPicture(column, row),
  toPicture(column + side, row),
  toPicture(column + side, row + side),
  toPicture(column, row + side),
];
