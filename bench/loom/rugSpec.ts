import { between, betweenLog, type Chance, oneOf, whole } from './chance.ts';

/** What a rug is made like, in physical terms; nothing here is about how its knots might be counted. */
export interface RugSpec {
  readonly weftwiseKnotsPer7cm: number;
  readonly warpwiseKnotsPer7cm: number;
  readonly knot: 'symmetric' | 'asymmetric';
  /** How far every second warp lies behind its neighbour: 0 level, 90 wholly hidden [°]. */
  readonly depressionDeg: number;
  readonly wefts: 1 | 2;
  /** Share of the row's height in which weft is seen between the rows of knots. */
  readonly weftShare: number;
  readonly weftColour: Rgb;
  /** Rows shifted by one warp in every second row. */
  readonly offset: boolean;
  /** How much closer the two nodes of one knot lie than those of neighbours [share of knot width]. */
  readonly pairing: number;
  /** Standard deviation of single warp places, row heights, node sizes [share of the pitch]. */
  readonly warpJitter: number;
  readonly rowJitter: number;
  readonly nodeJitter: number;
  /** Height of slow waves in the wefts [share of row height] and slow drift of the warps' spacing [share]. */
  readonly waviness: number;
  readonly drift: number;
  /** Angle between wefts and the perpendicular of the warps [°]. */
  readonly skewDeg: number;
  readonly plies: number;
  readonly plyDepth: number;
  readonly hair: number;
  /** Depth of the furrow beside each node: 1 round yarn, less for packed or worn backs. */
  readonly relief: number;
  readonly design: DesignSpec;
  readonly dirt: number;
}

export type Rgb = readonly [red: number, green: number, blue: number];

export interface DesignSpec {
  readonly kind: 'plain' | 'motif' | 'border' | 'curves' | 'stripes' | 'diagonal';
  readonly colours: readonly Rgb[];
  /** Repeat of the motif in knots. */
  readonly motifKnots: readonly [across: number, along: number];
  /** Slow change of shade along the rug. */
  readonly abrash: number;
}

/** How it is photographed. */
export interface ShotSpec {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Pixels per millimetre of rug at the picture's centre. */
  readonly pxPerMm: number;
  readonly rollDeg: number;
  readonly tiltDeg: number;
  /** Direction in which the rug falls away from the camera [°]. */
  readonly tiltTowardsDeg: number;
  readonly lightFromDeg: number;
  readonly lightHeightDeg: number;
  /** How much the light falls off across the picture. */
  readonly lightFall: number;
  readonly blurPx: number;
  readonly sharpen: number;
  /** Sensor noise at middle grey [levels of 255]. */
  readonly noise: number;
  readonly jpegQuality: number;
}

/** Dyed and undyed wool as a camera sees it in even light (sRGB 0 … 255); chosen by eye. */
export const wools = {
  madder: [140, 38, 36],
  deepRed: [98, 22, 30],
  indigo: [36, 52, 98],
  navy: [24, 28, 48],
  ivory: [216, 202, 174],
  weld: [192, 152, 62],
  walnut: [88, 58, 38],
  black: [34, 28, 26],
  green: [62, 84, 54],
  rose: [190, 118, 104],
  camel: [164, 124, 84],
  sky: [104, 134, 158],
  grey: [130, 124, 116],
  orange: [192, 96, 48],
} as const satisfies Readonly<Record<string, Rgb>>;

const drawColours = (chance: Chance, count: number): readonly Rgb[] => {
  const left: Rgb[] = Object.values(wools).map((colour) => [...colour] as const);
  return Array.from({ length: count }, () => {
    const [picked] = left.splice(Math.floor(chance() * left.length), 1);
    if (picked === undefined) throw new Error('out of wool');
    return picked.map((level) =>
      Math.min(250, Math.max(6, level * between(chance, 0.85, 1.15))),
    ) as unknown as Rgb;
  });
};

