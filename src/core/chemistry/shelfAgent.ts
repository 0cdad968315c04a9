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
  readonly strength: { readonly value: number; readonly unit: (typeof strengthUnits)[number] };
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

/**
 * Mass shares of a product's constituents that take part in the balance of a bath.
 *
 * @param product - composition as the supplier states it
 * @returns shares [0 … 1]; parts without a chemical name (surfactants, enzymes) take no part
 * @refuses strength-above-whole - the parts add up to more than the product
 * @refuses density-missing - g/L cannot be turned into a share without it
 * @refuses agent-unknown - a chemical name this instrument does not compute with
 * @source none: definition of mass fraction
 */
export function sharesOf({ name, parts, densityGPerMl }: Product): Result<readonly Share[], ProductProblem> {
  const shares: Share[] = [];
  let whole = 0;
  for (const { chemical, strength } of parts) {
    if (strength.unit === 'g/L' && densityGPerMl === undefined) return refused('density-missing', { name });
    const share =
      strength.unit === '% w/w' ? strength.value / 100 : strength.value / ((densityGPerMl ?? 1) * 1000);
    whole += share;
    if (chemical === undefined) continue;
    const named = readAgentName(chemical, true);
    if (!named.ok) return named;
    shares.push({ agent: chemical, strength: share });
  }
  // A supplier's rounded figures may add up to a little more than the whole.
  if (!(whole <= 1.005)) return refused('strength-above-whole', { name, percent: whole * 100 });
  return done(shares);
}

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
