import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { DiskPhotos } from '../src/adapters/disk/diskPhotos.ts';
import { sharpPictures } from '../src/adapters/images/sharpPictures.ts';
import { line, timed } from './record/figures.ts';

/** A phone's picture: 12 megapixels with grain, so that it compresses like a photograph of a pile. */
async function phonePicture(seed: number): Promise<Buffer> {
  const [width, height] = [4000, 3000];
  let state = seed;
  const data = Buffer.alloc(width * height * 3);
  for (let at = 0; at < data.length; at += 1) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    data[at] = 100 + (state >>> 27) + (Math.floor(at / 3 / 40) % 2) * 40;
  }
  return sharp(data, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 85 })
    .toBuffer();
}

/** Keeping and decoding photographs against decoding them with the bare library. */
export async function run(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'wefthouse-bench-'));
  try {
    const pictures = await Promise.all(Array.from({ length: 6 }, (_, seed) => phonePicture(seed + 1)));
    const megabytes = pictures.reduce((sum, { length }) => sum + length, 0) / pictures.length / 1e6;
    console.log(`pictures of 12 megapixels, ${megabytes.toFixed(1)} MB each`);
    const bare = await timed(pictures, (bytes) => sharp(bytes).raw().toBuffer());
    const photos = new DiskPhotos(folder);
    const report = (what: string, figures: typeof bare) =>
      console.log(`${line(what, figures)} ratio ${(figures.p50 / bare.p50).toFixed(2)}`);
    report('decode with the bare library', bare);
    report('decode for an instrument', await timed(pictures, (bytes) => sharpPictures.decode(bytes)));
    report(
      'decode for an instrument, to 1 megapixel',
      await timed(pictures, (bytes) => sharpPictures.decode(bytes, { maxPixels: 1e6 })),
    );
    report(
      'keep durably, with both forms',
      await timed(pictures, (bytes) => photos.keep(bytes, 'image/jpeg')),
    );
    report('keep what is kept already', await timed(pictures, (bytes) => photos.keep(bytes, 'image/jpeg')));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

await run();
