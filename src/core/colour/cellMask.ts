import type { CellSquare } from './windowCells.ts';

/** A square grid of cells, 1 where one belongs. */
export interface CellMask {
  readonly count: number;
  readonly on: Uint8Array;
}

/**
 * Parts of a mask whose cells touch by their sides, largest first.
 *
 * @returns indices of the cells of each part
 * @source none: flood fill
 */
export function partsOf({ count, on }: CellMask): readonly (readonly number[])[] {
  const seen = new Uint8Array(on.length);
  const parts: number[][] = [];
  for (let start = 0; start < on.length; start += 1) {
    if (on[start] !== 1 || seen[start] === 1) continue;
    seen[start] = 1;
    const part = [start];
    for (let at = 0; at < part.length; at += 1) {
      const cell = part[at] ?? 0;
      const column = cell % count;
      for (const next of [
        ...(column > 0 ? [cell - 1] : []),
        ...(column < count - 1 ? [cell + 1] : []),
        ...[cell - count, cell + count],
      ])
        if (on[next] === 1 && seen[next] === 0) {
          seen[next] = 1;
          part.push(next);
        }
    }
    parts.push(part);
  }
  return parts.sort((p, q) => q.length - p.length);
}

/**
 * The largest square all of whose cells belong.
 *
 * @param most - largest side asked for [cells]
 * @returns the one nearest to the middle of the grid, shrunk about its middle to `most`; null where none belongs
 * @source none: the side ending at a cell is one more than the least of its three neighbours'
 */
export function largestSquare({ count, on }: CellMask, most: number): CellSquare | null {
  const sides = new Int32Array(on.length);
  let best: CellSquare = { column: 0, row: 0, side: 0 };
  let bestFrom = Number.POSITIVE_INFINITY;
  for (let row = 0; row < count; row += 1)
    for (let column = 0; column < count; column += 1) {
      const at = row * count + column;
      if (on[at] !== 1) continue;
      const side =
        row === 0 || column === 0
          ? 1
          : 1 + Math.min(sides[at - 1] ?? 0, sides[at - count] ?? 0, sides[at - count - 1] ?? 0);
      sides[at] = side;
      const from = Math.hypot(column - (side - 1) / 2 - count / 2, row - (side - 1) / 2 - count / 2);
      if (side > best.side || (side === best.side && from < bestFrom)) {
        best = { column: column - side + 1, row: row - side + 1, side };
        bestFrom = from;
      }
    }
  if (best.side === 0) return null;
  if (best.side <= most) return best;
  const cut = Math.floor((best.side - most) / 2);
  return { column: best.column + cut, row: best.row + cut, side: most };
}

/** Takes a square and a border around it out of a mask. */
export function without({ count, on }: CellMask, { column, row, side }: CellSquare): CellMask {
  const left = Uint8Array.from(on);
  for (let y = row; y < row + side; y += 1) left.fill(0, y * count + column, y * count + column + side);
  return { count, on: left };
}

/** Cells that lie within a reach of cells that belong, along rows and columns. */
export function grown({ count, on }: CellMask, reach: number): CellMask {
  const spread = (from: Uint8Array, step: number, lines: number): Uint8Array => {
    const out = new Uint8Array(from.length);
    for (let line = 0; line < count; line += 1) {
      let last = Number.NEGATIVE_INFINITY;
      const start = line * lines;
      for (let at = 0; at < count; at += 1) {
        if (from[start + at * step] === 1) last = at;
        if (at - last <= reach) out[start + at * step] = 1;
      }
      last = Number.POSITIVE_INFINITY;
      for (let at = count - 1; at >= 0; at -= 1) {
        if (from[start + at * step] === 1) last = at;
        if (last - at <= reach) out[start + at * step] = 1;
      }
    }
    return out;
  };
  return { count, on: spread(spread(on, 1, count), count, 1) };
}
