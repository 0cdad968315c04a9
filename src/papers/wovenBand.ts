import { drawing, element, hue, label } from './drawing.ts';
import type { PaperDrawing } from './paper.ts';

export interface BandStage {
  readonly name: string;
  readonly state: 'done' | 'now' | 'to come';
}

const dyes = [
  hue.madder,
  hue.walnut,
  hue.weld,
  hue.indigo,
  hue.indigo,
  hue.indigo,
  hue.moss,
  hue.weld,
  hue.madder,
];
const widthMm = 168;

/**
 * A visit as a woven band: four knots per stage, filled when done, outlined when it is the present one, bare
 * warps when still to come; each with its name.
 *
 * @param stages - in the order of the visit
 * @source none: the project's own look
 */
export function wovenBand(stages: readonly BandStage[]): PaperDrawing {
  const eachMm = widthMm / Math.max(1, stages.length);
  const knots = stages.flatMap(({ name, state }, stage) => {
    const dye = dyes[stage % dyes.length] ?? hue.ink;
    const pitch = (eachMm - 1.6) / 4;
    const row = [0, 1, 2, 3].map((knot) => {
      const x = stage * eachMm + 0.8 + knot * pitch;
      if (state === 'to come')
        return element('line', {
          x1: x + pitch / 2,
          x2: x + pitch / 2,
          y1: 0.4,
          y2: 5,
          stroke: hue.line,
          'stroke-width': 0.5,
        });
      const body = { x: x + 0.2, y: 0.5, width: pitch - 0.6, height: 4.4, rx: 0.8 };
      return state === 'done'
        ? element('rect', { ...body, fill: dye, opacity: knot % 2 === 0 ? 0.86 : 1 })
        : element('rect', { ...body, fill: 'none', stroke: dye, 'stroke-width': 0.55 });
    });
    const weight = state === 'now' ? 700 : 400;
    return [
      ...row,
      label(stage * eachMm + eachMm / 2, 9, name, {
        'text-anchor': 'middle',
        'font-size': 2.6,
        'font-weight': weight,
        fill: state === 'to come' ? hue.soft : hue.ink,
      }),
    ];
  });
  const said = stages.map(({ name, state }) => `${name}: ${state}`).join(', ');
  return { kind: 'drawing', svg: drawing(widthMm, 10.5, knots), widthMm, caption: '', described: said };
}
