import { createHash } from 'node:crypto';
import sharp from 'sharp';
import type { PhotoProblem } from '../../dossier/photoProblem.ts';
import type { Photo } from '../../ports/photos.ts';
import { type Result, refused } from '../../units/index.ts';
import { claims, foundType } from './mediaType.ts';
import { withPicture } from './openPicture.ts';

const mostShownPx = 2400;
const mostThumbnailPx = 480;

/** Type of the forms that are shown; the original keeps its own. */
export const shownType = 'image/jpeg';

/** The name of a photograph: SHA-256 (hex) of its bytes. */
export const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

export interface ExaminedPhoto {
  readonly photo: Photo;
  readonly shown: Uint8Array;
  readonly thumbnail: Uint8Array;
}

/** Looks through a photograph to its last pixel, and makes the forms in which it will be shown. */
export async function examinePhoto(
  bytes: Uint8Array,
  claimed: string,
): Promise<Result<ExaminedPhoto, PhotoProblem>> {
  const found = foundType(bytes);
  if ('accepted' in found && !claims(claimed, found.accepted)) {
    return refused('photograph-not-a-picture', { claimed, found: found.accepted });
  }
  const examined = await withPicture(bytes, async ({ mediaType, widthPx, heightPx, pixels }) => {
    const shown = await pixels()
      .resize({ width: mostShownPx, height: mostShownPx, fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 88 })
      .toBuffer();
    const thumbnail = await sharp(shown)
      .resize({ width: mostThumbnailPx, height: mostThumbnailPx, fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 80 })
      .toBuffer();
    return {
      photo: { photo: hashOf(bytes), mediaType, widthPx, heightPx, bytes: bytes.length },
      shown,
      thumbnail,
    };
  });
  return examined.ok || examined.problem.code !== 'photograph-not-a-picture'
    ? examined
    : refused('photograph-not-a-picture', { ...examined.problem.facts, claimed });
}
