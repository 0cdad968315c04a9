import { readCard, readEitherCard } from '../core/card/index.ts';
import type { CardPicture } from '../core/colour/index.ts';
import type { Codes } from '../ports/codes.ts';
import type { Pictures, PixelImage } from '../ports/pictures.ts';
import { done, type Problem, type Result } from '../units/index.ts';
import type { Terminal } from './command.ts';
import { readFile } from './readArguments.ts';

/** Opens a picture named on the command line. */
export async function openPicture(
  path: string,
  pictures: Pictures,
  terminal: Terminal,
): Promise<Result<PixelImage, Problem>> {
  return pictures.decode(await readFile(path, terminal));
}

/** The card in a picture, with `form` any also the loose pieces, which have no window; its printed size does not matter here, so that its bar need not be measured. */
export async function withCard(
  picture: PixelImage,
  codes: Codes,
  form: 'window' | 'any' = 'window',
): Promise<Result<CardPicture, Problem>> {
  const { widthPx: width, heightPx: height, data } = picture;
  const read = form === 'any' ? readEitherCard : readCard;
  const card = read({ width, height, channels: 3, data }, await codes.read(picture), { barMm: null });
  return card.ok ? done({ picture, card: card.value }) : card;
}
