import sharp from 'sharp';
import type { Pictures } from '../../ports/pictures.ts';
import { withPicture } from './openPicture.ts';

/** Decodes pictures into pixels for the instruments, and writes pixels as PNG. */
export const sharpPictures: Pictures = {
  decode: (bytes, { maxPixels } = {}) =>
    withPicture(bytes, async ({ widthPx, heightPx, pixels }) => {
      const scale = maxPixels === undefined ? 1 : Math.min(1, Math.sqrt(maxPixels / (widthPx * heightPx)));
      const sized =
        scale === 1
          ? pixels()
          : pixels().resize({
              width: Math.max(1, Math.floor(widthPx * scale)),
              height: Math.max(1, Math.floor(heightPx * scale)),
              fit: 'fill',
              kernel: 'lanczos3',
              // Leaves at least a halving to the filter, which unlike the JPEG reader does not alias a weave.
              fastShrinkOnLoad: false,
            });
      const { data, info } = await sized.raw({ depth: 'uchar' }).toBuffer({ resolveWithObject: true });
      if (info.channels !== 3) throw new Error(`${info.channels} channels where 3 were asked for`);
      const { width, height } = info;
      return {
        widthPx: width,
        heightPx: height,
        channels: 3,
        data,
        fullWidthPx: widthPx,
        fullHeightPx: heightPx,
      };
    }),
  encodePng: ({ widthPx, heightPx, channels, data }) =>
    sharp(data, { raw: { width: widthPx, height: heightPx, channels } })
      .png()
      .toBuffer(),
};
