/** A photograph as numbers: upright, sRGB, three bytes to a pixel, transparent places white. */
export interface PictureHere {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly channels: 3;
  readonly data: Uint8Array<ArrayBuffer>;
  /** Pixels of the original along a side to one of this picture. */
  readonly reducedBy: number;
}

/** More than this tells an instrument nothing and fills a phone's memory. */
export const mostPixels = 12e6;

/**
 * Opens a photograph in the browser, in a worker or in a page. A larger one is reduced by the browser's
 * smoothest filter, never by dropping pixels. Throws where the browser cannot open the file.
 */
export async function uprightPicture(
  photograph: Blob,
): Promise<{ readonly picture: PictureHere; readonly canvas: OffscreenCanvas }> {
  const whole = await createImageBitmap(photograph, { imageOrientation: 'from-image' });
  const originalWidth = whole.width;
  const share = Math.min(1, Math.sqrt(mostPixels / (whole.width * whole.height)));
  const widthPx = Math.max(1, Math.round(whole.width * share));
  const heightPx = Math.max(1, Math.round(whole.height * share));
  const bitmap =
    share === 1
      ? whole
      : await createImageBitmap(whole, {
          resizeWidth: widthPx,
          resizeHeight: heightPx,
          resizeQuality: 'high',
        });
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const paper = canvas.getContext('2d', { willReadFrequently: true });
  if (paper === null) throw new Error('No canvas.');
  paper.fillStyle = '#fff';
  paper.fillRect(0, 0, widthPx, heightPx);
  paper.drawImage(bitmap, 0, 0);
  whole.close();
  bitmap.close();
  const rgba = paper.getImageData(0, 0, widthPx, heightPx).data;
  const data = new Uint8Array(widthPx * heightPx * 3);
  for (let from = 0, to = 0; to < data.length; from += 4, to += 3) {
    data[to] = rgba[from] ?? 0;
    data[to + 1] = rgba[from + 1] ?? 0;
    data[to + 2] = rgba[from + 2] ?? 0;
  }
  return { picture: { widthPx, heightPx, channels: 3, data, reducedBy: originalWidth / widthPx }, canvas };
}
