import type { Codes } from '../../ports/codes.ts';
import type { PhotographedBack } from '../story/moment.ts';
import { chance } from './chance.ts';
import { paintCard } from './paintBlot.ts';

const halfMm = 118;
const pxPerMm = 5;
const windowMm = 70;
const wools = ['#8f2f22', '#6b4a2f', '#e6d9bd', '#1f3864'];

/** Which wool a knot has: bands and lozenges of a design that no rug has. */
function woolAt(column: number, row: number, seed: number): string {
  const across = Math.abs(((column + seed * 5) % 26) - 13);
  const along = Math.abs(((row + seed * 3) % 30) - 15);
  const level = across + along;
  return wools[level < 6 ? 2 : level < 11 ? 0 : level < 16 ? 3 : 1] ?? '#6b4a2f';
}

/** Nodes of the back, two to a knot, as they stand in the window and a little beyond it. */
function nodes({ seed, weftwiseKnotsPer7cm, warpwiseKnotsPer7cm }: PhotographedBack): string {
  const random = chance(seed);
  const wide = windowMm / weftwiseKnotsPer7cm / 2;
  const high = windowMm / warpwiseKnotsPer7cm;
  const reach = windowMm / 2 + 3;
  const drawn: string[] = [];
  for (let row = 0; (row + 0.5) * high < 2 * reach; row += 1)
    for (let node = 0; (node + 0.5) * wide < 2 * reach; node += 1) {
      const [dx, dy] = [(random() - 0.5) * 0.08 * wide, (random() - 0.5) * 0.08 * high];
      const [x, y] = [(node + 0.5) * wide - reach + dx, (row + 0.5) * high - reach + dy];
      const wool = woolAt(node >> 1, row, seed);
      drawn.push(
        `<ellipse cx="${x.toFixed(2)}" cy="${y.toFixed(2)}" rx="${(0.46 * wide).toFixed(2)}" ry="${(0.41 * high).toFixed(2)}" fill="${wool}"/><ellipse cx="${(x - 0.1 * wide).toFixed(2)}" cy="${(y - 0.12 * high).toFixed(2)}" rx="${(0.22 * wide).toFixed(2)}" ry="${(0.16 * high).toFixed(2)}" fill="#fff" fill-opacity=".16"/>`,
      );
    }
  return drawn.join('');
}

/**
 * Draws the back of a rug under the weave card as a phone would take it from above, as SVG.
 *
 * @param back - what is woven there
 * @param serial - of the card
 * @param codes - draws the card's codes
 * @returns SVG text, 5 px to a millimetre
 * @source none: drawing of this project
 */
export function paintBack(back: PhotographedBack, serial: string, codes: Codes): string {
  const turn = (chance(back.seed + 7)() - 0.5) * 4;
  const side = 2 * halfMm;
  const reach = windowMm / 2 + 3;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${side * pxPerMm}" height="${side * pxPerMm}" viewBox="${-halfMm} ${-halfMm} ${side} ${side}"><rect x="${-halfMm}" y="${-halfMm}" width="${side}" height="${side}" fill="#7a4a38"/><g transform="rotate(${turn.toFixed(2)})"><rect x="${-reach}" y="${-reach}" width="${2 * reach}" height="${2 * reach}" fill="#2b2018"/>${nodes(back)}${paintCard(serial, codes)}</g></svg>`;
}
