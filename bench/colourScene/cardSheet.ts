import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import { drawCard } from '../../src/core/card/index.ts';
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
const reach = 108;

/** Prints a card: how white the paper is and how dark each grey comes out is the printer's chance. */
export function printCard(chance: Chance, serial: string): CardSheet {
  const drawn = drawCard({ serial, tag: null, draw: zxingCodes.draw });
  if (!drawn.ok) throw new Error(drawn.problem.code);
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
  for (const shape of drawn.value)
    if (shape.kind === 'rectangle') fill(shape.x, shape.y, shape.width, shape.height, inkOf(shape.grey));
  fill(-35, -35, 70, 70, windowInk);
  return {
    inks,
    at: (x, y) =>
      Math.abs(x) >= 105 || Math.abs(y) >= reach
        ? outsideInk
        : (sheet[Math.floor((y + reach) / cell) * side + Math.floor((x + reach) / cell)] ?? 0),
  };
}
