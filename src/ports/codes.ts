import type { PixelImage } from './pictures.ts';

/** A QR code's modules, true where dark, row by row without quiet margin. */
export interface CodeMatrix {
  readonly modules: number;
  readonly dark: readonly boolean[];
}

/** A QR code found in a picture; corners in whole pixels, in the symbol's own order. */
export interface FoundCode {
  readonly text: string;
  /** Upper left, upper right, lower right, lower left of the symbol, whatever way up it lies. */
  readonly corners: readonly [Corner, Corner, Corner, Corner];
}

export type Corner = readonly [xPx: number, yPx: number];

/** Draws and reads QR codes. */
export interface Codes {
  draw(text: string): CodeMatrix;
  /** Every QR code in a picture; mirrored ones are left out. */
  read(image: PixelImage): Promise<readonly FoundCode[]>;
}
