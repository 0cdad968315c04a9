import { type CardShape, drawCard } from '../../core/card/index.ts';
import type { Codes } from '../../ports/codes.ts';
import { chance } from './chance.ts';

export interface BlotPicture {
  /** Serial of the weave card on the cloth, six letters or digits. */
  readonly serial: string;
  readonly seed: number;
  /** White cloth, and where it met the dye; null while it met none. Written `#rrggbb`. */
  readonly clean: string;
  readonly stained: string | null;
}

const halfMm = 118;
const windowMm = 70;
const pxPerMm = 5;

/** A print is neither quite black nor quite white. */
const printed = (grey: number): string => {
  const byte = Math.round(24 + (grey * 208) / 255);
  return `rgb(${byte},${byte},${byte})`;
};

const shapeOf = (shape: CardShape): string => {
  switch (shape.kind) {
    case 'rectangle':
      return `<rect x="${shape.x}" y="${shape.y}" width="${shape.width}" height="${shape.height}" fill="${printed(shape.grey)}"/>`;
    case 'polygon':
      return `<polygon points="${shape.points.map((point) => point.join(',')).join(' ')}" fill="${printed(shape.grey)}"/>`;
    case 'outline':
      return `<polygon points="${shape.points.map((point) => point.join(',')).join(' ')}" fill="none" stroke="${printed(0)}" stroke-width="${shape.lineMm}"/>`;
    case 'text':
      return `<text x="${shape.x}" y="${shape.y}" font-size="${shape.sizeMm}" fill="${printed(0)}">${shape.text}</text>`;
  }
};

/** The card alone, in millimetres from its window's middle, without the window. */
export function paintCard(serial: string, codes: Codes): string {
  const drawn = drawCard({ serial, tag: null, draw: (text) => codes.draw(text) });
  if (!drawn.ok) throw new Error(`a demo card cannot be drawn: ${drawn.problem.code}`);
  const half = windowMm / 2;
  const paper = `<path fill-rule="evenodd" fill="${printed(255)}" d="M-105 -108H105V108H-105ZM${-half} ${-half}V${half}H${half}V${-half}Z"/>`;
  return `<g shape-rendering="crispEdges">${paper}${drawn.value.map(shapeOf).join('')}</g>`;
}

/**
 * Draws a white test cloth under a weave card as a phone would take it from above, as SVG.
 *
 * @param picture - cloth, stain and card
 * @param codes - draws the card's codes
 * @returns SVG text, 5 px to a millimetre
 * @source none: drawing of this project
 */
export function paintBlot({ serial, seed, clean, stained }: BlotPicture, codes: Codes): string {
  const random = chance(seed);
  const turn = (random() - 0.5) * 4;
  const threads = Array.from({ length: 90 }, () => {
    const [x, y] = [(random() - 0.5) * windowMm, (random() - 0.5) * windowMm];
    return `M${x.toFixed(1)} ${y.toFixed(1)}h${(2 + random() * 5).toFixed(1)}`;
  }).join('');
  const [x, y, wide, high] = [
    (random() - 0.5) * 8,
    (random() - 0.5) * 8,
    13 + random() * 4,
    12 + random() * 4,
  ];
  const stain =
    stained === null
      ? ''
      : `<ellipse cx="${x.toFixed(1)}" cy="${y.toFixed(1)}" rx="${wide.toFixed(1)}" ry="${high.toFixed(1)}" fill="${stained}" filter="url(#soft)"/>`;
  const side = 2 * halfMm;
  const box = `x="${-windowMm / 2 - 2}" y="${-windowMm / 2 - 2}" width="${windowMm + 4}" height="${windowMm + 4}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${side * pxPerMm}" height="${side * pxPerMm}" viewBox="${-halfMm} ${-halfMm} ${side} ${side}"><defs><filter id="soft" x="-30%" y="-30%" width="160%" height="160%" color-interpolation-filters="sRGB"><feGaussianBlur stdDeviation="1.2"/></filter><linearGradient id="light" x1="0" y1="0" x2="1" y2="1"><stop offset="0" stop-color="#000" stop-opacity="0"/><stop offset="1" stop-color="#000" stop-opacity=".1"/></linearGradient></defs><rect x="${-halfMm}" y="${-halfMm}" width="${side}" height="${side}" fill="#8a8378"/><g transform="rotate(${turn.toFixed(2)})"><rect id="cloth" ${box} fill="${clean}"/>${stain}<path d="${threads}" stroke="#000" stroke-opacity=".03" stroke-width=".5"/>${paintCard(serial, codes)}</g><rect x="${-halfMm}" y="${-halfMm}" width="${side}" height="${side}" fill="url(#light)"/></svg>`;
}
