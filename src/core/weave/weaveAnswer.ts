import type { AxisCount, WeaveBasis, WeaveCount } from './countWeave.ts';
import { knotsPerSquareMetre } from './density.ts';
import type { NodesHint } from './nodes.ts';

/** Size of the rug in the picture: millimetres per pixel at the window's centre, along each axis. */
export interface WeaveScale {
  readonly mmPerPx: number;
  readonly weftwiseMmPerPx: number;
  readonly warpwiseMmPerPx: number;
  readonly from: 'card' | 'given';
  readonly interval95: readonly [number, number];
  /** Whether the card's printed bar was ever measured; a scale given by hand counts as measured. */
  readonly measured: boolean;
}

export interface NodesPerKnot {
  readonly value: 1 | 2 | null;
  readonly why: 'given' | 'colour-changes-even' | 'colour-changes-mixed' | 'undecided';
}

/** What a density is for one reading of the nodes. */
export interface WeaveReading {
  readonly nodes: 1 | 2;
  readonly weftwiseKnotsPer7cm: number;
  readonly warpwiseKnotsPer7cm: number;
  readonly perDm2: number;
  readonly perSquareInch: number;
}

export interface AnsweredAxis {
  readonly knotsPer7cm: number | null;
  readonly interval95: readonly [number, number] | null;
  readonly pitchPx: number;
  readonly confidence: number;
  readonly basis: WeaveBasis;
}

export interface WeaveAnswer {
  readonly weftwise: AnsweredAxis;
  readonly warpwise: AnsweredAxis;
  readonly angleDeg: number;
  readonly density: {
    readonly perDm2: number;
    readonly perSquareInch: number;
    readonly interval95: readonly [number, number];
  } | null;
  readonly nodesPerKnot: NodesPerKnot & { readonly readings: readonly WeaveReading[] };
  readonly scale: {
    readonly mmPerPx: number;
    readonly from: 'card' | 'given';
    readonly interval95: readonly [number, number];
  } | null;
  readonly candidates: WeaveCount['candidates'];
  /** The weaker of both axes: taps along one leave the whole automatic. */
  readonly basis: WeaveBasis;
  readonly notes: readonly WeaveNote[];
}

/** Things a reader must know, as codes; words are chosen in `text/`. */
export type WeaveNote =
  | 'no-scale'
  | 'nodes-undecided'
  | 'check-the-overlay'
  | 'few-pixels'
  | 'other-factor-close'
  | 'not-confirmed'
  | 'one-axis-automatic'
  | 'card-not-measured'
  | 'card-tag-not-read';

const evenEnough = 0.9;
const evenPairs = 40;
const mixedEnough = -0.05;
const mixedPairs = 50;

/**
 * Nodes per knot, as far as it is known: a person's word, or colour changes that leave no doubt.
 *
 * @param said - what a person said, or null
 * @param hint - from `nodesHint`
 * @source none: limits set on loom pictures so that no two-node rug reads as one-node, nor the reverse
 */
export function decideNodes(said: 1 | 2 | null, hint: NodesHint | null): NodesPerKnot {
  if (said !== null) return { value: said, why: 'given' };
  if (hint !== null && hint.evenness >= evenEnough && hint.pairs >= evenPairs)
    return { value: 2, why: 'colour-changes-even' };
  if (hint !== null && hint.evenness <= mixedEnough && hint.pairs >= mixedPairs)
    return { value: 1, why: 'colour-changes-mixed' };
  return { value: null, why: 'undecided' };
}

const halfOf = ([low, high]: readonly [number, number], middle: number): number => (high - low) / 2 / middle;

const per7cm = (pitchPx: number, mmPerPx: number, nodes: number): number => 70 / (pitchPx * mmPerPx * nodes);

const around = (value: number, half: number): readonly [number, number] => [
  value * (1 - half),
  value * (1 + half),
];

