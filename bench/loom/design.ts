import { between, type Chance, oneOf, wandering, whole } from './chance.ts';
import type { DesignSpec } from './rugSpec.ts';

/** The number of a colour for every knot, row by row. */
export interface Cartoon {
  readonly across: number;
  readonly along: number;
  readonly colour: Uint8Array;
}

const smoothField = (
  chance: Chance,
  across: number,
  along: number,
  scale: number,
): ((x: number, y: number) => number) => {
  const wide = Math.ceil(across / scale) + 2;
  const high = Math.ceil(along / scale) + 2;
  const values = Float32Array.from({ length: wide * high }, () => between(chance, -1, 1));
  return (x, y) => {
    const left = Math.floor(x / scale);
    const top = Math.floor(y / scale);
    const fx = x / scale - left;
    const fy = y / scale - top;
    const at = (column: number, row: number): number => values[row * wide + column] ?? 0;
    const upper = at(left, top) * (1 - fx) + at(left + 1, top) * fx;
    const lower = at(left, top + 1) * (1 - fx) + at(left + 1, top + 1) * fx;
    return upper * (1 - fy) + lower * fy;
  };
};

const motifCell = (chance: Chance, wide: number, high: number, colours: number): Uint8Array => {
  const cell = new Uint8Array(wide * high);
  const ground = whole(chance, 0, colours - 1);
  const steps = whole(chance, 1, 3);
  const tilt = between(chance, 0.4, 1.6);
  const mirrored = chance() < 0.7;
  const spots = Array.from({ length: steps }, () => ({
    x: between(chance, 0.1, 0.9) * wide,
    y: between(chance, 0.1, 0.9) * high,
    radius: between(chance, 0.15, 0.5) * Math.min(wide, high),
    colour: whole(chance, 0, colours - 1),
  }));
  for (let row = 0; row < high; row += 1)
    for (let column = 0; column < wide; column += 1) {
      const x = mirrored ? Math.min(column, wide - 1 - column) : column;
      let colour = ground;
      for (const spot of spots)
        if (Math.abs(x - spot.x) * tilt + Math.abs(row - spot.y) < spot.radius) colour = spot.colour;
      cell[row * wide + column] = colour;
    }
  return cell;
};

/** Draws the colour of every knot of a rug of `across` × `along` knots. */
export function drawCartoon(chance: Chance, spec: DesignSpec, across: number, along: number): Cartoon {
  const colours = spec.colours.length;
  const colour = new Uint8Array(across * along);
  const [wide, high] = spec.motifKnots;
  const fill = (of: (column: number, row: number) => number): Cartoon => {
    for (let row = 0; row < along; row += 1)
      for (let column = 0; column < across; column += 1)
        colour[row * across + column] = of(column, row) % colours;
    return { across, along, colour };
  };
  switch (spec.kind) {
    case 'plain':
      return fill(() => 0);
    case 'motif': {
      const cell = motifCell(chance, wide, high, colours);
      const drop = oneOf(chance, [0, 0, Math.floor(wide / 2)]);
      return fill((column, row) => {
        const shifted = column + drop * (Math.floor(row / high) % 2);
        return cell[(row % high) * wide + (shifted % wide)] ?? 0;
      });
    }
    case 'stripes': {
      const widths = Array.from({ length: 40 }, () => whole(chance, 1, wide));
      const upright = chance() < 0.5;
      const sum = widths.reduce((total, width) => total + width, 0);
      return fill((column, row) => {
        let at = (upright ? column : row) % sum;
        let index = 0;
        while (at >= (widths[index] ?? 1)) at -= widths[index++] ?? 1;
        return index;
      });
    }
    case 'border': {
      const cell = motifCell(chance, wide, high, colours);
      const other = motifCell(chance, high, wide, colours);
      const edge = between(chance, 0.25, 0.7) * across;
      const guard = whole(chance, 1, 6);
      return fill((column, row) => {
        const from = column - edge;
        if (from < 0) return cell[(row % high) * wide + (column % wide)] ?? 0;
        if (from < guard) return 1;
        if (from < 2 * guard) return row % (2 * guard) < guard ? 0 : 2;
        return other[(row % wide) * high + (Math.floor(from) % high)] ?? 0;
      });
    }
    case 'curves': {
      const field = smoothField(chance, across, along, Math.max(4, (wide + high) / 2));
      const outlined = chance() < 0.6;
      return fill((column, row) => {
        const value = (field(column, row) + 1) * 0.5 * colours * 1.6;
        if (outlined && value - Math.floor(value) < 0.15) return colours - 1;
        return Math.floor(value);
      });
    }
    case 'diagonal': {
      const bend = wandering(chance, 12);
      return fill((column, row) => {
        const bent = 2 * bend((row / along) * 12);
        return (
          Math.floor((column + row + bent + 1e6 * wide) / wide) +
          Math.floor((column - row + 1e6 * high) / high)
        );
      });
    }
  }
}
