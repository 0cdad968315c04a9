import {
  type KnotDensity,
  medianHalf,
  notations,
  type OddPlace,
  severalPlaces,
  type WrittenDensity,
  writeKnotDensity,
} from '../core/weave/index.ts';
import type { RugFactOf } from './facts/index.ts';
import type { knotBases } from './facts/knots.ts';

export type KnotBasis = (typeof knotBases)[number];
type Counted = RugFactOf<'KnotsCounted'>;
type WithoutSignature<Fact> = Fact extends unknown ? Omit<Fact, 'type' | 'happenedAt'> : never;
/** Counts at several places, before or after they are on record. */
export type KnotCount = WithoutSignature<Counted>;

/** A figure with the interval that holds it 19 times of 20; none where it cannot be said. */
export interface Estimate {
  readonly value: number;
  readonly interval95: readonly [number, number] | null;
}

/** Knots at one place, nodes already made knots. */
export interface PlaceResult {
  readonly place: string;
  readonly weftwisePerM: Estimate;
  readonly warpwisePerM: Estimate;
  readonly basis: { readonly weftwise: KnotBasis; readonly warpwise: KnotBasis };
}

export interface KnotResult {
  readonly places: readonly PlaceResult[];
  readonly density: KnotDensity & { readonly kind: 'both-axes' };
  readonly weftwisePerM: Estimate & { readonly least: number; readonly most: number };
  readonly warpwisePerM: Estimate & { readonly least: number; readonly most: number };
  readonly perDm2: Estimate;
  readonly perSquareInch: Estimate;
  /** Places that differ more than is ordinary; none are told of fewer than three. */
  readonly odd: readonly OddPlace[];
  /** Whether a person confirmed or counted both axes at every place. */
  readonly isConfirmed: boolean;
  /** Whether every place is scaled by a card whose bar was measured. */
  readonly isScaleSure: boolean;
  readonly written: readonly WrittenDensity[];
}

/** Without a measured card no figure is surer than this [share]. */
const leastUnsure = 0.01;

/** A ruler is read to half a millimetre, and its ends fall between knots. */
const rulerHalf = ({ count, overMm }: { readonly count: number; readonly overMm: number }): number =>
  Math.hypot(0.5 / count, 0.5 / overMm);

const around = (value: number, half: number | null): Estimate => ({
  value,
  interval95: half === null ? null : [value * (1 - half), value * (1 + half)],
});

const halfOf = ({ value, interval95 }: Estimate): number =>
  interval95 === null ? 0 : (interval95[1] - interval95[0]) / 2 / value;

const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b);
  const upper = sorted[sorted.length >> 1] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[(sorted.length >> 1) - 1] ?? Number.NaN) + upper) / 2;
};

type Axis = 'weftwise' | 'warpwise';

function placeResults(count: KnotCount): readonly PlaceResult[] {
  const nodes = { weftwise: count.nodesPerKnot, warpwise: 1 } as const;
  if (count.counted === 'by hand')
    return count.places.map((one) => {
      const perM = (axis: Axis) =>
        around(
          (1000 * one[axis].count) / one[axis].overMm / nodes[axis],
          Math.max(leastUnsure, rulerHalf(one[axis])),
        );
      return {
        place: one.place,
        weftwisePerM: perM('weftwise'),
        warpwisePerM: perM('warpwise'),
        basis: { weftwise: 'by hand', warpwise: 'by hand' },
      };
    });
  return count.places.map((one) => {
    const perM = (axis: Axis): Estimate => {
      const { count: seen, overMm, interval95 } = one[axis];
      const each = 1000 / overMm / nodes[axis];
      return { value: seen * each, interval95: [interval95.least * each, interval95.most * each] };
    };
    return {
      place: one.place,
      weftwisePerM: perM('weftwise'),
      warpwisePerM: perM('warpwise'),
      basis: { weftwise: one.weftwise.basis, warpwise: one.warpwise.basis },
    };
  });
}

/** Halves of the interval that all places share because their scale is the same, or may be. */
const scaleHalves = (count: KnotCount): readonly number[] =>
  count.counted === 'by hand'
    ? []
    : count.places.map(({ scale }) => (scale.interval95.most - scale.interval95.least) / 2 / scale.mmPerPx);

/**
 * One result from the places counted: medians, their spread and interval, and every notation.
 *
 * The interval of a median comes from how the places differ, or from the places' own where that is wider;
 * what they share, the scale, is added once, and twice to an area. Fewer than three places have none.
 *
 * @param count - a count as recorded, or about to be
 * @returns figures unrounded; print at most three figures of them
 * @source none: arithmetic of this project on severalPlaces and medianHalf; a ruler's errors are common practice
 */
export function knotResult(count: KnotCount): KnotResult {
  const places = placeResults(count);
  const isScaleSure =
    count.counted === 'photographed' &&
    count.places.every(({ scale }) => scale.from === 'card' && scale.barMm !== undefined);
  const shared = Math.max(0, ...scaleHalves(count));
  const floor = isScaleSure ? 0 : leastUnsure;
  const along = (axis: 'weftwisePerM' | 'warpwisePerM') => {
    const values = places.map((place) => place[axis].value);
    const between = medianHalf(values);
    const each = median(
      places.map((place) => Math.sqrt(Math.max(0, halfOf(place[axis]) ** 2 - shared ** 2))),
    );
    const own = between === null ? null : Math.max(between, each / Math.sqrt(places.length));
    const half = own === null ? null : Math.max(floor, Math.hypot(own, shared));
    return {
      own: own ?? 0,
      perM: {
        ...around(median(values), half),
        least: Math.min(...values),
        most: Math.max(...values),
      },
    };
  };
  const [weftwise, warpwise] = [along('weftwisePerM'), along('warpwisePerM')];
  const density = {
    kind: 'both-axes',
    weftwisePerM: weftwise.perM.value,
    warpwisePerM: warpwise.perM.value,
  } as const;
  const areaHalf =
    weftwise.perM.interval95 === null
      ? null
      : Math.max(2 * floor, Math.hypot(weftwise.own, warpwise.own, 2 * shared));
  const perM2 = density.weftwisePerM * density.warpwisePerM;
  const several = severalPlaces(
    places.map((place) => ({
      weftwiseKnotsPer7cm: 0.07 * place.weftwisePerM.value,
      warpwiseKnotsPer7cm: 0.07 * place.warpwisePerM.value,
    })),
  );
  return {
    places,
    density,
    weftwisePerM: weftwise.perM,
    warpwisePerM: warpwise.perM,
    perDm2: around(perM2 / 100, areaHalf),
    perSquareInch: around(perM2 * 0.0254 ** 2, areaHalf),
    odd: several.ok ? several.value.odd : [],
    isConfirmed: places.every(({ basis }) =>
      [basis.weftwise, basis.warpwise].every((one) => one === 'confirmed' || one === 'by hand'),
    ),
    isScaleSure,
    written: notations().map((way) => writeKnotDensity(density, way)),
  };
}
