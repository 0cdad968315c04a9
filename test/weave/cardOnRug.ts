import { type CardShot, type CardShotSpec, drawCardShot, photographCard } from '../../bench/loom/cardShot.ts';
import { drawRug, layRug, type RugSpec, seeded, wools } from '../../bench/loom/index.ts';

/** A card on an evenly knotted back, 30 by 34 knots to 7 cm, one node to a knot. */
export function cardOnRug(
  seed: number,
  shot: Partial<CardShotSpec['shot']>,
  change: Partial<CardShotSpec> = {},
): CardShot {
  const chance = seeded(seed);
  const rug: RugSpec = {
    ...drawRug(chance),
    weftwiseKnotsPer7cm: 30,
    warpwiseKnotsPer7cm: 34,
    depressionDeg: 85,
    wefts: 1,
    weftShare: 0.1,
    weftColour: wools.ivory,
    offset: false,
    warpJitter: 0.02,
    rowJitter: 0.02,
    nodeJitter: 0.05,
    waviness: 0.1,
    drift: 0.003,
    skewDeg: 0,
    dirt: 0,
    relief: 0.9,
    pairing: 0,
    design: {
      kind: 'curves',
      colours: [wools.madder, wools.ivory, wools.indigo],
      motifKnots: [9, 9],
      abrash: 0.05,
    },
  };
  const drawn = drawCardShot(chance, 30);
  const spec = {
    ...drawn,
    ...change,
    shot: { ...drawn.shot, blurPx: 0.6, noise: 3, lightFall: 0.4, sharpen: 0, ...shot },
  };
  const { look } = layRug(chance, rug, spec.shot, 42, 42);
  return photographCard(chance, spec, look);
}
