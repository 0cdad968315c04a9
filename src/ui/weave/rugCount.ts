import { weaveAlgorithm } from '../../core/weave/index.ts';
import type { AxisSeen, KnotCount } from '../../dossier/index.ts';
import type { CountedPlace } from './placeCount.ts';

export type SaidNodes = '1' | '2' | 'unknown';

/** Nodes per knot for the whole rug: a person's word, or colour changes that agree wherever they tell. */
export function nodesOf(
  said: SaidNodes,
  places: readonly Pick<CountedPlace, 'nodesSeen'>[],
): { readonly value: 1 | 2; readonly why: 'seen on the back' | 'colour changes' } | null {
  if (said !== 'unknown') return { value: said === '1' ? 1 : 2, why: 'seen on the back' };
  const told = new Set(places.flatMap(({ nodesSeen }) => (nodesSeen === null ? [] : [nodesSeen])));
  const [only, second] = told;
  return only === undefined || second !== undefined ? null : { value: only, why: 'colour changes' };
}

/** The count of all places, as it may be recorded; null while nodes per knot are not known. */
export function countOf(places: readonly CountedPlace[], said: SaidNodes): KnotCount | null {
  const nodes = nodesOf(said, places);
  if (nodes === null || places.length === 0) return null;
  return {
    counted: 'photographed',
    nodesPerKnot: nodes.value,
    nodesWhy: nodes.why,
    algorithm: weaveAlgorithm,
    places: places.map(({ place, photo, scale, weftwise, warpwise }) => ({
      place,
      photo,
      scale,
      weftwise,
      warpwise,
    })),
  };
}

const halfOf = ({ count, interval95 }: AxisSeen): number => (interval95.most - interval95.least) / 2 / count;

/** Knots per dm² at one place with their interval; the scale enters both axes, so it counts twice. */
export function placeDensity(
  { weftwise, warpwise }: Readonly<Record<'weftwise' | 'warpwise', AxisSeen>>,
  scaleHalf: number,
  nodes: 1 | 2,
): { readonly perDm2: number; readonly interval95: readonly [number, number] } {
  const perM = (axis: AxisSeen): number => (1000 * axis.count) / axis.overMm;
  const perDm2 = (perM(weftwise) * perM(warpwise)) / nodes / 100;
  const half = Math.hypot(halfOf(weftwise), halfOf(warpwise), Math.SQRT2 * scaleHalf);
  return { perDm2, interval95: [perDm2 * (1 - half), perDm2 * (1 + half)] };
}
