import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import { type CornerName, codePlace, drawCard } from '../../src/core/card/index.ts';
import { cameraOver, type Picture, photograph } from './camera.ts';
import { between, type Chance, whole } from './chance.ts';
import type { Look } from './index.ts';
import type { ShotSpec } from './rugSpec.ts';

/** How a card is printed and laid. */
export interface CardShotSpec {
  readonly shot: ShotSpec;
  readonly serial: string;
  readonly tag: string | null;
  /** Codes that a fold or a hand hides. */
  readonly hidden: readonly CornerName[];
  /** Printed size against drawn size, across and along. */
  readonly printed: readonly [across: number, along: number];
}

export interface CardShot extends Picture {
  /** Millimetres per pixel at the window's middle: geometric mean of both directions. */
  readonly mmPerPx: number;
}

/** Photographs a printed card lying on a mid-grey cloth, a rug showing through its window if one is given; its middle is where the camera looks. */
export function photographCard(chance: Chance, spec: CardShotSpec, inWindow?: Look): CardShot {
  const drawn = drawCard({ serial: spec.serial, tag: spec.tag, draw: zxingCodes.draw });
  if (!drawn.ok) throw new Error(drawn.problem.code);
  const cell = 1 / 12;
  const reach = 125;
  const side = Math.round((2 * reach) / cell);
  const sheet = new Float32Array(side * side).fill(0.85);
  const fill = (x: number, y: number, width: number, height: number, light: number): void => {
    for (
      let row = Math.max(0, Math.round((y + reach) / cell));
      row < Math.min(side, Math.round((y + height + reach) / cell));
      row += 1
    )
      sheet.fill(
        light,
        row * side + Math.max(0, Math.round((x + reach) / cell)),
        row * side + Math.min(side, Math.round((x + width + reach) / cell)),
      );
  };
  for (const shape of drawn.value)
    if (shape.kind === 'rectangle')
      fill(shape.x, shape.y, shape.width, shape.height, 0.04 + 0.81 * (shape.grey / 255) ** 2.2);
  fill(-35, -35, 70, 70, 0.25);
  for (const corner of spec.hidden)
    fill(...(codePlace(corner).map((place) => place - 2) as [number, number]), 22, 22, 0.3);
  const picture = photograph(chance, spec.shot, (xMm, yMm, weight, into, at) => {
    if (
      inWindow !== undefined &&
      Math.abs(xMm / spec.printed[0]) < 35 &&
      Math.abs(yMm / spec.printed[1]) < 35
    )
      return inWindow(xMm, yMm, weight, into, at);
    const x = (xMm / spec.printed[0] + reach) / cell;
    const y = (yMm / spec.printed[1] + reach) / cell;
    const inside = Math.abs(xMm / spec.printed[0]) < 105 && y >= 0 && y < side - 1 && x >= 0 && x < side - 1;
    let light = 0.2;
    if (inside) {
      const left = Math.floor(x - 0.5);
      const top = Math.floor(y - 0.5);
      const fx = x - 0.5 - left;
      const fy = y - 0.5 - top;
      const first = Math.max(0, top) * side + Math.max(0, left);
      light =
        ((sheet[first] ?? 0) * (1 - fx) + (sheet[first + 1] ?? 0) * fx) * (1 - fy) +
        ((sheet[first + side] ?? 0) * (1 - fx) + (sheet[first + side + 1] ?? 0) * fx) * fy;
    }
    for (let band = 0; band < 3; band += 1) into[at + band] = (into[at + band] ?? 0) + weight * light;
  });
  const { toPicture } = cameraOver(spec.shot);
  const step = 0.01;
  const [x0, y0] = toPicture(0, 0);
  const [x1, y1] = toPicture(step, 0);
  const [x2, y2] = toPicture(0, step);
  const area = Math.abs((x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0)) / (step * step);
  return { ...picture, mmPerPx: 1 / Math.sqrt(area) };
}

/** A card photographed from anywhere within so many degrees of straight above. */
export function drawCardShot(
  chance: Chance,
  mostTiltDeg: number,
  hidden: readonly CornerName[] = [],
): CardShotSpec {
  const longer = whole(chance, 1100, 2400);
  const pxPerMm = (longer / 165) * between(chance, 0.75, 0.98);
  return {
    serial: Array.from(
      { length: 6 },
      () => '0123456789ABCDEFGHJKLMNPQRSTUVWXYZ'[whole(chance, 0, 33)] ?? '0',
    ).join(''),
    tag: 'R-0417',
    hidden,
    printed: [1, 1],
    shot: {
      widthPx: longer,
      heightPx: Math.round(longer * 0.9),
      pxPerMm,
      rollDeg: between(chance, -180, 180),
      tiltDeg: between(chance, 0, mostTiltDeg),
      tiltTowardsDeg: between(chance, 0, 360),
      lightFromDeg: between(chance, 0, 360),
      lightHeightDeg: 60,
      lightFall: between(chance, 0, 0.9),
      blurPx: between(chance, 0.4, 1.8),
      sharpen: chance() < 0.5 ? 0 : between(chance, 0.2, 1),
      noise: between(chance, 1, 10),
      jpegQuality: whole(chance, 60, 95),
    },
  };
}
