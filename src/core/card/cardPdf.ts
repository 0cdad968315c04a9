import geometry from '../../../data/card/geometry.json' with { type: 'json' };
import type { CardPaper, CardShape } from './drawCard.ts';

const pointsPerMm = 72 / 25.4;

const escaped = (text: string): string => text.replace(/[\\()]/g, (letter) => `\\${letter}`);

/**
 * The card as a PDF page of true size: one vector drawing, nothing to be scaled.
 *
 * @param shapes - from `drawCard` [mm]
 * @param paper - a4 or letter
 * @returns bytes of a PDF 1.4 file
 * @source none: PDF 1.4 as in ISO 32000-1
 */
export function cardPdf(shapes: readonly CardShape[], paper: CardPaper): Uint8Array {
  const [wide = 0, high = 0] = geometry.papers[paper];
  // The window's middle lies a little above the page's, so that the tag has room below.
  const [originX, originY] = [wide / 2, high / 2 - 12];
  const number = (value: number): string => String(Number((value * pointsPerMm).toFixed(4)));
  const at = (x: number, y: number): string => `${number(originX + x)} ${number(high - originY - y)}`;
  const grey = (level: number): string => String(Number((level / 255).toFixed(4)));
  const path = (points: readonly (readonly [number, number])[]): string =>
    points.map(([x, y], index) => `${at(x, y)} ${index === 0 ? 'm' : 'l'}`).join(' ');
  const draw = (shape: CardShape): string => {
    switch (shape.kind) {
      case 'rectangle':
        return `${grey(shape.grey)} g ${at(shape.x, shape.y + shape.height)} ${number(shape.width)} ${number(shape.height)} re f`;
      case 'outline':
        return `0.5 G ${number(shape.lineMm)} w ${path(shape.points)} s`;
      case 'polygon':
        return `${grey(shape.grey)} g ${path(shape.points)} f`;
      case 'text':
        return `0 g BT /F1 ${number(shape.sizeMm)} Tf ${at(shape.x, shape.y)} Td (${escaped(shape.text)}) Tj ET`;
    }
  };
  const content = shapes.map(draw).join('\n');
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R /ViewerPreferences << /PrintScaling /None >> >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 ${number(wide)} ${number(high)}] /Contents 4 0 R /Resources << /Font << /F1 5 0 R >> >> >>`,
    `<< /Length ${content.length} >>\nstream\n${content}\nendstream`,
    '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>',
  ];
  let file = '%PDF-1.4\n';
  const places = objects.map((object, index) => {
    const place = file.length;
    file += `${index + 1} 0 obj\n${object}\nendobj\n`;
    return place;
  });
  const table = file.length;
  const entries = places.map((place) => `${String(place).padStart(10, '0')} 00000 n \n`).join('');
  file += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${entries}trailer\n<< /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${table}\n%%EOF\n`;
  return Uint8Array.from(file, (letter) => letter.charCodeAt(0));
}
