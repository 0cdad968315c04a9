import type { Picture } from '../weave/index.ts';
import { project } from './homography.ts';
import type { CardReading } from './readCard.ts';

/** The card's window seen square on. */
export interface WindowPicture {
  readonly picture: Picture;
  readonly pxPerMm: number;
}

/** Shadow and cut of the card's edge [mm]. */
export const insetMm = 1.5;
const mostPxPerMm = 26;

/**
 * Takes the perspective out of the card's window.
 *
 * @param picture - the whole picture
 * @param reading - from `readCard`
 * @returns the window without its edge, at the picture's own resolution but at most 26 px per mm
 * @source none: resampling by four neighbours through the card's homography
 */
export function windowPicture(picture: Picture, reading: CardReading): WindowPicture {
  const pxPerMm = Math.min(mostPxPerMm, 1 / Math.min(reading.xMmPerPx, reading.yMmPerPx));
  const halfMm = reading.halfWindowMm - insetMm;
  const side = Math.floor(2 * halfMm * pxPerMm);
  const { width, height, channels, data } = picture;
  const out = new Uint8Array(side * side * 3);
  for (let y = 0; y < side; y += 1)
    for (let x = 0; x < side; x += 1) {
      const [px, py] = project(
        reading.homography,
        (x + 0.5) / pxPerMm - halfMm,
        (y + 0.5) / pxPerMm - halfMm,
      );
      const left = Math.min(width - 2, Math.max(0, Math.floor(px)));
      const top = Math.min(height - 2, Math.max(0, Math.floor(py)));
      const fx = Math.min(1, Math.max(0, px - left));
      const fy = Math.min(1, Math.max(0, py - top));
      const at = (top * width + left) * channels;
      const below = at + width * channels;
      for (let band = 0; band < 3; band += 1) {
        const upper = (data[at + band] ?? 0) * (1 - fx) + (data[at + channels + band] ?? 0) * fx;
        const lower = (data[below + band] ?? 0) * (1 - fx) + (data[below + channels + band] ?? 0) * fx;
        out[3 * (y * side + x) + band] = Math.round(upper * (1 - fy) + lower * fy);
      }
    }
  return { picture: { width: side, height: side, channels: 3, data: out }, pxPerMm };
}
