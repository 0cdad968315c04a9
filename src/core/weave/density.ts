import table from '../../../data/weave/notations.json' with { type: 'json' };
import { done, type OutOfRange, type Problem, type Result, refused } from '../../units/index.ts';

/** A knot density as far as it is known. Nothing is squared before someone asks for an area. */
export type KnotDensity =
  | { readonly kind: 'both-axes'; readonly weftwisePerM: number; readonly warpwisePerM: number }
  | { readonly kind: 'one-axis'; readonly weftwisePerM: number }
  | { readonly kind: 'area'; readonly perSquareMetre: number };

export type NotationId =
  | 'per-square-metre'
  | 'per-square-decimetre'
  | 'per-square-centimetre'
  | 'per-square-inch'
  | 'raj'
  | 'line'
  | 'per-7-cm'
  | 'turkish'
  | 'indian'
  | 'pakistani';

/** A way of writing a density: over which length (or area) each of its numbers counts knots. */
export type Notation = {
  readonly id: NotationId;
  readonly name: string;
  /** Decimals it is printed with. */
  readonly decimals: number;
} & (
  | { readonly kind: 'area'; readonly areaMm2: number }
  | { readonly kind: 'one-axis'; readonly weftwiseMm: number; readonly lengthIsSetting: boolean }
  | {
      readonly kind: 'both-axes';
      readonly weftwiseMm: number;
      readonly warpwiseMm: number;
      readonly between: string;
    }
);

export type DensityProblem =
  | Problem<'unknown-notation', { readonly given: string; readonly allowed: readonly string[] }>
  | Problem<
      'knot-density-not-readable',
      { readonly given: string; readonly notation: string; readonly form: string }
    >
  | OutOfRange;

/** What the person may set; printed with every number it touches. */
export interface NotationSettings {
  /** Length over which a raj counts [mm]. */
  readonly rajMm: number;
}

export const usualNotationSettings: NotationSettings = { rajMm: table.rajLengthMm.usual };

interface NotationRow {
  readonly id: string;
  readonly name: string;
  readonly decimals: number;
  readonly areaMm2?: number;
  readonly weftwiseMm?: number;
  readonly warpwiseMm?: number;
  readonly between?: string;
  readonly lengthIsSetting?: boolean;
}

const notationOf = (row: NotationRow, { rajMm }: NotationSettings): Notation => {
  const shared = { id: row.id as NotationId, name: row.name, decimals: row.decimals };
  const { areaMm2, weftwiseMm, warpwiseMm, between, lengthIsSetting = false } = row;
  if (areaMm2 !== undefined) return { ...shared, kind: 'area', areaMm2 };
  if (weftwiseMm === undefined || warpwiseMm === undefined) throw new Error(`bad notation ${row.id}`);
  if (between !== undefined) return { ...shared, kind: 'both-axes', weftwiseMm, warpwiseMm, between };
  if (!lengthIsSetting) return { ...shared, kind: 'one-axis', weftwiseMm, lengthIsSetting };
  const name = `${row.name} (knots in ${rajMm / 10} cm)`;
  return { ...shared, name, kind: 'one-axis', weftwiseMm: rajMm, lengthIsSetting };
};

/**
 * All notations, in the order they are shown.
 *
 * @param settings - length of a raj [mm, 60 … 80]
 * @source common-practice, data/weave/notations.json
 */
export const notations = (settings: NotationSettings = usualNotationSettings): readonly Notation[] =>
  table.rows.map((row) => notationOf(row, settings));

/**
 * One notation by its permanent id.
 *
 * @refuses unknown-notation - no such id
 * @refuses out-of-range - a raj length nobody uses
 * @source common-practice, data/weave/notations.json
 */
export function notation(
  id: string,
  settings: NotationSettings = usualNotationSettings,
): Result<Notation, DensityProblem> {
  const { least, most } = table.rajLengthMm;
  if (!(settings.rajMm >= least && settings.rajMm <= most))
    return refused('out-of-range', {
      field: 'the length of a raj',
      value: settings.rajMm,
      least,
      most,
      symbol: 'mm',
    });
  const found = notations(settings).find((one) => one.id === id);
  if (found === undefined)
    return refused('unknown-notation', { given: id, allowed: table.rows.map((row) => row.id) });
  return done(found);
}

const numberIn = (text: string): number =>
  /^\d+([.,]\d+)?$/.test(text) ? Number(text.replace(',', '.')) : NaN;

const plausibleAxis = (perM: number, field: string): Result<number, OutOfRange> => {
  const { least, most } = table.knotsPer7cm;
  const value = perM * 0.07;
  if (value >= least && value <= most) return done(perM);
  return refused('out-of-range', {
    field,
    value: Number(value.toPrecision(4)),
    least,
    most,
    symbol: 'knots per 7 cm',
  });
};

