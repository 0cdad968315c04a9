import sharp from 'sharp';
import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import { sharpPictures } from '../../src/adapters/images/sharpPictures.ts';
import { readEitherCard } from '../../src/core/card/index.ts';
import type { CardPicture } from '../../src/core/colour/index.ts';
import type { ScenePicture } from './blotScene.ts';

/** A scene's picture as a JPEG file, as it would come from a phone. */
export const jpegOf = ({ data, widthPx, heightPx }: ScenePicture, quality: number): Promise<Buffer> =>
  sharp(data, { raw: { width: widthPx, height: heightPx, channels: 3 } })
    .jpeg({ quality })
    .toBuffer();

/** Sends a scene's picture through JPEG and the card's reader; the code of the refusal where it reads none. */
export async function developScene(picture: ScenePicture, quality: number): Promise<CardPicture | string> {
  const decoded = await sharpPictures.decode(await jpegOf(picture, quality));
  if (!decoded.ok) return decoded.problem.code;
  const { widthPx: width, heightPx: height, data } = decoded.value;
  const codes = await zxingCodes.read(decoded.value);
  const card = readEitherCard({ width, height, channels: 3, data }, codes, { barMm: null });
  return card.ok ? { picture: decoded.value, card: card.value } : card.problem.code;
}
