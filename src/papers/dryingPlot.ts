import { drawing, element, hue, label, pointsOf } from './drawing.ts';
import { figure } from './measureWords.ts';
import type { PaperDrawing } from './paper.ts';

export interface DryingCurve {
  /** Readings by hours since first wetting [h]. */
  readonly points: readonly { readonly hours: number; readonly value: number }[];
  /** What is read, with its unit: `mass, kg`. */
  readonly name: string;
  /** A level to compare with: intake mass, or the humidity the standard asks for. */
  readonly level: { readonly value: number; readonly name: string } | null;
}

const widthMm = 150;
const heightMm = 62;
const [left, right, top, bottom] = [16, 6, 9, 12];

/** Round steps of 1, 2 or 5 tens that divide a range into about `wanted` parts. */
const stepFor = (range: number, wanted: number): number => {
  const rough = range / wanted;
  const ten = 10 ** Math.floor(Math.log10(rough));
  return ([1, 2, 5, 10].find((nice) => nice * ten >= rough) ?? 10) * ten;
};

const ticks = (from: number, until: number, wanted: number): readonly number[] => {
  const step = stepFor(until - from, wanted);
  const first = Math.ceil(from / step - 1e-9);
  return Array.from({ length: Math.floor(until / step + 1e-9) - first + 1 }, (_, at) => (first + at) * step);
};

/**
 * Readings against hours since first wetting, with the wet clock's 24 h and 48 h.
 *
 * @param curve - at least one reading
 * @returns null when there is nothing to draw
 * @source epa-mould-course, dried within 24 to 48 hours mould will in most cases not grow
 */
export function dryingPlot(curve: DryingCurve): PaperDrawing | null {
  if (curve.points.length === 0) return null;
  const values = [
    ...curve.points.map(({ value }) => value),
    ...(curve.level === null ? [] : [curve.level.value]),
  ];
  const lastHour = Math.max(52, ...curve.points.map(({ hours }) => hours)) * 1.02;
  const spread = Math.max(...values) - Math.min(...values) || Math.max(1, Math.abs(values[0] ?? 1) * 0.1);
  const [low, high] = [Math.min(...values) - spread * 0.12, Math.max(...values) + spread * 0.12];
  const x = (hours: number) => left + (hours / lastHour) * (widthMm - left - right);
  const y = (value: number) => top + ((high - value) / (high - low)) * (heightMm - top - bottom);
  const small = { 'font-size': 2.6, fill: hue.soft };
  const floor = heightMm - bottom;
  const clock = (hours: number, words: string, dye: string, dashes: string) =>
    element('line', {
      x1: x(hours),
      x2: x(hours),
      y1: top - 3,
      y2: floor,
      stroke: dye,
      'stroke-width': 0.5,
      'stroke-dasharray': dashes === '' ? undefined : dashes,
    }) +
    label(x(hours) + (hours < lastHour / 2 ? 1 : -1), top - 1, words, {
      'text-anchor': hours < lastHour / 2 ? 'start' : 'end',
      'font-size': 2.6,
      fill: dye,
      'font-weight': 700,
    });
  const across = ticks(0, lastHour, 8).map(
    (hours) =>
      element('line', {
        x1: x(hours),
        x2: x(hours),
        y1: floor,
        y2: floor + 1,
        stroke: hue.soft,
        'stroke-width': 0.3,
      }) + label(x(hours), floor + 4.2, figure(hours, 0), { ...small, 'text-anchor': 'middle' }),
  );
  const up = ticks(low, high, 5).map(
    (value) =>
      element('line', {
        x1: left,
        x2: widthMm - right,
        y1: y(value),
        y2: y(value),
        stroke: hue.line,
        'stroke-width': 0.25,
      }) + label(left - 1.5, y(value) + 0.9, figure(value, 2), { ...small, 'text-anchor': 'end' }),
  );
  const level =
    curve.level === null
      ? ''
      : element('line', {
          x1: left,
          x2: widthMm - right,
          y1: y(curve.level.value),
          y2: y(curve.level.value),
          stroke: hue.moss,
          'stroke-width': 0.5,
          'stroke-dasharray': '2.4 1.4',
        }) +
        label(left + 1, y(curve.level.value) - 1.2, curve.level.name, {
          'font-size': 2.6,
          fill: hue.moss,
          'font-weight': 700,
        });
  const drawn = curve.points.map(({ hours, value }) => [x(hours), y(value)] as const);
  const svg = drawing(widthMm, heightMm, [
    ...up,
    ...across,
    element('line', {
      x1: left,
      x2: widthMm - right,
      y1: floor,
      y2: floor,
      stroke: hue.ink,
      'stroke-width': 0.4,
    }),
    clock(24, '24 h: soon', hue.weld, '1.6 1'),
    clock(48, '48 h: past the safe time', hue.madder, ''),
    level,
    element('polyline', { points: pointsOf(drawn), fill: 'none', stroke: hue.indigo, 'stroke-width': 0.6 }),
    ...drawn.map(([cx, cy]) => element('circle', { cx, cy, r: 0.9, fill: hue.indigo })),
    label(left, heightMm - 2.2, 'hours since first wetting', small),
    label(left - 14, top - 5, curve.name, { ...small, fill: hue.ink }),
  ]);
  const said = curve.points.map(({ hours, value }) => `${figure(hours)} h ${figure(value, 2)}`).join('; ');
  return {
    kind: 'drawing',
    svg,
    widthMm,
    caption: `${curve.name} against hours since first wetting. The upright lines are the wet clock’s 24 h and 48 h.`,
    described: `Readings of ${curve.name} by hours since first wetting: ${said}.`,
  };
}