/**
 * Reads a density as a person writes it: one number, or two with `/` or `x` between them.
 *
 * @param text - as written, e.g. `40`, `9/60`, `26x33`
 * @param id - the notation it is written in
 * @returns the density with as many axes as the notation holds, weftwise first
 * @refuses unknown-notation - no such id
 * @refuses knot-density-not-readable - the text has not the notation's form
 * @refuses out-of-range - coarser than 3 or finer than 250 knots per 7 cm along an axis
 * @source common-practice, data/weave/notations.json
 * @example readKnotDensity('9/60', 'indian')
 */
export function readKnotDensity(
  text: string,
  id: string,
  settings: NotationSettings = usualNotationSettings,
): Result<KnotDensity, DensityProblem> {
  const found = notation(id, settings);
  if (!found.ok) return found;
  const way = found.value;
  const numbers = text
    .trim()
    .split(/\s*[/x×]\s*/i)
    .map(numberIn);
  const [first = NaN, second = NaN] = numbers;
  const expected = way.kind === 'both-axes' ? 2 : 1;
  if (numbers.length !== expected || numbers.some(Number.isNaN)) {
    const form = way.kind === 'both-axes' ? `two numbers such as 9${way.between}60` : 'one number such as 40';
    return refused('knot-density-not-readable', { given: text, notation: id, form });
  }
  switch (way.kind) {
    case 'area': {
      const perSquareMetre = (first * 1e6) / way.areaMm2;
      const axis = plausibleAxis(Math.sqrt(perSquareMetre), 'the knot density, taken as square,');
      return axis.ok ? done({ kind: 'area', perSquareMetre }) : axis;
    }
    case 'one-axis': {
      const axis = plausibleAxis((first * 1e3) / way.weftwiseMm, 'the weftwise count');
      return axis.ok ? done({ kind: 'one-axis', weftwisePerM: axis.value }) : axis;
    }
    case 'both-axes': {
      const weftwise = plausibleAxis((first * 1e3) / way.weftwiseMm, 'the weftwise count');
      if (!weftwise.ok) return weftwise;
      const warpwise = plausibleAxis((second * 1e3) / way.warpwiseMm, 'the warpwise count');
      if (!warpwise.ok) return warpwise;
      return done({ kind: 'both-axes', weftwisePerM: weftwise.value, warpwisePerM: warpwise.value });
    }
  }
}

/**
 * Knots per square metre.
 *
 * @returns the density [knots/m²], and whether one axis stood for both
 * @source none: definition of a density
 */
export function knotsPerSquareMetre(density: KnotDensity): {
  readonly perSquareMetre: number;
  readonly assumesSquare: boolean;
} {
  switch (density.kind) {
    case 'area':
      return { perSquareMetre: density.perSquareMetre, assumesSquare: false };
    case 'one-axis':
      return { perSquareMetre: density.weftwisePerM ** 2, assumesSquare: true };
    case 'both-axes':
      return { perSquareMetre: density.weftwisePerM * density.warpwisePerM, assumesSquare: false };
  }
}

/** A density written in a notation. */
export interface WrittenDensity {
  readonly notation: NotationId;
  readonly name: string;
  /** One number, or weftwise and warpwise. */
  readonly values: readonly number[];
  readonly text: string;
  /** True where one number had to stand for both axes, or an area was split into two equal axes. */
  readonly assumesSquare: boolean;
}

/**
 * Writes a density in a notation, saying where it had to assume square knots.
 *
 * A notation of one axis gives the weftwise count, as the trade does; it assumes nothing unless only an
 * area is known.
 *
 * @param density - what is known
 * @param way - from `notation`
 * @returns values unrounded, text rounded to the notation's decimals
 * @source common-practice, data/weave/notations.json
 */
export function writeKnotDensity(density: KnotDensity, way: Notation): WrittenDensity {
  const { perSquareMetre, assumesSquare } = knotsPerSquareMetre(density);
  const side = Math.sqrt(perSquareMetre);
  const written = (values: readonly number[], assumes: boolean, between = ''): WrittenDensity => ({
    notation: way.id,
    name: way.name,
    values,
    text: values.map((value) => String(Number(value.toFixed(way.decimals)))).join(between),
    assumesSquare: assumes,
  });
  const weftwisePerM = density.kind === 'area' ? side : density.weftwisePerM;
  const warpwisePerM = density.kind === 'both-axes' ? density.warpwisePerM : weftwisePerM;
  switch (way.kind) {
    case 'area':
      return written([(perSquareMetre * way.areaMm2) / 1e6], assumesSquare);
    case 'one-axis':
      return written([(weftwisePerM * way.weftwiseMm) / 1e3], density.kind === 'area');
    case 'both-axes':
      return written(
        [(weftwisePerM * way.weftwiseMm) / 1e3, (warpwisePerM * way.warpwiseMm) / 1e3],
        density.kind !== 'both-axes',
        way.between,
      );
  }
}
