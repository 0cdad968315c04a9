import { chance } from './chance.ts';
import { paintField } from './paintField.ts';
import { paintTrouble } from './paintTrouble.ts';
import type { RugDesign } from './rugDesign.ts';

/** One drawing unit is a millimetre; y runs down, so the rug's far end is at the top. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const fringeMm = 70;
const floorMm = 160;

export const rect = ({ x, y, width, height }: Frame, fill: string, more = '') =>
  `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${fill}" ${more}/>`;

export const inset = ({ x, y, width, height }: Frame, by: number): Frame => ({
  x: x + by,
  y: y + by,
  width: width - 2 * by,
  height: height - 2 * by,
});

/** A row of lozenges or rosettes along the four sides between two frames. */
function paintBorder(outer: Frame, depth: number, design: RugDesign, level: number): string {
  const [fill, motif] = level % 2 === 0 ? [design.border, design.accent] : [design.second, design.border];
  const step = Math.max(depth * 1.1, 60);
  const along = (length: number) => Math.max(2, Math.round(length / step));
  const shapes: string[] = [rect(outer, fill)];
  const put = (x: number, y: number, turn: number) => {
    const r = depth * 0.32;
    shapes.push(
      level % 2 === 0
        ? `<path d="M${x} ${y - r}L${x + r} ${y}L${x} ${y + r}L${x - r} ${y}Z" fill="${motif}" stroke="${design.dark}" stroke-width="${r * 0.14}" transform="rotate(${turn} ${x} ${y})"/>`
        : `<circle cx="${x}" cy="${y}" r="${r * 0.7}" fill="${motif}"/><circle cx="${x}" cy="${y}" r="${r * 0.25}" fill="${design.dark}"/>`,
    );
  };
  const across = along(outer.width);
  for (let i = 0; i <= across; i++) {
    const x = outer.x + depth / 2 + ((outer.width - depth) * i) / across;
    put(x, outer.y + depth / 2, 0);
    put(x, outer.y + outer.height - depth / 2, 0);
  }
  const up = along(outer.height);
  for (let i = 1; i < up; i++) {
    const y = outer.y + depth / 2 + ((outer.height - depth) * i) / up;
    put(outer.x + depth / 2, y, 90);
    put(outer.x + outer.width - depth / 2, y, 90);
  }
  const line = inset(outer, depth - 5);
  shapes.push(
    `<rect x="${line.x}" y="${line.y}" width="${line.width}" height="${line.height}" fill="none" stroke="${design.dark}" stroke-width="6"/>`,
  );
  return shapes.join('');
}

/** Bands of slightly other dye, as wool batches ran out on the loom. */
function paintAbrash(rug: Frame, design: RugDesign, random: () => number): string {
  const bands: string[] = [];
  let y = rug.y;
  while (y < rug.y + rug.height) {
    const height = rug.height * (0.03 + random() * 0.12);
    const shade = random() < 0.5 ? '#ffffff' : '#000000';
    const opacity = design.abrash * 0.16 * random();
    bands.push(
      rect(
        { ...rug, y, height: Math.min(height, rug.y + rug.height - y) },
        shade,
        `opacity="${opacity.toFixed(3)}"`,
      ),
    );
    y += height;
  }
  return bands.join('');
}

function paintFringe(rug: Frame, colour: string, random: () => number): string {
  const threads: string[] = [];
  for (let x = rug.x + 4; x < rug.x + rug.width; x += 9) {
    for (const [y, way] of [
      [rug.y, -1],
      [rug.y + rug.height, 1],
    ] as const) {
      const length = fringeMm * (0.6 + 0.4 * random()) * way;
      const sway = (random() - 0.5) * 14;
      threads.push(`M${x} ${y}q${sway} ${length / 2} ${sway / 2} ${length}`);
    }
  }
  return `<path d="${threads.join('')}" fill="none" stroke="${colour}" stroke-width="5" stroke-linecap="round"/>`;
}

/** How a picture of a rug differs from the plain one. */
export interface RugShot {
  /** Dust over the rug, 0 … 1. */
  readonly soil?: number;
  /** Something that lies on the rug, drawn in millimetres from its own middle. */
  readonly laid?: string;
  /** Long side of the picture [px]. */
  readonly longPx?: number;
}

