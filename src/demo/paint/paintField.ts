import type { Frame } from './paintRug.ts';
import type { RugDesign } from './rugDesign.ts';

const lozenge = (x: number, y: number, rx: number, ry: number, fill: string, edge: string) =>
  `<path d="M${x} ${y - ry}L${x + rx} ${y}L${x} ${y + ry}L${x - rx} ${y}Z" fill="${fill}" stroke="${edge}" stroke-width="${rx * 0.05}"/>`;

/** A stepped medallion of nested lozenges with a star in the middle. */
function medallion(x: number, y: number, rx: number, ry: number, design: RugDesign): string {
  const rings = [design.dark, design.border, design.accent, design.second, design.dark];
  const nested = rings.map((fill, i) => {
    const share = 1 - i * 0.2;
    return lozenge(x, y, rx * share, ry * share, fill, design.accent);
  });
  const hooks = Array.from({ length: 8 }, (_, i) => {
    const angle = (i * Math.PI) / 4;
    const [px, py] = [x + Math.cos(angle) * rx * 0.62, y + Math.sin(angle) * ry * 0.62];
    return lozenge(px, py, rx * 0.09, rx * 0.09, design.ground, design.dark);
  });
  return [...nested, ...hooks].join('');
}

function scattered(
  field: Frame,
  step: number,
  random: () => number,
  draw: (x: number, y: number, odd: boolean) => string,
): string {
  const shapes: string[] = [];
  const [columns, rows] = [
    Math.max(2, Math.round(field.width / step)),
    Math.max(2, Math.round(field.height / step)),
  ];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const x = field.x + ((column + 0.5 + (row % 2) * 0.25) * field.width) / (columns + 0.25);
      const y = field.y + ((row + 0.5) * field.height) / rows;
      shapes.push(draw(x + (random() - 0.5) * 8, y + (random() - 0.5) * 8, (row + column) % 2 === 1));
    }
  }
  return shapes.join('');
}

/** The pattern inside the borders. */
export function paintField(field: Frame, design: RugDesign, random: () => number): string {
  const [cx, cy] = [field.x + field.width / 2, field.y + field.height / 2];
  switch (design.field) {
    case 'plain':
      return '';
    case 'medallion': {
      const corners = [
        [field.x, field.y],
        [field.x + field.width, field.y],
        [field.x, field.y + field.height],
        [field.x + field.width, field.y + field.height],
      ] as const;
      const spandrels = corners.map(([x, y]) =>
        lozenge(x, y, field.width * 0.3, field.height * 0.2, design.border, design.accent),
      );
      return spandrels.join('') + medallion(cx, cy, field.width * 0.36, field.height * 0.28, design);
    }
    case 'three medallions':
      return [0.18, 0.5, 0.82]
        .map((share) =>
          medallion(cx, field.y + field.height * share, field.width * 0.38, field.height * 0.14, design),
        )
        .join('');
    case 'diamonds':
      return scattered(
        field,
        Math.min(field.width / 3, 360),
        random,
        (x, y, odd) =>
          lozenge(x, y, 110, 150, odd ? design.accent : design.second, design.dark) +
          lozenge(x, y, 48, 66, odd ? design.border : design.ground, design.dark),
      );
    case 'boteh':
      return scattered(
        field,
        170,
        random,
        (x, y, odd) =>
          `<path d="M${x} ${y + 52}c-46 0 -54 -58 -14 -82c22 -14 40 -18 34 -34c24 22 6 40 14 62c8 22 -2 54 -34 54z" fill="${odd ? design.accent : design.second}" stroke="${design.dark}" stroke-width="5" transform="scale(${odd ? 1 : -1} 1) translate(${odd ? 0 : -2 * x} 0)"/>`,
      );
    case 'all-over':
      return scattered(
        field,
        150,
        random,
        (x, y, odd) =>
          `<circle cx="${x}" cy="${y}" r="34" fill="${odd ? design.accent : design.second}" stroke="${design.dark}" stroke-width="5"/>` +
          Array.from({ length: 6 }, (_, i) => {
            const angle = (i * Math.PI) / 3;
            return `<circle cx="${x + Math.cos(angle) * 44}" cy="${y + Math.sin(angle) * 44}" r="12" fill="${odd ? design.border : design.accent}"/>`;
          }).join(''),
      );
    case 'stripes': {
      const colours = [design.ground, design.accent, design.border, design.second, design.dark];
      const shapes: string[] = [];
      let y = field.y;
      for (let i = 0; y < field.y + field.height; i++) {
        const height = Math.min(40 + random() * 130, field.y + field.height - y);
        shapes.push(
          `<rect x="${field.x}" y="${y}" width="${field.width}" height="${height}" fill="${colours[i % colours.length]}"/>`,
        );
        if (height > 100) {
          for (let x = field.x + 60; x < field.x + field.width - 40; x += 120) {
            shapes.push(
              lozenge(
                x,
                y + height / 2,
                44,
                height * 0.36,
                colours[(i + 2) % colours.length] ?? design.accent,
                design.dark,
              ),
            );
          }
        }
        y += height;
      }
      return shapes.join('');
    }
  }
}
