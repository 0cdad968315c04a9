import type { Noted } from '../dossier/index.ts';
import { drawing, element, hue, label, pointsOf } from './drawing.ts';
import type { PaperDrawing, PaperMark, PaperPoint } from './paper.ts';
import { type PlacedMark, placeLabels } from './placeLabels.ts';

/** A mark with the number it carries on every paper of the rug. */
export interface NumberedMark {
  readonly number: string;
  readonly mark: Noted<'MarkRecorded'>;
}

interface RugSize {
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly round: boolean;
}

const highestMm = 118;
/** Two sides with their margins fill the width of the writing. */
const widestMm = 66;
const marginMm = 9;
const halo = { fill: 'none', stroke: '#fff', 'stroke-width': 1.1, 'stroke-linejoin': 'round' };
const dash = {
  fill: 'none',
  stroke: hue.ink,
  'stroke-width': 0.45,
  'stroke-dasharray': '1.5 1',
  'stroke-linejoin': 'round',
};

const outlineOf = ({ round }: RugSize, widthMm: number, heightMm: number): string => {
  const look = { fill: hue.wool, stroke: hue.walnut, 'stroke-width': 0.5 };
  if (round)
    return element('ellipse', {
      cx: marginMm + widthMm / 2,
      cy: marginMm + heightMm / 2,
      rx: widthMm / 2,
      ry: heightMm / 2,
      ...look,
    });
  const warps = Math.max(6, Math.round(widthMm / 2));
  const fringe = Array.from({ length: warps + 1 }, (_, at) => {
    const x = marginMm + (at * widthMm) / warps;
    const ends: readonly (readonly [number, number])[] = [
      [marginMm - 3, marginMm],
      [marginMm + heightMm, marginMm + heightMm + 3],
    ];
    return ends
      .map(([y1, y2]) => element('line', { x1: x, x2: x, y1, y2, stroke: hue.walnut, 'stroke-width': 0.25 }))
      .join('');
  });
  const inner = Math.min(widthMm, heightMm) * 0.09;
  return [
    ...fringe,
    element('rect', { x: marginMm, y: marginMm, width: widthMm, height: heightMm, ...look }),
    element('rect', {
      x: marginMm + inner,
      y: marginMm + inner,
      width: widthMm - 2 * inner,
      height: heightMm - 2 * inner,
      fill: 'none',
      stroke: hue.line,
      'stroke-width': 0.35,
    }),
  ].join('');
};

const drawn = ({ shape, pointsMm }: PlacedMark): string => {
  if (shape === 'point') {
    const [cx, cy] = pointsMm[0] ?? [0, 0];
    return [halo, dash].map((pen) => element('circle', { cx, cy, r: 1.9, ...pen })).join('');
  }
  return [halo, dash]
    .map((pen) => element(shape === 'line' ? 'polyline' : 'polygon', { points: pointsOf(pointsMm), ...pen }))
    .join('');
};

const numbered = ({ label: number, labelMm: [x, y], leadsToMm }: PlacedMark): string =>
  [
    ...(leadsToMm === null
      ? []
      : [
          element('line', {
            x1: x,
            y1: y,
            x2: leadsToMm[0],
            y2: leadsToMm[1],
            stroke: hue.ink,
            'stroke-width': 0.25,
          }),
        ]),
    element('circle', { cx: x, cy: y, r: 2.1, fill: '#fff', stroke: hue.ink, 'stroke-width': 0.35 }),
    label(x, y + 0.85, number, { 'font-size': 2.4, 'font-weight': 700, 'text-anchor': 'middle' }),
  ].join('');

interface SideOfMap {
  readonly side: 'face' | 'back';
  readonly lying: readonly NumberedMark[];
}

/** One side of the rug with its marks and its name, in a field of its own. */
function drawSide({ side, lying }: SideOfMap, size: RugSize, scale: number): readonly string[] {
  const [widthMm, heightMm] = [size.widthMm * scale, size.lengthMm * scale];
  const [allWidth, allHeight] = [widthMm + 2 * marginMm, heightMm + 2 * marginMm];
  const place = (xMm: number, yMm: number): PaperPoint => [
    (marginMm + (side === 'face' ? xMm : size.widthMm - xMm) * scale) / allWidth,
    (marginMm + (size.lengthMm - yMm) * scale) / allHeight,
  ];
  const inParts: readonly PaperMark[] = lying.map(({ number, mark }) => ({
    label: number,
    shape: mark.shape,
    points: mark.pointsMm.map(({ xMm, yMm }) => place(xMm, yMm)),
  }));
  const placed = placeLabels(inParts, allWidth, allHeight);
  const name = label(allWidth / 2, allHeight - 0.6, side, { 'text-anchor': 'middle', fill: hue.soft });
  return [outlineOf(size, widthMm, heightMm), ...placed.map(drawn), ...placed.map(numbered), name];
}

/**
 * The rug's outline, face and back beside each other, with its marks where they lie, to scale.
 *
 * Marks stand in the rug's own millimetres: face up, pile lying toward the reader, origin lower left. On
 * the back the rug is seen turned over about its length, so across becomes width less across.
 *
 * @param marks - marks with their numbers; those without a place in millimetres are left out, those through
 *   both sides are drawn on either
 * @param size - the rug's mean size [mm]
 * @returns null when no mark has a place
 * @source none: convention of this project
 */
export function conditionMap(marks: readonly NumberedMark[], size: RugSize): PaperDrawing | null {
  const sides = (['face', 'back'] as const)
    .map((side) => ({
      side,
      lying: marks.filter(
        ({ mark }) => mark.pointsMm.length > 0 && (mark.side === side || mark.side === 'both'),
      ),
    }))
    .filter(({ lying }) => lying.length > 0);
  if (sides.length === 0) return null;
  const scale = Math.min(widestMm / size.widthMm, highestMm / size.lengthMm);
  const eachMm = size.widthMm * scale + 2 * marginMm;
  const svg = drawing(
    eachMm * sides.length,
    size.lengthMm * scale + 2 * marginMm,
    sides.map((side, at) =>
      element('g', { transform: `translate(${at * eachMm} 0)` }, drawSide(side, size, scale).join('')),
    ),
  );
  const said = sides.map(
    ({ side, lying }) => `${side}: ${lying.map(({ number, mark }) => `${number} ${mark.word}`).join(', ')}`,
  );
  return {
    kind: 'drawing',
    svg,
    widthMm: eachMm * sides.length,
    caption:
      'Map of the marks. The face is seen with its pile lying toward you, the back turned over along its length. Numbers are those of the list.',
    described: `Outline of the rug with its marks. ${said.join('. ')}.`,
  };
}
