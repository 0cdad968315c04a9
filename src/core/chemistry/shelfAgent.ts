import { done, type Problem, type Result, refused } from '../../units/index.ts';
import { type AgentNameProblem, readAgentName } from './agentName.ts';

export const agentKinds = [
  'acid',
  'base',
  'salt',
  'oxidiser',
  'reducer',
  'surfactant',
  'enzyme',
  'solvent',
  'chelator',
] as const;
export type AgentKind = (typeof agentKinds)[number];

export const strengthUnits = ['% w/w', 'g/L'] as const;

/** One constituent of a product, as its supplier states it. */
export interface ProductPart {
  readonly kind: AgentKind;
  /** The common chemical name with its hydrate, where this product computes with it. */
  readonly chemical?: string | undefined;
  readonly strength: {
    /** Null where the supplier does not say. */
    readonly value: number | null;
    readonly unit: (typeof strengthUnits)[number];
  };
}

/** What a product on the shelf is made of; the rest is water or takes no part. */
export interface Product {
  readonly name: string;
  readonly parts: readonly ProductPart[];
  /** Needed for g/L and to pour by volume [g/mL]. */
  readonly densityGPerMl?: number | undefined;
}

/** So much of a product's mass is this chemical [0 … 1]. */
export interface Share {
  readonly agent: string;
  readonly strength: number;
}

export type ProductProblem =
  | Problem<'strength-above-whole', { readonly name: string; readonly percent: number }>
  | Problem<'density-missing', { readonly name: string }>
  | AgentNameProblem;

type Composition = Pick<Product, 'parts' | 'densityGPerMl'>;

const statedShare = ({ strength: { value, unit } }: ProductPart, densityGPerMl = 1): number =>
  (value ?? 0) / (unit === '% w/w' ? 100 : densityGPerMl * 1000);

const statedWhole = ({ parts, densityGPerMl }: Composition): number =>
  parts.reduce((sum, part) => sum + statedShare(part, densityGPerMl), 0);

/**
 * Mass share of one constituent; one of unknown strength may be all that the others leave.
 *
 * @returns share [0 … 1]
 * @source none: definition of mass fraction
 */
export const shareOf = (product: Composition, part: ProductPart): number =>
  part.strength.value === null
    ? Math.max(0, 1 - statedWhole(product))
    : statedShare(part, product.densityGPerMl);

/**
 * Mass shares of a product's constituents that take part in the balance of a bath.
 *
 * @param product - composition as the supplier states it
 * @returns shares [0 … 1]; parts without a chemical name (surfactants, enzymes) take no part, and one of
 * unknown strength may be all that the others leave: less of the product is then dosed, never too much
 * @refuses strength-above-whole - the parts add up to more than the product
 * @refuses density-missing - g/L cannot be turned into a share without it
 * @refuses agent-unknown - a chemical name this instrument does not compute with
 * @source none: definition of mass fraction
 */
export function sharesOf({ name, parts, densityGPerMl }: Product): Result<readonly Share[], ProductProblem> {
  if (densityGPerMl === undefined && parts.some(({ strength }) => strength.unit === 'g/L')) {
    return refused('density-missing', { name });
  }
  for (const { chemical } of parts) {
    const named = chemical === undefined ? null : readAgentName(chemical, true);
    if (named?.ok === false) return named;
  }
  const product = { parts, densityGPerMl };
  const whole = statedWhole(product);
  // A supplier's rounded figures may add up to a little more than the whole.
  if (!(whole <= 1.005)) return refused('strength-above-whole', { name, percent: whole * 100 });
  return done(
    parts.flatMap((part) =>
      part.chemical === undefined ? [] : [{ agent: part.chemical, strength: shareOf(product, part) }],
    ),
  );
}

/** What of a product nobody stated the strength of: chemicals by name, the rest by kind. */
export const strengthsUnknown = ({ parts }: Pick<Product, 'parts'>): readonly string[] =>
  parts.flatMap(({ kind, chemical, strength }) => (strength.value === null ? [chemical ?? kind] : []));

/**
 * So much of a product as it is measured out.
 *
 * @param grams - of the product [g]
 * @returns millilitres for a product poured by volume
 * @refuses density-missing
 * @source none: definition of density
 */
export const asPoured = (
  { name, densityGPerMl }: Product,
  unit: 'g' | 'mL',
  grams: number,
): Result<number, ProductProblem> => {
  if (unit === 'g') return done(grams);
  return densityGPerMl === undefined ? refused('density-missing', { name }) : done(grams / densityGPerMl);
};