/**
 * Knots per 7 cm and per area from what was counted in pixels.
 *
 * Without a scale, or while one and two nodes per knot are both possible, no density is stated; both
 * readings are listed instead.
 *
 * @param count - from `countWeave`
 * @param scale - null when neither card nor person gave one
 * @param nodes - from `decideNodes`
 * @source none: arithmetic; intervals of independent causes add as squares
 */
export function weaveAnswer(count: WeaveCount, scale: WeaveScale | null, nodes: NodesPerKnot): WeaveAnswer {
  const scaleHalf = scale === null ? 0 : halfOf(scale.interval95, scale.mmPerPx);
  const reading = (of: 1 | 2, known: WeaveScale): WeaveReading => {
    const weftwiseKnotsPer7cm = per7cm(count.weftwise.pitchPx, known.weftwiseMmPerPx, of);
    const warpwiseKnotsPer7cm = per7cm(count.warpwise.pitchPx, known.warpwiseMmPerPx, 1);
    const { perSquareMetre } = knotsPerSquareMetre({
      kind: 'both-axes',
      weftwisePerM: weftwiseKnotsPer7cm / 0.07,
      warpwisePerM: warpwiseKnotsPer7cm / 0.07,
    });
    return {
      nodes: of,
      weftwiseKnotsPer7cm,
      warpwiseKnotsPer7cm,
      perDm2: perSquareMetre / 100,
      perSquareInch: perSquareMetre / 1550.0031,
    };
  };
  const readings =
    scale === null
      ? []
      : nodes.value === null
        ? [reading(1, scale), reading(2, scale)]
        : [reading(nodes.value, scale)];
  const [only] = nodes.value === null ? [] : readings;
  const axis = (counted: AxisCount, knots: number | undefined): AnsweredAxis => ({
    knotsPer7cm: knots ?? null,
    interval95:
      knots === undefined
        ? null
        : around(knots, Math.hypot(halfOf(counted.pitchInterval95, counted.pitchPx), scaleHalf)),
    pitchPx: counted.pitchPx,
    confidence: counted.confidence,
    basis: counted.basis,
  });
  const pitchHalf = Math.hypot(
    halfOf(count.weftwise.pitchInterval95, count.weftwise.pitchPx),
    halfOf(count.warpwise.pitchInterval95, count.warpwise.pitchPx),
  );
  const confidence = Math.min(count.weftwise.confidence, count.warpwise.confidence);
  const [, second] = count.candidates;
  const notes: WeaveNote[] = [];
  if (scale === null) notes.push('no-scale');
  if (scale?.measured === false) notes.push('card-not-measured');
  if (nodes.value === null) notes.push('nodes-undecided');
  if (confidence < 0.8) notes.push('check-the-overlay');
  if (Math.min(count.weftwise.pitchPx, count.warpwise.pitchPx) < 6) notes.push('few-pixels');
  const bases = [count.weftwise.basis, count.warpwise.basis];
  const basis =
    (['automatic', 'tapped', 'confirmed'] as const).find((one) => bases.includes(one)) ?? 'automatic';
  if (basis === 'automatic' && second !== undefined && second.weight > 0.2) notes.push('other-factor-close');
  if (basis === 'automatic')
    notes.push(bases.every((one) => one === 'automatic') ? 'not-confirmed' : 'one-axis-automatic');
  return {
    weftwise: axis(count.weftwise, only?.weftwiseKnotsPer7cm),
    // Rows are knots whatever the nodes; they stay unsaid with the other axis so that nobody multiplies them.
    warpwise: axis(count.warpwise, only?.warpwiseKnotsPer7cm),
    angleDeg: count.angleDeg,
    density:
      only === undefined
        ? null
        : {
            perDm2: only.perDm2,
            perSquareInch: only.perSquareInch,
            // The scale enters both axes, so it counts twice.
            interval95: around(only.perDm2, Math.hypot(pitchHalf, 2 * scaleHalf)),
          },
    nodesPerKnot: { ...nodes, readings },
    scale: scale === null ? null : { mmPerPx: scale.mmPerPx, from: scale.from, interval95: scale.interval95 },
    candidates: count.candidates,
    basis,
    notes,
  };
}
