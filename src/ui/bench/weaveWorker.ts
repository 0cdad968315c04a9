import { countWeave, type Picture } from '../../core/weave/index.ts';
import type { WeaveAsked, WeaveTold } from './weaveTalk.ts';

/** More than this tells the counter nothing and fills a phone's memory. */
const mostPixels = 12e6;

let picture: Picture | null = null;
const tell = (told: WeaveTold) => postMessage(told);

/** Decodes upright; a larger photograph is reduced by the browser's smoothest filter, never by dropping pixels. */
async function open(file: Blob) {
  const whole = await createImageBitmap(file, { imageOrientation: 'from-image' });
  const originalWidth = whole.width;
  const share = Math.min(1, Math.sqrt(mostPixels / (whole.width * whole.height)));
  const width = Math.max(1, Math.round(whole.width * share));
  const height = Math.max(1, Math.round(whole.height * share));
  const bitmap =
    share === 1
      ? whole
      : await createImageBitmap(whole, { resizeWidth: width, resizeHeight: height, resizeQuality: 'high' });
  const canvas = new OffscreenCanvas(width, height);
  const paper = canvas.getContext('2d', { willReadFrequently: true });
  if (paper === null) throw new Error('No canvas.');
  paper.fillStyle = '#fff';
  paper.fillRect(0, 0, width, height);
  paper.drawImage(bitmap, 0, 0);
  whole.close();
  bitmap.close();
  picture = { width, height, channels: 4, data: paper.getImageData(0, 0, width, height).data };
  // What is shown is what was counted, so that strokes and taps lie where they should.
  const shown = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.92 });
  tell({ kind: 'opened', shown, widthPx: width, heightPx: height, reducedBy: originalWidth / width });
}

addEventListener('message', async ({ data }: MessageEvent<WeaveAsked>) => {
  try {
    if (data.kind === 'open') await open(data.file);
    else if (picture !== null) tell({ kind: 'counted', counted: countWeave(picture, data.options) });
  } catch {
    tell({ kind: data.kind === 'open' ? 'not-opened' : 'not-counted' });
  }
});