/**
 * Draws an invented rug lying on a workshop floor, as SVG.
 *
 * @param design - measures, colours, pattern and troubles
 * @param side - the face, or the back: mirrored, flatter, without shine
 * @param shot - dust, what lies on it, and how large it is taken
 * @returns SVG text
 * @source none: drawing of this project
 */
export function paintRug(
  design: RugDesign,
  side: 'face' | 'back' = 'face',
  { soil = 0, laid = '', longPx = 1200 }: RugShot = {},
): string {
  const random = chance(design.seed);
  const rug: Frame = { x: floorMm, y: floorMm, width: design.widthMm, height: design.lengthMm };
  const [width, height] = [rug.width + 2 * floorMm, rug.height + 2 * floorMm];
  const scale = longPx / Math.max(width, height);
  const parts: string[] = [];
  let frame = rug;
  const depth = Math.min(rug.width, rug.height) * 0.075;
  for (let level = 0; level < design.borders; level++) {
    const own = level === 0 ? depth : depth * 0.55;
    parts.push(paintBorder(frame, own, design, level));
    frame = inset(frame, own);
  }
  parts.push(
    rect(frame, design.ground),
    `<g clip-path="url(#field)">${paintField(frame, design, random)}</g>`,
    paintAbrash(rug, design, random),
  );
  const troubles = design.troubles.map((trouble) => paintTrouble(trouble, rug, random)).join('');
  // Lines drawn out: a pattern with so small a tile takes the renderer twenty times as long.
  const threads = (from: number, until: number, line: (at: number) => string) =>
    Array.from({ length: Math.ceil((until - from) / design.gaugeMm) }, (_, at) =>
      line(from + at * design.gaugeMm),
    ).join('');
  const across = threads(rug.y, rug.y + rug.height, (y) => `M${rug.x} ${y}h${rug.width}`);
  const along = threads(rug.x, rug.x + rug.width, (x) => `M${x} ${rug.y}v${rug.height}`);
  const weave = `<path d="${across}${along}" fill="none" stroke="#000" stroke-opacity="${side === 'back' ? 0.3 : 0.14}" stroke-width="${design.gaugeMm * 0.3}"/>`;
  const flecks = Array.from({ length: 60 }, () => {
    const [x, y, long] = [random() * 180, random() * 120, 6 + random() * 18];
    return `M${x.toFixed(0)} ${y.toFixed(0)}h${long.toFixed(0)}`;
  }).join('');
  const wool = `<pattern id="wool" width="180" height="120" patternUnits="userSpaceOnUse"><path d="${flecks}" stroke="#000" stroke-opacity=".18" stroke-width="4"/></pattern>`;
  const [cx, cy] = [rug.x + rug.width / 2, rug.y + rug.height / 2];
  const clip =
    design.shape === 'round'
      ? `<ellipse cx="${cx}" cy="${cy}" rx="${rug.width / 2}" ry="${rug.height / 2}"/>`
      : rect(rug, '#000');
  const mirror = side === 'back' ? ` transform="translate(${2 * cx} 0) scale(-1 1)"` : '';
  const dust = soil === 0 ? '' : rect(rug, '#5f4d30', `opacity="${soil}"`);
  const onTop = laid === '' ? '' : `<g transform="translate(${cx} ${rug.y + rug.height * 0.68})">${laid}</g>`;
  const fringe = design.fringe === null ? '' : paintFringe(rug, design.fringe, random);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${Math.round(width * scale)}" height="${Math.round(height * scale)}" viewBox="0 0 ${width} ${height}"><defs>${wool}<clipPath id="rug">${clip}</clipPath><clipPath id="field">${rect(frame, '#000')}</clipPath><linearGradient id="light" x1="0" y1="0" x2="1" y2="1"><stop offset="0" stop-color="#fff" stop-opacity=".16"/><stop offset="1" stop-color="#000" stop-opacity=".2"/></linearGradient></defs>${rect({ x: 0, y: 0, width, height }, '#a9a198')}<g${mirror}><g transform="translate(12 14)" opacity=".25">${clip}</g>${fringe}<g clip-path="url(#rug)">${parts.join('')}${troubles}${rect(rug, 'url(#wool)')}${weave}${dust}</g>${onTop}</g>${side === 'face' ? rect({ x: 0, y: 0, width, height }, 'url(#light)') : ''}</svg>`;
}
