import type { FoundCode } from '../core/card/index.ts';
import type { PixelImage } from './pictures.ts';

/** A QR code's modules, true where dark, row by row without quiet margin. */
export interface CodeMatrix {
  readonly modules: number;
  readonly dark: readonly boolean[];
}

/** Draws and reads QR codes. */
export interface Codes {
  draw(text: string): CodeMatrix;
  /** Every QR code in a picture; mirrored ones are left out. */
  read(image: PixelImage): Promise<readonly FoundCode[]>;
}
