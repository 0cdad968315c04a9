import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { create } from 'qrcode';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import type { Codes } from '../../ports/codes.ts';
import type { PixelImage } from '../../ports/pictures.ts';

/** Codes are looked for in a picture of at most this longer side first [px]: a tenth of the time. */
const reducedSide = 1600;
const wanted = 5;

const require = createRequire(import.meta.url);
let prepared: Promise<unknown> | undefined;

/** Loads the reader from our own packages; left to itself it would fetch it from outside. */
const prepare = (): Promise<unknown> => {
  prepared ??= readFile(require.resolve('zxing-wasm/reader/zxing_reader.wasm')).then((bytes) =>
    prepareZXingModule({
      overrides: { wasmBinary: bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) },
      fireImmediately: true,
    }),
  );
  return prepared;
};

/** Mean of square blocks: enough for codes, whose modules span several pixels of the reduced picture. */
function reduce(
  image: PixelImage,
  by: number,
): { readonly width: number; readonly height: number; readonly data: Uint8ClampedArray } {
  const width = Math.floor(image.widthPx / by);
  const height = Math.floor(image.heightPx / by);
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      let sum = 0;
      for (let dy = 0; dy < by; dy += 1)
        for (let dx = 0; dx < by; dx += 1) {
          const at = 3 * ((y * by + dy) * image.widthPx + x * by + dx);
          sum += (image.data[at] ?? 0) + 2 * (image.data[at + 1] ?? 0) + (image.data[at + 2] ?? 0);
        }
      const grey = sum / (4 * by * by);
      const at = 4 * (y * width + x);
      data[at] = grey;
      data[at + 1] = grey;
      data[at + 2] = grey;
    }
  return { width, height, data };
}

const readAt = async (image: PixelImage, by: number) => {
  const { width, height, data } = reduce(image, by);
  const found = await readBarcodes(
    { width, height, data, colorSpace: 'srgb' } as unknown as Parameters<typeof readBarcodes>[0],
    {
      formats: ['QRCode'],
      tryHarder: true,
      maxNumberOfSymbols: 12,
    },
  );
  return found
    .filter(({ isValid, isMirrored }) => isValid && !isMirrored)
    .map(({ text, position }) => {
      const place = ({ x, y }: { readonly x: number; readonly y: number }) =>
        [(x + 0.5) * by - 0.5, (y + 0.5) * by - 0.5] as const;
      const { topLeft, topRight, bottomRight, bottomLeft } = position;
      return {
        text,
        corners: [place(topLeft), place(topRight), place(bottomRight), place(bottomLeft)] as const,
      };
    });
};

/** QR codes drawn by `qrcode`, read by zxing. */
export const zxingCodes: Codes = {
  draw(text) {
    const { modules } = create(text, { errorCorrectionLevel: 'Q' });
    return {
      modules: modules.size,
      dark: Array.from({ length: modules.size ** 2 }, (_, at) => modules.data[at] === 1),
    };
  },
  async read(image) {
    await prepare();
    const by = Math.max(1, Math.ceil(Math.max(image.widthPx, image.heightPx) / reducedSide));
    const quick = await readAt(image, by);
    if (by === 1 || quick.length >= wanted - 1) return quick;
    const closer = await readAt(image, Math.max(1, Math.floor(by / 2)));
    return closer.length > quick.length ? closer : quick;
  },
};
