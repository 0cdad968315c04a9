/** Draws QR codes. */
export interface QrCodes {
  /** The code as SVG text of the given width, with its quiet margin. */
  svg(text: string, widthMm: number): string;
}
