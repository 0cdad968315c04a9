import type { Picture } from '../weave/index.ts';
import { readCardText } from './cardText.ts';

/** A code as a general-purpose reader reports it, corners in pixels of what it was given. */
export interface ReportedCode {
  readonly text: string;
  readonly isValid: boolean;
  readonly isMirrored: boolean;
  readonly position: Readonly<
    Record<'topLeft' | 'topRight' | 'bottomRight' | 'bottomLeft', { readonly x: number; readonly y: number }>
  >;
}

/** A grey picture in four bytes to a pixel, as readers of codes take it. */
export interface ReducedPicture {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray<ArrayBuffer>;
}

type Corner = readonly [xPx: number, yPx: number];

/** A code found in a picture; corners in its own order, whatever way up it lies [px of the picture]. */
export interface FoundCode {
  readonly text: string;
  readonly corners: readonly [Corner, Corner, Corner, Corner];
}

/** Codes are looked for in a picture of at most this longer side first [px]: a tenth of the time. */
const reducedSide = 1600;
const cornersOfACard = 4;

/** Mean of square blocks: enough for codes, whose modules span several pixels of the reduced picture. */
function reduced(picture: Picture, by: number): ReducedPicture {
  const { channels, data: from } = picture;
  const width = Math.floor(picture.width / by);
  const height = Math.floor(picture.height / by);
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      let sum = 0;
      for (let dy = 0; dy < by; dy += 1)
        for (let dx = 0; dx < by; dx += 1) {
          const at = channels * ((y * by + dy) * picture.width + x * by + dx);
          sum += (from[at] ?? 0) + 2 * (from[at + 1] ?? 0) + (from[at + 2] ?? 0);
        }
      const grey = sum / (4 * by * by);
      const at = 4 * (y * width + x);
      data[at] = grey;
      data[at + 1] = grey;
      data[at + 2] = grey;
    }
  return { width, height, data };
}

/**
 * Every QR code in a picture: looked for in a reduced picture first, and closer while a card is incomplete.
 *
 * @param read - finds codes in a grey picture
 * @returns mirrored codes are left out; corners in whole pixels of what was read, scaled back
 * @source none: this project's; the order was chosen for speed, bench/card.ts
 */
export async function findCodes(
  picture: Picture,
  read: (grey: ReducedPicture) => Promise<readonly ReportedCode[]>,
): Promise<readonly FoundCode[]> {
  const readAt = async (by: number): Promise<readonly FoundCode[]> =>
    (await read(reduced(picture, by)))
      .filter(({ isValid, isMirrored }) => isValid && !isMirrored)
      .map(({ text, position: { topLeft, topRight, bottomRight, bottomLeft } }) => {
        const place = ({ x, y }: { readonly x: number; readonly y: number }): Corner => [
          (x + 0.5) * by - 0.5,
          (y + 0.5) * by - 0.5,
        ];
        return { text, corners: [place(topLeft), place(topRight), place(bottomRight), place(bottomLeft)] };
      });
  const cornersIn = (codes: readonly FoundCode[]): number =>
    codes.filter(({ text }) => ['corner', 'loose'].includes(readCardText(text)?.kind ?? '')).length;
  let by = Math.max(1, Math.ceil(Math.max(picture.width, picture.height) / reducedSide));
  let best = await readAt(by);
  while (by > 1 && cornersIn(best) < cornersOfACard) {
    by = Math.floor(by / 2);
    const closer = await readAt(by);
    const gained = cornersIn(closer) > cornersIn(best);
    if (closer.length > best.length) best = closer;
    // Two codes make a reading; a closer look is taken only while it finds more.
    if (cornersIn(best) >= 2 && !gained) break;
  }
  return best;
}
