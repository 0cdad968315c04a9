import {
  type KnotDensity,
  notation,
  notations,
  type WrittenDensity,
  writeKnotDensity,
} from '../../../core/weave/index.ts';
import type { RugFactOf } from '../../../dossier/index.ts';

type Counted = RugFactOf<'KnotsCounted'>;
type Place = Counted['places'][number];

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const upper = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? Number.NaN) + upper) / 2;
};

/** Knots per metre along both axes at one place; two nodes show per knot on level warps, one on depressed warps. */
export const perMetre = ({ weftwise, warpwise }: Place, nodesPerKnot: number) => ({
  weftwise: (weftwise.count / nodesPerKnot / weftwise.overMm) * 1000,
  warpwise: (warpwise.count / warpwise.overMm) * 1000,
});

export interface KnotSummary {
  readonly density: KnotDensity & { readonly kind: 'both-axes' };
  readonly weftwise: { readonly least: number; readonly most: number };
  readonly warpwise: { readonly least: number; readonly most: number };
  readonly written: readonly WrittenDensity[];
}

/** Median over the places, the least and most found, and the median in every notation of the trade. */
export const knotSummary = ({
  places,
  nodesPerKnot,
}: Pick<Counted, 'places' | 'nodesPerKnot'>): KnotSummary => {
  const counts = places.map((place) => perMetre(place, nodesPerKnot));
  const weftwise = counts.map((one) => one.weftwise);
  const warpwise = counts.map((one) => one.warpwise);
  const density = {
    kind: 'both-axes',
    weftwisePerM: median(weftwise),
    warpwisePerM: median(warpwise),
  } as const;
  const spread = (values: readonly number[]) => ({ least: Math.min(...values), most: Math.max(...values) });
  const written = notations().flatMap(({ id }) => {
    const way = notation(id);
    return way.ok ? [writeKnotDensity(density, way.value)] : [];
  });
  return { density, weftwise: spread(weftwise), warpwise: spread(warpwise), written };
};
