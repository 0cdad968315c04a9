import { ciede2000 } from './ciede2000.ts';
import { labFromLinear, linearFromByte } from './lab.ts';
import type { ColourPicture } from './measureArea.ts';

/** ΔE00 of every pixel of two pictures that lie on each other; NaN where there is nothing to compare. */
export interface DifferenceMap {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly deltaE: Float32Array;
}

/**
 * ΔE00 between two sRGB pictures of one size, pixel by pixel.
 *
 * @param before - sRGB picture
 * @param after - sRGB picture of the same size
 * @returns ΔE00 of every pixel
 * @source sharma-wu-dalal-2005, equations 2 to 22
 */
export function differenceMap(before: ColourPicture, after: ColourPicture): DifferenceMap {
  const { widthPx, heightPx } = before;
  const labAt = ({ data }: ColourPicture, at: number) =>
    labFromLinear([
      linearFromByte(data[at] ?? 0),
      linearFromByte(data[at + 1] ?? 0),
      linearFromByte(data[at + 2] ?? 0),
    ]);
  const deltaE = new Float32Array(widthPx * heightPx);
  for (let at = 0; at < deltaE.length; at += 1)
    deltaE[at] = ciede2000(labAt(before, 3 * at), labAt(after, 3 * at));
  return { widthPx, heightPx, deltaE };
}
