import { drawing, element, label } from './drawing.ts';

export interface TagLabel {
  readonly tag: string;
  readonly number: string;
  readonly title: string;
  readonly workshop: string;
  /** A QR code: modules to a side, and which are dark, row by row. */
  readonly code: { readonly modules: number; readonly dark: readonly boolean[] };
}

const [widthMm, heightMm] = [95, 52];
/** A code of this size is read at arm's length by a phone; four modules of white around it are asked for by ISO/IEC 18004. */
const codeMm = 40;
const quietModules = 4;
/** Letters of a tag, large enough to be read from across the wash floor, smaller for a long one. */
const tagMm = (tag: string): number => Math.min(20, 62 / Math.max(2, tag.length));
const mostTitle = 30;

function drawnCode({ modules, dark }: TagLabel['code'], x: number, y: number): string {
  const unit = codeMm / (modules + 2 * quietModules);
  const at = (index: number): number => (index + quietModules) * unit;
  const [side, squares] = [unit.toFixed(3), dark.flatMap((isDark, index) => (isDark ? [index] : []))];
  const path = squares.map((index) => {
    const [across, down] = [x + at(index % modules), y + at(Math.floor(index / modules))];
    return `M${across.toFixed(3)} ${down.toFixed(3)}h${side}v${side}h-${side}z`;
  });
  return element('path', { d: path.join(''), fill: '#000000', 'shape-rendering': 'crispEdges' });
}

/**
 * The label that hangs on the rug, as a drawing to cut out: the code that opens its dossier, and the tag.
 *
 * @returns SVG text of 95 × 52 mm
 * @source none: layout of this project
 */
export function tagLabel({ tag, number, title, workshop, code }: TagLabel): string {
  const short = title.length > mostTitle ? `${title.slice(0, mostTitle - 1)}…` : title;
  const left = codeMm + 7;
  return drawing(widthMm, heightMm, [
    element('rect', {
      ...{ x: 0.5, y: 0.5, width: widthMm - 1, height: heightMm - 1, rx: 2, fill: 'none' },
      ...{ stroke: '#6a5d4d', 'stroke-width': 0.25, 'stroke-dasharray': '2 1.5' },
    }),
    drawnCode(code, 3, (heightMm - codeMm) / 2),
    label(left, 28, tag, { 'font-size': tagMm(tag), 'font-weight': 700 }),
    label(left, 36, `Dossier ${number}`, { 'font-size': 4 }),
    label(left, 41, short, { 'font-size': 2.8 }),
    label(left, 46, workshop.slice(0, mostTitle), { 'font-size': 2.4 }),
  ]);
}

export const tagLabelWidthMm = widthMm;
