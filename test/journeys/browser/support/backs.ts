import sharp from 'sharp';
import { drawCardShot, photographCard } from '../../../../bench/loom/cardShot.ts';
import { drawRug, layRug, type RugSpec, seeded, wools } from '../../../../bench/loom/index.ts';

/** What a photograph of a back shall show. */
export interface Back {
  readonly seed: number;
  readonly weftwiseKnotsPer7cm: number;
  readonly warpwiseKnotsPer7cm: number;
  readonly serial: string;
  /** Printed size of the card against its drawn size. */
  readonly printed?: number;
}

/** A photograph of the back of an invented rug, one node to a knot, with the weave card laid on it. */
export function backWithCard(back: Back): Promise<Buffer> {
  const chance = seeded(back.seed);
  const { weftwiseKnotsPer7cm, warpwiseKnotsPer7cm, serial, printed = 1 } = back;
  const rug: RugSpec = {
    ...drawRug(chance),
    ...{ weftwiseKnotsPer7cm, warpwiseKnotsPer7cm, depressionDeg: 85, wefts: 1, weftShare: 0.1 },
    ...{ weftColour: wools.ivory, offset: false, warpJitter: 0.02, rowJitter: 0.02, nodeJitter: 0.05 },
    ...{ waviness: 0.1, drift: 0.003, skewDeg: 0, dirt: 0, relief: 0.9, pairing: 0 },
    design: {
      kind: 'curves',
      colours: [wools.madder, wools.ivory, wools.indigo],
      motifKnots: [9, 9],
      abrash: 0.05,
    },
  };
  const drawn = drawCardShot(chance, 12);
  const spec = {
    ...drawn,
    serial,
    printed: [printed, printed] as const,
    shot: {
      ...drawn.shot,
      ...{ widthPx: 1250, heightPx: 1120, pxPerMm: 6.5, rollDeg: 3, blurPx: 0.6, noise: 3, lightFall: 0.4 },
    },
  };
  const { look } = layRug(chance, rug, spec.shot, 42, 42);
  const { rgb, width, height } = photographCard(chance, spec, look);
  return sharp(rgb, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 92 })
    .toBuffer();
}
