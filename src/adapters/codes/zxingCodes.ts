import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { create } from 'qrcode';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { findCodes } from '../../core/card/index.ts';
import type { Codes } from '../../ports/codes.ts';

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
    return findCodes(
      { width: image.widthPx, height: image.heightPx, channels: 3, data: image.data },
      (grey) =>
        readBarcodes({ ...grey, colorSpace: 'srgb' } as unknown as Parameters<typeof readBarcodes>[0], {
          formats: ['QRCode'],
          tryHarder: true,
          maxNumberOfSymbols: 12,
        }),
    );
  },
};
