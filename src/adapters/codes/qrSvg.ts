import { create } from 'qrcode';
import type { QrCodes } from '../../ports/qrCodes.ts';

/** Modules of white that a reader needs around the code (ISO/IEC 18004). */
const quiet = 4;

/** QR codes drawn as one path; error correction Q bears a quarter of the label scuffed away. */
export const qrSvg: QrCodes = {
  svg(text, widthMm) {
    const { modules } = create(text, { errorCorrectionLevel: 'Q' });
    const side = modules.size + 2 * quiet;
    const squares = Array.from({ length: modules.size ** 2 }, (_, index) => index)
      .filter((index) => modules.data[index] === 1)
      .map(
        (index) => `M${(index % modules.size) + quiet} ${Math.floor(index / modules.size) + quiet}h1v1h-1z`,
      )
      .join('');
    return (
      `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${widthMm}mm" viewBox="0 0 ${side} ${side}" shape-rendering="crispEdges">` +
      `<rect width="${side}" height="${side}" fill="#ffffff"/><path fill="#000000" d="${squares}"/></svg>`
    );
  },
};
