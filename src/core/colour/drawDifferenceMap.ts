import limits from '../../../data/colour/compare.json' with { type: 'json' };
import type { DifferenceMap } from './differenceMap.ts';
import type { ColourPicture } from './measureArea.ts';

type Rgb = readonly [red: number, green: number, blue: number];

/** From undyed wool over madder to night: each step is darker, so that the map can be read without colour. */
const steps: readonly Rgb[] = [
  [246, 240, 226],
  [236, 205, 150],
  [214, 150, 92],
  [176, 88, 66],
  [118, 42, 62],
  [52, 20, 48],
];

const paper: Rgb = [255, 255, 255];
const ink: Rgb = [40, 34, 30];

/** Ticks of the scale bar [ΔE00]; the last stands for that much and more. */
export const differenceScale: readonly number[] = Array.from(
  { length: limits.scaleTo / 2 + 1 },
  (_, index) => 2 * index,
);

/**
 * The colour that stands for a difference.
 *
 * @param deltaE - ΔE00 [≥ 0]; NaN where nothing was compared
 * @returns sRGB, lighter for less
 * @source none: colours of this project
 */
export function differenceColour(deltaE: number): Rgb {
  if (Number.isNaN(deltaE)) return paper;
  const place = Math.min(1, deltaE / limits.scaleTo) * (steps.length - 1);
  const left = Math.min(steps.length - 2, Math.floor(place));
  const [p, q] = [steps[left] ?? paper, steps[left + 1] ?? paper];
  const of = (band: 0 | 1 | 2): number => Math.round(p[band] + (place - left) * (q[band] - p[band]));
  return [of(0), of(1), of(2)];
}

/** Digits of three by five, row by row; enough for the ticks of a scale. */
const digits: readonly string[] = [
  ...['111101101101111', '010110010010111', '111001111100111', '111001111001111', '101101111001001'],
  ...['111100111001111', '111100111101111', '111001010010010', '111101111101111', '111101111001111'],
];

/**
 * The map of differences as a picture, with its scale bar beneath.
 *
 * @param map - from `differenceMap`
 * @returns sRGB picture of the map's width; the bar runs from 0 to ΔE00 12 and more
 * @source none: drawing of this project
 */
export function drawDifferenceMap({ widthPx, heightPx, deltaE }: DifferenceMap): ColourPicture {
  const unit = Math.max(1, Math.round(Math.min(widthPx, heightPx) / 220));
  const bar = 22 * unit;
  const data = new Uint8Array(3 * widthPx * (heightPx + bar)).fill(255);
  const put = (x: number, y: number, colour: Rgb): void => data.set(colour, 3 * (y * widthPx + x));
  for (let y = 0; y < heightPx; y += 1)
    for (let x = 0; x < widthPx; x += 1) put(x, y, differenceColour(deltaE[y * widthPx + x] ?? Number.NaN));
  const [left, right] = [8 * unit, widthPx - 12 * unit];
  for (let x = left; x <= right; x += 1)
    for (let y = 4 * unit; y < 11 * unit; y += 1)
      put(x, heightPx + y, differenceColour((limits.scaleTo * (x - left)) / (right - left)));
  for (const tick of differenceScale) {
    const middle = left + ((right - left) * tick) / limits.scaleTo;
    const text = [...String(tick)];
    for (const [place, digit] of text.entries())
      for (const [at, on] of [...(digits[Number(digit)] ?? '')].entries()) {
        if (on !== '1') continue;
        const x0 = Math.round(middle + (place * 4 + (at % 3) - (4 * text.length - 1) / 2) * unit);
        const y0 = heightPx + (13 + Math.floor(at / 3)) * unit;
        for (let dy = 0; dy < unit; dy += 1)
          for (let dx = 0; dx < unit; dx += 1)
            if (x0 + dx >= 0 && x0 + dx < widthPx) put(x0 + dx, y0 + dy, ink);
      }
  }
  return { widthPx, heightPx: heightPx + bar, data };
}
