import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import reader from 'zxing-wasm/reader/zxing_reader.wasm?url';

// The reader is shipped with the screens; left to itself it would be fetched from outside.
prepareZXingModule({ overrides: { locateFile: () => reader } });

/** Long side at which a code that fills a quarter of the picture still reads, and reads quickly [px]. */
const longSidePx = 1600;

/** The photograph's pixels, upright and no larger than reading needs. */
async function pixelsOf(photograph: Blob): Promise<ImageData | null> {
  const picture = await createImageBitmap(photograph);
  const scale = Math.min(1, longSidePx / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  const pen = canvas.getContext('2d');
  pen?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return pen?.getImageData(0, 0, canvas.width, canvas.height) ?? null;
}

/** The text of the code in a photograph, or null when none can be read. A mirrored code is no tag. */
export async function codeTextIn(photograph: Blob): Promise<string | null> {
  const pixels = await pixelsOf(photograph);
  if (pixels === null) return null;
  const found = await readBarcodes(pixels, { formats: ['QRCode'], tryHarder: true, maxNumberOfSymbols: 2 });
  const readable = found.filter(({ isValid, isMirrored }) => isValid && !isMirrored);
  const [only, second] = readable;
  return second === undefined ? (only?.text ?? null) : null;
}
