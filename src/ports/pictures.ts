import type { PhotoProblem } from '../dossier/photoProblem.ts';
import type { Result } from '../units/index.ts';

/** A picture as numbers: upright, sRGB, rows from the top, 8 bits for each of red, green and blue. */
export interface PixelImage {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly channels: 3;
  /** widthPx × heightPx × 3 bytes. */
  readonly data: Uint8Array;
}

/** A decoded picture, and how large it was before it was made smaller. */
export interface DecodedPicture extends PixelImage {
  readonly fullWidthPx: number;
  readonly fullHeightPx: number;
}

export interface Pictures {
  /**
   * Opens a JPEG, PNG, WebP or HEIC picture for measuring. With `maxPixels` it is made smaller, by a filter
   * that does not alias, until it has no more than that; transparent places are white.
   */
  decode(
    bytes: Uint8Array,
    options?: { readonly maxPixels?: number },
  ): Promise<Result<DecodedPicture, PhotoProblem>>;
  encodePng(image: PixelImage): Promise<Uint8Array>;
}
