import type { Frame } from './paintRug.ts';
import type { Trouble } from './rugDesign.ts';

/** An uneven round outline. */
function blob(x: number, y: number, r: number, random: () => number): string {
  const points = Array.from({ length: 12 }, (_, i) => {
    const angle = (i * Math.PI) / 6;
    const reach = r * (0.75 + random() * 0.4);
    return [x + Math.cos(angle) * reach, y + Math.sin(angle) * reach] as const;
  });
  const middle = (a: readonly [number, number], b: readonly [number, number]) =>
    `${((a[0] + b[0]) / 2).toFixed(1)} ${((a[1] + b[1]) / 2).toFixed(1)}`;
  const curves = points.map((point, i) => {
    const next = points[(i + 1) % points.length] ?? point;
    return `Q${point[0].toFixed(1)} ${point[1].toFixed(1)} ${middle(point, next)}`;
  });
  const first = points[0] ?? ([x, y] as const);
  const last = points.at(-1) ?? first;
  return `M${middle(last, first)}${curves.join('')}Z`;
}

/** What was there before, drawn where it lies. */
export function paintTrouble(trouble: Trouble, rug: Frame, random: () => number): string {
  const x = rug.x + trouble.x * rug.width;
  const y = rug.y + (1 - trouble.y) * rug.height;
  const r = trouble.sizeMm / 2;
  const spot = (fill: string, opacity: number) =>
    `<path d="${blob(x, y, r, random)}" fill="${fill}" opacity="${opacity}"/>`;
  switch (trouble.kind) {
    case 'stain':
      return `${spot('#3b2a18', 0.4)}<path d="${blob(x, y, r * 0.7, random)}" fill="#2a1c10" opacity=".25"/>`;
    case 'wine':
      return spot('#4b0f22', 0.62);
    case 'urine':
      return (
        spot('#b79a3c', 0.45) +
        `<path d="${blob(x, y, r, random)}" fill="none" stroke="#6d5a1c" stroke-width="10" opacity=".5"/>`
      );
    case 'fade':
      return spot('#fff6e0', 0.42);
    case 'low pile':
      return spot('#d8c9a6', 0.5);
    case 'repair':
      return `<rect x="${x - r}" y="${y - r * 0.7}" width="${2 * r}" height="${1.4 * r}" fill="#7a2318" opacity=".8"/><path d="M${x - r} ${y - r * 0.7}h${2 * r}v${1.4 * r}h${-2 * r}z" fill="none" stroke="#efe3c8" stroke-width="4" stroke-dasharray="12 8"/>`;
    case 'hole':
      return `<path d="${blob(x, y, r, random)}" fill="#6f6a63"/><path d="${blob(x, y, r * 1.05, random)}" fill="none" stroke="#d9ccb0" stroke-width="7" stroke-dasharray="4 7"/>`;
    case 'tear':
      return `<path d="M${x} ${y - r}l14 ${r * 0.5}l-20 ${r * 0.6}l16 ${r * 0.9}l-22 ${-r * 0.8}l14 ${-r * 0.6}z" fill="#6f6a63" stroke="#d9ccb0" stroke-width="5"/>`;
    case 'moth':
      return Array.from({ length: 14 }, () => {
        const [px, py] = [x + (random() - 0.5) * 2 * r, y + (random() - 0.5) * 2 * r];
        return `<path d="${blob(px, py, 10 + random() * 18, random)}" fill="#cdbf9f" opacity=".85"/>`;
      }).join('');
    case 'mould':
      return Array.from({ length: 26 }, () => {
        const [px, py] = [x + (random() - 0.5) * 2 * r, y + (random() - 0.5) * 2 * r];
        return `<circle cx="${px}" cy="${py}" r="${4 + random() * 12}" fill="#3f4a42" opacity=".55"/>`;
      }).join('');
    case 'tide line':
      return `<path d="${blob(x, y, r, random)}" fill="#efe2bd" opacity=".22"/><path d="${blob(x, y, r, random)}" fill="none" stroke="#5a4320" stroke-width="14" opacity=".55"/>`;
    case 'colour run':
      return `${spot('#a02a22', 0.5)}${spot('#a02a22', 0.25)}`;
  }
}
