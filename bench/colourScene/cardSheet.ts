import geometry from '../../data/card/geometry.json' with { type: 'json' };
import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import { type CardShape, drawCard, drawLooseCard } from '../../src/core/card/index.ts';
import { between, type Chance } from '../loom/chance.ts';
import { type Spectrum, spectrum, whiteOf } from './spectra.ts';

/** What a point of the printed sheet is made of: an index into `inks`, or none outside the paper. */
export interface CardSheet {
  readonly at: (xMm: number, yMm: number) => number;
  /** Reflectance of paper, and of each printed grey. */
  readonly inks: readonly Spectrum[];
}

export const windowInk = 254;
export const outsideInk = 255;

const cell = 1 / 12;
const reach = 122;
/** Half of the sheet with the window [mm]. */
const [halfWide, halfHigh] = [105, 108];

/** Prints shapes: how white the paper is and how dark each grey comes out is the printer's chance. */
function print(chance: Chance, shapes: readonly CardShape[]) {
  const paper = whiteOf(between(chance, 0.8, 0.9), between(chance, -0.03, 0.03));
  const [black, gain] = [between(chance, 0.03, 0.06), between(chance, 1.8, 2.7)];
  const tint = between(chance, -0.04, 0.04);
  const levels = new Map<number, number>();
  const inks: Spectrum[] = [paper];
  const inkOf = (grey: number): number => {
    const known = levels.get(grey);
    if (known !== undefined) return known;
    const share = black + (1 - black) * (grey / 255) ** gain;
    inks.push(
      grey === 255
        ? paper
        : spectrum(
            (nm) => (paper[(nm - 400) / 10] ?? 0) * share * (1 + tint * (1 - share) * ((nm - 550) / 150)),
          ),
    );
    levels.set(grey, inks.length - 1);
    return inks.length - 1;
  };
  const side = Math.round((2 * reach) / cell);
  const sheet = new Uint8Array(side * side);
  const fill = (x: number, y: number, width: number, height: number, ink: number): void => {
    const [left, right] = [x, x + width].map((at) =>
      Math.min(side, Math.max(0, Math.round((at + reach) / cell))),
    );
    const [top, bottom] = [y, y + height].map((at) =>
      Math.min(side, Math.max(0, Math.round((at + reach) / cell))),
    );
    for (let row = top ?? 0; row < (bottom ?? 0); row += 1)
      sheet.fill(ink, row * side + (left ?? 0), row * side + (right ?? 0));
  };
  for (const shape of shapes)
    if (shape.kind === 'rectangle') fill(shape.x, shape.y, shape.width, shape.height, inkOf(shape.grey));
  const at = (x: number, y: number): number =>
    sheet[Math.floor((y + reach) / cell) * side + Math.floor((x + reach) / cell)] ?? 0;
  return { inks, at };
}

/** Prints the sheet with a window. */
export function printCard(chance: Chance, serial: string): CardSheet {
  const drawn = drawCard({ serial, tag: null, draw: zxingCodes.draw });
  if (!drawn.ok) throw new Error(drawn.problem.code);
  const { inks, at } = print(chance, drawn.value);
  const inkAt = (x: number, y: number): number => {
    if (Math.max(Math.abs(x), Math.abs(y)) < 35) return windowInk;
    return Math.abs(x) >= halfWide || Math.abs(y) >= halfHigh ? outsideInk : at(x, y);
  };
  return { inks, at: inkAt };
}

/** Prints the loose pieces, cuts them apart and lays each on its place, turned by a hand. */
export function layPieces(
  chance: Chance,
  serial: string,
  placeOf: (corner: number) => readonly [xMm: number, yMm: number],
): CardSheet {
  const drawn = drawLooseCard({ serial, tag: null, draw: zxingCodes.draw });
  if (!drawn.ok) throw new Error(drawn.problem.code);
  const { inks, at } = print(chance, drawn.value);
  const { places, width, height } = geometry.loose;
  const laid = places.map((onSheet, corner) => {
    const [x, y] = placeOf(corner);
    const turn = between(chance, -Math.PI, Math.PI);
    return { onSheet, x, y, cos: Math.cos(turn), sin: Math.sin(turn) };
  });
  const inkAt = (x: number, y: number): number => {
    for (const piece of laid) {
      const [dx, dy] = [x - piece.x, y - piece.y];
      const u = piece.cos * dx + piece.sin * dy + width / 2;
      const v = piece.cos * dy - piece.sin * dx + height / 2;
      if (u >= 0 && v >= 0 && u < width && v < height) return at(piece.onSheet.x + u, piece.onSheet.y + v);
    }
    return outsideInk;
  };
  return { inks, at: inkAt };
}
