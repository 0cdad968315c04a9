import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import { type CornerName, drawLooseCard } from '../../src/core/card/index.ts';
import { cameraOver, type Picture, photograph } from './camera.ts';
import { between, type Chance } from './chance.ts';
import type { ShotSpec } from './rugSpec.ts';

/** A loose piece on the floor: where the middle of its code lies from where the camera looks, and how it is turned. */
export interface LaidPiece {
  readonly corner: CornerName;
  readonly xMm: number;
  readonly yMm: number;
  readonly turnDeg: number;
}

export interface LooseShotSpec {
  readonly shot: ShotSpec;
  readonly serial: string;
  readonly tag: string | null;
  readonly pieces: readonly LaidPiece[];
  /** Printed size against drawn size, across and along. */
  readonly printed: readonly [across: number, along: number];
}

const cell = 0.25;
/** A piece as it is drawn, from the upper left corner of its code [mm]. */
const box = { left: -13, top: -13, width: 98, height: 118, codeMiddle: 36 };
/** Where each piece's code lies on the sheet [mm]. */
const onSheet: Readonly<Record<CornerName, readonly [number, number]>> = {
  A: [-85, -108],
  B: [13, -108],
  C: [13, 10],
  D: [-85, 10],
};

function printPiece({ serial, tag }: LooseShotSpec, corner: CornerName): Float32Array {
  const drawn = drawLooseCard({ serial, tag, draw: zxingCodes.draw });
  if (!drawn.ok) throw new Error(drawn.problem.code);
  const [wide, high] = [box.width / cell, box.height / cell];
  const [left, top] = onSheet[corner];
  const paper = new Float32Array(wide * high).fill(0.85);
  for (const shape of drawn.value) {
    if (shape.kind !== 'rectangle') continue;
    const column = (x: number): number => Math.round((x - left - box.left) / cell);
    const row = (y: number): number => Math.round((y - top - box.top) / cell);
    const light = 0.04 + 0.81 * (shape.grey / 255) ** 2.2;
    for (let y = Math.max(0, row(shape.y)); y < Math.min(high, row(shape.y + shape.height)); y += 1)
      for (let x = Math.max(0, column(shape.x)); x < Math.min(wide, column(shape.x + shape.width)); x += 1)
        paper[y * wide + x] = light;
  }
  return paper;
}

export interface LooseShot extends Picture {
  /** Millimetres to a pixel at a place of the picture: geometric mean of both directions. */
  readonly mmPerPxAt: (xPx: number, yPx: number) => number;
}

/** Photographs loose pieces lying on a floor. */
export function photographLoose(chance: Chance, spec: LooseShotSpec): LooseShot {
  const [wide, high] = [box.width / cell, box.height / cell];
  const laid = spec.pieces.map((piece) => {
    const turn = (piece.turnDeg * Math.PI) / 180;
    return {
      ...piece,
      paper: printPiece(spec, piece.corner),
      cos: Math.cos(turn),
      sin: Math.sin(turn),
    };
  });
  const picture = photograph(chance, spec.shot, (xMm, yMm, weight, into, at) => {
    let light = 0.22 + 0.05 * Math.sin(xMm / 37) * Math.sin(yMm / 53);
    for (const { xMm: x0, yMm: y0, cos, sin, paper } of laid) {
      const [dx, dy] = [xMm - x0, yMm - y0];
      const x = ((cos * dx + sin * dy) / spec.printed[0] + box.codeMiddle - box.left) / cell - 0.5;
      const y = ((-sin * dx + cos * dy) / spec.printed[1] + box.codeMiddle - box.top) / cell - 0.5;
      if (!(x >= 0 && y >= 0 && x < wide - 1 && y < high - 1)) continue;
      const [left, top] = [Math.floor(x), Math.floor(y)];
      const [fx, fy] = [x - left, y - top];
      const first = top * wide + left;
      light =
        ((paper[first] ?? 0) * (1 - fx) + (paper[first + 1] ?? 0) * fx) * (1 - fy) +
        ((paper[first + wide] ?? 0) * (1 - fx) + (paper[first + wide + 1] ?? 0) * fx) * fy;
    }
    for (let band = 0; band < 3; band += 1) into[at + band] = (into[at + band] ?? 0) + weight * light;
  });
  const { toPicture, toPlane } = cameraOver(spec.shot);
  const mmPerPxAt = (xPx: number, yPx: number): number => {
    const [x, y] = toPlane(xPx, yPx);
    const step = 0.1;
    const [x0, y0] = toPicture(x, y);
    const [x1, y1] = toPicture(x + step, y);
    const [x2, y2] = toPicture(x, y + step);
    return step / Math.sqrt(Math.abs((x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0)));
  };
  return { ...picture, mmPerPxAt };
}

/** Pieces laid by a hand beside the corners of a small rug, seen from anywhere within so many degrees of straight above. */
export function drawLooseShot(
  chance: Chance,
  mostTiltDeg: number,
  corners: readonly CornerName[] = ['A', 'B', 'C', 'D'],
): LooseShotSpec {
  const [halfWide, halfHigh] = [between(chance, 260, 340), between(chance, 180, 240)];
  const places: Readonly<Record<CornerName, readonly [number, number]>> = {
    A: [-1, -1],
    B: [1, -1],
    C: [1, 1],
    D: [-1, 1],
  };
  return {
    serial: '7K3M4Q',
    tag: null,
    printed: [1, 1],
    pieces: corners.map((corner) => ({
      corner,
      xMm: places[corner][0] * halfWide + between(chance, -20, 20),
      yMm: places[corner][1] * halfHigh + between(chance, -20, 20),
      turnDeg: between(chance, -180, 180),
    })),
    shot: {
      widthPx: 1500,
      heightPx: 1150,
      pxPerMm: between(chance, 1.3, 1.5),
      rollDeg: between(chance, -20, 20),
      tiltDeg: between(chance, 0, mostTiltDeg),
      tiltTowardsDeg: between(chance, 0, 360),
      lightFromDeg: between(chance, 0, 360),
      lightHeightDeg: 60,
      lightFall: between(chance, 0, 0.8),
      blurPx: between(chance, 0.4, 0.9),
      sharpen: 0,
      noise: between(chance, 1, 6),
      jpegQuality: 90,
    },
  };
}
