import sharp, { type Sharp } from 'sharp';
import type { PhotoProblem } from '../../dossier/photoProblem.ts';
import type { Photo } from '../../ports/photos.ts';
import { done, type Result, refused } from '../../units/index.ts';
import { takeTurns } from '../pdf/takeTurns.ts';
import { decodeHeic } from './decodeHeic.ts';
import { foundType } from './mediaType.ts';

const mostMegabytes = 40;
const mostMegapixels = 100;
const mostPixels = mostMegapixels * 1_000_000;

/** Pictures are opened two at a time: one of 100 megapixels takes some 400 MB while it is open. */
const inTurn = takeTurns(2);

// Pictures come once each; a cache of decoded ones would only hold memory.
sharp.cache(false);

export interface OpenPicture {
  readonly mediaType: Photo['mediaType'];
  /** Upright. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** Its pixels, upright, sRGB, without transparency; nothing of the file's notes (position, maker) is carried over. */
  readonly pixels: () => Sharp;
}

/** Opens a picture of an accepted kind and hands it to `use`; whatever cannot be decoded whole is refused. */
export function withPicture<Value>(
  bytes: Uint8Array,
  use: (picture: OpenPicture) => Promise<Value>,
): Promise<Result<Value, PhotoProblem>> {
  const megabytes = bytes.length / 1_000_000;
  if (megabytes > mostMegabytes) {
    return Promise.resolve(refused('photograph-too-large', { megabytes, most: mostMegabytes }));
  }
  const found = foundType(bytes);
  if (!('accepted' in found)) {
    return Promise.resolve(refused('photograph-not-a-picture', { claimed: '', found: found.other }));
  }
  return inTurn(async () => {
    const opened =
      found.accepted === 'image/heic' ? await openHeic(bytes) : await openPlain(bytes, found.accepted);
    if (!opened.ok) return opened;
    try {
      return done(await use(opened.value));
    } catch (error) {
      return damaged(error);
    }
  });
}

async function openPlain(
  bytes: Uint8Array,
  mediaType: Photo['mediaType'],
): Promise<Result<OpenPicture, PhotoProblem>> {
  try {
    const { autoOrient } = await sharp(bytes, { limitInputPixels: false }).metadata();
    const { width, height } = autoOrient;
    if (width * height > mostPixels) return tooManyPixels(width * height);
    const pixels = () =>
      sharp(bytes, { limitInputPixels: mostPixels, failOn: 'error', autoOrient: true })
        .flatten({ background: 'white' })
        .toColourspace('srgb');
    return done({ mediaType, widthPx: width, heightPx: height, pixels });
  } catch (error) {
    return damaged(error);
  }
}

async function openHeic(bytes: Uint8Array): Promise<Result<OpenPicture, PhotoProblem>> {
  const answer = await decodeHeic(bytes, mostPixels);
  if ('damaged' in answer) return damaged(new Error(answer.damaged));
  if ('tooManyPixels' in answer) return tooManyPixels(answer.tooManyPixels);
  const { widthPx, heightPx, data } = answer;
  const raw = { width: widthPx, height: heightPx, channels: 4 } as const;
  return done({
    mediaType: 'image/heic',
    widthPx,
    heightPx,
    pixels: () => sharp(data, { raw, limitInputPixels: mostPixels }).flatten({ background: 'white' }),
  });
}

const tooManyPixels = (pixels: number) =>
  refused('photograph-too-many-pixels', { megapixels: pixels / 1_000_000, most: mostMegapixels });

function damaged(error: unknown): Result<never, PhotoProblem> {
  const text = error instanceof Error ? error.message : String(error);
  const isCut = /premature|truncat|end of (file|stream|image)|too short|not enough|unexpected end|eof/i.test(
    text,
  );
  return refused('photograph-damaged', {
    reason: isCut ? 'it is cut off before its end' : `its data cannot be decoded (${firstLine(text)})`,
  });
}

const firstLine = (text: string): string => text.split('\n')[0]?.trim() ?? '';
