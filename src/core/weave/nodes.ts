import type { Flattened } from './flatten.ts';

import type { MeasuredRepeat } from './repeat.ts';
import { layStrips } from './strips.ts';
import type { Survey } from './survey.ts';

/** What colour changes along the rows say about nodes per knot. */
export interface NodesHint {
  /** Mean cosine of the distances between colour changes, in half turns per column: 1 all even, about 0 mixed. */
  readonly evenness: number;
  readonly pairs: number;
}

const changeLeast = 0.3;

/** Mean colour of each column along one strip. */
function columnColours(
  flat: Flattened,
  level: readonly Float32Array[],
  x: number,
  y: number,
  dx: number,
  dy: number,
  rays: readonly (readonly [number, number])[],
): Float64Array {
  const { wide, high } = flat.relief;
  const sums = new Float64Array(3);
  let held = 0;
  for (let step = -1; step <= 1; step += 1)
    for (const [rx, ry] of rays) {
      const px = Math.round(x + step * dx + rx);
      const py = Math.round(y + step * dy + ry);
      if (px < 0 || py < 0 || px >= wide || py >= high) continue;
      held += 1;
      for (const [band, plane] of level.entries())
        sums[band] = (sums[band] ?? 0) + (plane[py * wide + px] ?? 0);
    }
  return held === 0 ? sums.fill(Number.NaN) : sums.map((sum) => sum / held);
}

/**
 * Looks for a rule in the distances between colour changes along rows.
 *
 * A drawing is made of whole knots. If every knot shows two nodes, colours change only after an even
 * number of columns; if one, after any number.
 *
 * @param columns - the measured columns, rowPx the visible row height [px of the picture]
 * @returns null where too little colour changes
 * @source none: this project's; a hint, never a decision
 */
export function nodesHint(
  { levels, directions }: Survey,
  columns: MeasuredRepeat,
  rowPx: number,
): NodesHint | null {
  const suited = levels.find(({ flat }) => columns.pitchPx / flat.scale <= 12) ?? levels[levels.length - 1];
  if (suited === undefined) return null;
  const { flat } = suited;
  const pitch = columns.pitchPx / flat.scale;
  const row = rowPx / flat.scale;
  const strips = layStrips(flat, directions, 'weftwise', pitch, row);
  if (strips === null) return null;
  const { main, cross } = strips;
  const rays = [-0.2, 0, 0.2].map((part) => [part * row * cross[0], part * row * cross[1]] as const);
  let sum = 0;
  let pairs = 0;
  for (const { marks } of columns.follow()) {
    // Marks lie where the relief is lightest, on the crowns of the columns.
    const places = marks.map(
      ([x, y]) => [(x - flat.left) / flat.scale, (y - flat.top) / flat.scale] as const,
    );
    const colours = places.map(([x, y]) =>
      columnColours(flat, flat.bands, x, y, 0.15 * pitch * main[0], 0.15 * pitch * main[1], rays),
    );
    const changes = colours.map((colour, index) => {
      const before = colours[index - 1];
      if (before === undefined) return 0;
      return Math.hypot(...[0, 1, 2].map((band) => (colour[band] ?? 0) - (before[band] ?? 0)));
    });
    let last = Number.NaN;
    for (const [index, change] of changes.entries()) {
      // A soft picture spreads one change over two columns; the larger is the change.
      if (
        !(change > changeLeast) ||
        change < (changes[index - 1] ?? 0) ||
        change <= (changes[index + 1] ?? 0)
      )
        continue;
      const run = index - last;
      if (run <= 9) {
        sum += run % 2 === 0 ? 1 : -1;
        pairs += 1;
      }
      last = index;
    }
  }
  return pairs === 0 ? null : { evenness: sum / pairs, pairs };
}
