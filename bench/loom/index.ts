import { cameraOver, type Picture, photograph } from './camera.ts';
import type { Chance } from './chance.ts';
import { daylight } from './daylight.ts';
import { drawCartoon } from './design.ts';
import { drawRug, drawShot, nodesSeenPerKnot, type RugSpec, type ShotSpec } from './rugSpec.ts';
import { type WovenBack, weaveBack } from './weaveBack.ts';

export * from './camera.ts';
export * from './chance.ts';
export * from './rugSpec.ts';

/** What is true of a loom picture. */
export interface LoomTruth {
  /** Nodes seen per knot; 'either' where the hidden nodes are half seen and both readings are fair. */
  readonly nodesPerKnot: 1 | 2 | 'either';
  /** Width of a knot and height of a row at the picture's centre [px], as woven (not as ordered). */
  readonly knotPx: number;
  readonly rowPx: number;
  /** Direction of the wefts at the centre, clockwise from the picture's horizontal [°]. */
  readonly angleDeg: number;
  readonly mmPerPx: number;
  readonly weftwiseKnotsPer7cm: number;
  readonly warpwiseKnotsPer7cm: number;
}

export interface LoomPicture extends Picture {
  readonly rug: RugSpec;
  readonly shot: ShotSpec;
  readonly truth: LoomTruth;
}

const meanPitch = (edges: Float64Array, centre: number, reach: number): number => {
  const inside = edges.filter((edge) => Math.abs(edge - centre) <= reach);
  const first = inside[0] ?? 0;
  const last = inside[inside.length - 1] ?? 0;
  return (last - first) / Math.max(1, inside.length - 1);
};

/** Mean height of a row within so many millimetres of the middle, the wefts' waves included. */
function meanRow(
  { rowEdges, stray, wide, high, pxPerMm }: WovenBack,
  reachX: number,
  reachY: number,
): number {
  const [middleX, middleY] = [wide / pxPerMm / 2, high / pxPerMm / 2];
  let sum = 0;
  const places = 21;
  for (let place = 0; place < places; place += 1) {
    const x = middleX + reachX * ((2 * place) / (places - 1) - 1);
    sum += meanPitch(
      rowEdges.map((edge, index) => edge + (index === 0 ? 0 : stray(x, index - 1))),
      middleY,
      reachY,
    );
  }
  return sum / places;
}

/** Light of a plane at a point [mm from its middle], added with a weight. */
export type Look = Parameters<typeof photograph>[2];

/** A lit raster as a plane that a camera can look at; its middle is the plane's origin. */
export function lookAt(lit: Float32Array, wide: number, high: number, pxPerMm: number): Look {
  const centreX = wide / pxPerMm / 2;
  const centreY = high / pxPerMm / 2;
  return (xMm, yMm, weight, into, at) => {
    const x = (xMm + centreX) * pxPerMm - 0.5;
    const y = (yMm + centreY) * pxPerMm - 0.5;
    const left = Math.min(wide - 2, Math.max(0, Math.floor(x)));
    const top = Math.min(high - 2, Math.max(0, Math.floor(y)));
    const fx = Math.min(1, Math.max(0, x - left));
    const fy = Math.min(1, Math.max(0, y - top));
    const first = 3 * (top * wide + left);
    const below = first + 3 * wide;
    for (let band = 0; band < 3; band += 1)
      into[at + band] =
        (into[at + band] ?? 0) +
        weight *
          (((lit[first + band] ?? 0) * (1 - fx) + (lit[first + 3 + band] ?? 0) * fx) * (1 - fy) +
            ((lit[below + band] ?? 0) * (1 - fx) + (lit[below + 3 + band] ?? 0) * fx) * fy);
  };
}

/** Weaves a piece of rug and lights it; its middle is the plane's origin. */
export function layRug(
  chance: Chance,
  rug: RugSpec,
  shot: ShotSpec,
  reachX: number,
  reachY: number,
): { readonly look: Look; readonly back: WovenBack; readonly centreX: number } {
  const across = Math.ceil((2 * reachX * rug.weftwiseKnotsPer7cm) / 70) + 2;
  const along = Math.ceil((2 * reachY * rug.warpwiseKnotsPer7cm) / 70) + 2;
  const cartoon = drawCartoon(chance, rug.design, across, along);
  const finerPx = (shot.pxPerMm * 70) / Math.max(2 * rug.weftwiseKnotsPer7cm, rug.warpwiseKnotsPer7cm);
  const finer = Math.min(2.5, Math.max(1.25, 14 / finerPx));
  const back = weaveBack(chance, rug, cartoon, shot.pxPerMm * finer);
  const lit = daylight(chance, rug, shot, back);
  return {
    look: lookAt(lit, back.wide, back.high, back.pxPerMm),
    back,
    centreX: back.wide / back.pxPerMm / 2,
  };
}

/** Weaves and photographs one rug; the same chance gives the same picture. */
export function weaveOnLoom(chance: Chance, rug: RugSpec, shot: ShotSpec): LoomPicture {
  const { toPicture, toPlane } = cameraOver(shot);
  const corners = [
    [0, 0],
    [shot.widthPx, 0],
    [0, shot.heightPx],
    [shot.widthPx, shot.heightPx],
  ].map(([x = 0, y = 0]) => toPlane(x, y));
  const reachX = 1.06 * Math.max(...corners.map(([x]) => Math.abs(x)));
  const reachY = 1.06 * Math.max(...corners.map(([, y]) => Math.abs(y)));
  const { look, back, centreX } = layRug(chance, rug, shot, reachX, reachY);
  const picture = photograph(chance, shot, look);
  const knotMm = meanPitch(back.knotEdges, centreX, 0.45 * (shot.widthPx / shot.pxPerMm));
  const rowMm = meanRow(back, 0.45 * (shot.widthPx / shot.pxPerMm), 0.45 * (shot.heightPx / shot.pxPerMm));
  const slope = Math.tan((rug.skewDeg * Math.PI) / 180);
  const stretch = (xMm: number, yMm: number): readonly [number, number] => {
    const [x1, y1] = toPicture(xMm / 2, yMm / 2);
    const [x0, y0] = toPicture(-xMm / 2, -yMm / 2);
    return [x1 - x0, y1 - y0];
  };
  const [kx, ky] = stretch(knotMm, knotMm * slope);
  const [rx, ry] = stretch(0, rowMm);
  return {
    ...picture,
    rug,
    shot,
    truth: {
      nodesPerKnot: nodesSeenPerKnot(rug.depressionDeg),
      knotPx: Math.hypot(kx, ky),
      rowPx: Math.hypot(rx, ry),
      angleDeg: (Math.atan2(ky, kx) * 180) / Math.PI,
      mmPerPx: 1 / shot.pxPerMm,
      weftwiseKnotsPer7cm: 70 / knotMm,
      warpwiseKnotsPer7cm: 70 / rowMm,
    },
  };
}

/** A rug and a photograph of it, both drawn from chance, at so many pixels to the finer visible repeat. */
export function drawLoomPicture(chance: Chance, pxPerRepeat: number): LoomPicture {
  const rug = drawRug(chance);
  return weaveOnLoom(chance, rug, drawShot(chance, rug, pxPerRepeat));
}