/** Where a rug and its photograph are drawn from; each is the widest the loom is asked for. */
export function drawRug(chance: Chance): RugSpec {
  const weftwise = betweenLog(chance, 15, 110);
  const kind = oneOf(chance, [
    'plain',
    'motif',
    'motif',
    'border',
    'border',
    'curves',
    'curves',
    'stripes',
    'diagonal',
  ] as const);
  const level = chance();
  const depressionDeg =
    level < 0.4 ? between(chance, 0, 12) : level < 0.7 ? between(chance, 12, 60) : between(chance, 60, 90);
  return {
    weftwiseKnotsPer7cm: weftwise,
    warpwiseKnotsPer7cm: Math.min(110, Math.max(15, weftwise * betweenLog(chance, 0.6, 1.7))),
    knot: oneOf(chance, ['symmetric', 'asymmetric']),
    depressionDeg,
    wefts: oneOf(chance, [1, 2]),
    weftShare: chance() < 0.5 ? between(chance, 0.02, 0.12) : between(chance, 0.12, 0.4),
    weftColour: oneOf(chance, [wools.ivory, wools.grey, wools.walnut, wools.madder, wools.sky, wools.camel]),
    offset: chance() < 0.1,
    pairing: between(chance, -0.01, 0.06),
    warpJitter: between(chance, 0.01, 0.08),
    rowJitter: between(chance, 0.01, 0.1),
    nodeJitter: between(chance, 0.02, 0.12),
    waviness: chance() < 0.7 ? between(chance, 0, 0.4) : between(chance, 0.4, 1.2),
    drift: between(chance, 0, 0.03),
    skewDeg: between(chance, -2, 2),
    plies: whole(chance, 1, 4),
    plyDepth: between(chance, 0.02, 0.25),
    hair: between(chance, 0.02, 0.2),
    relief: between(chance, 0.35, 1),
    design: {
      kind,
      colours: drawColours(chance, kind === 'plain' ? 1 : whole(chance, 2, 7)),
      motifKnots: [whole(chance, 3, 26), whole(chance, 3, 26)],
      abrash: between(chance, 0, 0.15),
    },
    dirt: chance() < 0.6 ? between(chance, 0, 0.2) : between(chance, 0.2, 0.7),
  };
}

/** Whether the nodes on the hidden warps are still seen as columns of their own. */
export function nodesSeenPerKnot(depressionDeg: number): 1 | 2 | 'either' {
  if (depressionDeg <= 25) return 2;
  return depressionDeg >= 65 ? 1 : 'either';
}

/**
 * Draws a photograph of a rug.
 *
 * @param pxPerRepeat - pixels of the finer of the two visible repeats
 */
export function drawShot(chance: Chance, rug: RugSpec, pxPerRepeat: number): ShotSpec {
  const nodes = nodesSeenPerKnot(rug.depressionDeg) === 1 ? 1 : 2;
  const repeatsMm = [70 / rug.weftwiseKnotsPer7cm / nodes, 70 / rug.warpwiseKnotsPer7cm];
  const finerMm = Math.min(...repeatsMm);
  const coarser = Math.max(...repeatsMm) / finerMm;
  const side = Math.min(1500, Math.max(560, Math.round(pxPerRepeat * coarser * between(chance, 20, 50))));
  return {
    widthPx: side,
    heightPx: Math.round(side * between(chance, 0.75, 1)),
    pxPerMm: Math.min(pxPerRepeat, 90 / coarser) / finerMm,
    rollDeg: chance() < 0.7 ? between(chance, -5, 5) : between(chance, -15, 15),
    tiltDeg: chance() < 0.7 ? between(chance, 0, 5) : between(chance, 5, 14),
    tiltTowardsDeg: between(chance, 0, 360),
    lightFromDeg: between(chance, 0, 360),
    lightHeightDeg: between(chance, 20, 75),
    lightFall: between(chance, 0, 0.6),
    blurPx: between(chance, 0.4, Math.min(2, 0.22 * pxPerRepeat)),
    sharpen: chance() < 0.5 ? 0 : between(chance, 0.2, 1),
    noise: between(chance, 1, 14),
    jpegQuality: whole(chance, 60, 95),
  };
}
