import { done, type Problem, type Result, refused } from '../../units/index.ts';
import {
  asPoured,
  type DoseProblem,
  dose,
  type Product,
  type ProductProblem,
  type ReckonedWater,
  shareOf,
  sharesOf,
  strengthsUnknown,
  usualDoseUncertainty,
  waterToReckonWith,
} from '../chemistry/index.ts';
import { isStatedPure, kindOf, statedName } from './agentKind.ts';
import type { Band } from './limit.ts';
import type { Agent } from './planFacts.ts';
import { isFit, type MixingPlace, type NoProduct, productFor, type StockedProduct } from './productFor.ts';
import { isAcid, isAlkaline } from './rulebook.ts';
import { madeUp } from './spotAmounts.ts';
import { offBand, type SpotterOffBand, standsAtPh } from './standsAtPh.ts';
import type { Amount, PlanStep } from './washPlan.ts';

export type MixProblem =
  | DoseProblem
  | ProductProblem
  | NoProduct
  | Problem<'strength-unknown', { readonly name: string; readonly chemicals: readonly string[] }>
  | Problem<'composition-unknown', { readonly name: string; readonly agent: string }>
  | Problem<'strength-missing', { readonly name: string; readonly agent: string; readonly kind: string }>
  | Problem<
      'product-too-weak',
      { readonly name: string; readonly agent: string; readonly percent: number; readonly needed: number }
    >
  | SpotterOffBand
  | Problem<
      'stock-short',
      { readonly name: string; readonly have: number; readonly need: number; readonly unit: string }
    >;

/** What is mixed: a step of a plan, or a spotting card. */
export type Mixed = Pick<PlanStep, 'agents' | 'amounts' | 'targetPh' | 'temperatureC'>;

/** How much of one product goes into one bath. */
export interface MixLine {
  readonly agent: Agent;
  readonly product: { readonly id: string; readonly name: string } | null;
  readonly lot: string | null;
  /** Null where nothing could be worked out; the problem says why. */
  readonly amount: {
    readonly least: number;
    readonly most: number;
    readonly computed: number;
    readonly unit: 'g' | 'mL';
  } | null;
  /** Used as it is, without water. */
  readonly isNeat: boolean;
  readonly targetPh: number | null;
  /** Where the liquid stands by itself, for a reducer, which sets its own pH; null where nobody can say. */
  readonly standsAtPh: Band | null;
  readonly problems: readonly MixProblem[];
}

/** A step's bath, or a spotter's liquid, mixed from this shelf with this water. */
export interface StepMix {
  /** Liquid mixed [L]; 1 where the step states none: the amounts are then for each litre. */
  readonly litres: number;
  readonly volume: 'bath' | 'made up' | 'each litre';
  readonly water: ReckonedWater;
  readonly lines: readonly MixLine[];
}

interface Bath {
  readonly step: Mixed;
  readonly litres: number;
  readonly water: ReckonedWater;
}

type Taken = { readonly computed: number; readonly least: number; readonly most: number };

/** Grams of a product to the middle of the step's band, over all the water may be. */
function gramsToPh(
  agent: Agent,
  product: Product,
  { step, litres, water }: Bath,
  target: number,
): Result<Taken, MixProblem> {
  const shares = sharesOf(product);
  if (!shares.ok) return shares;
  if (shares.value.length === 0) return refused('composition-unknown', { name: product.name, agent });
  const { value, least, most } = water.alkalinity;
  const dosed = dose(
    {
      ...{ litres, alkalinityMgPerLCaCO3: value, activity: 'davies', openToAir: false, add: [] },
      temperatureC: step.temperatureC?.most ?? 20,
    },
    { name: product.name, shares: shares.value },
    target,
    { strength: usualDoseUncertainty.strength, alkalinity: value === 0 ? 0 : (most - least) / 2 / value },
  );
  if (!dosed.ok) return dosed;
  const [from, to] = dosed.value.interval;
  return done({ computed: dosed.value.grams, least: from, most: to });
}

/** What the plan states for an agent, by area and by what the dyes were tested with. */
const statedOf = ({ amounts }: Mixed, agent: Agent, unit: 'g' | 'mL'): Taken | null => {
  const names: readonly string[] = [agent, statedName(agent)];
  const stated = amounts.find((one) => names.includes(one.agent) && one.unit === unit);
  return stated === undefined ? null : { computed: stated.least, least: stated.least, most: stated.most };
};

/** Share of a product's mass that is of the agent's kind; 0 where its supplier states none. */
const activeShare = (agent: Agent, product: Product): number =>
  product.parts
    .filter(({ kind }) => kind === kindOf(agent))
    .reduce((sum, part) => sum + shareOf(product, part), 0);

/**
 * Grams of a product that hold so much of the pure substance. A label may be off either way: the range
 * shrinks by it, so that the liquid is never stronger than stated, nor weaker.
 */
function gramsOfProduct(
  agent: Agent,
  product: StockedProduct,
  pure: Taken,
  { litres }: Bath,
): Result<Taken, MixProblem> {
  const shares = sharesOf(product);
  if (!shares.ok) return shares;
  const { name, densityGPerMl = 1 } = product;
  const share = activeShare(agent, product);
  if (share <= 0) return refused('strength-missing', { name, agent, kind: kindOf(agent) ?? agent });
  const { strength } = usualDoseUncertainty;
  const whole = litres * 1000 * densityGPerMl;
  const most = Math.min(pure.most / (share * (1 + strength)), whole);
  const least = Math.min(pure.least / (share * (1 - strength)), pure.most / (share * (1 + strength)));
  if (least > most) {
    const needed = (pure.least / (litres * 1000)) * 100;
    return refused('product-too-weak', { name, agent, percent: share * 100, needed });
  }
  return done({ computed: least, least, most });
}

/** Whether an agent is dosed by the pH it brings: what is in its product must then be known. */
export const isDosedToPh = (agent: Agent): boolean => isAcid(agent) || isAlkaline(agent);

const middle = ({ least, most }: { readonly least: number; readonly most: number }) => (least + most) / 2;

/** Pure citric acid and the like, for a shelf that has none: the plan still says how much. */
const pureOf: { readonly [A in Agent]?: string } = {
  'citric acid': 'citric acid, anhydrous',
  'acetic acid': 'acetic acid',
  'formic acid': 'formic acid',
  'sodium carbonate': 'sodium carbonate',
  'sodium bicarbonate': 'sodium bicarbonate',
  ammonia: 'ammonia',
  metabisulfite: 'sodium metabisulfite',
};

const pureProduct = (agent: Agent): Product | null => {
  const chemical = pureOf[agent];
  if (chemical === undefined) return null;
  const parts = [{ kind: 'acid', chemical, strength: { value: 100, unit: '% w/w' } }] as const;
  return { name: `pure ${chemical}`, parts };
};

const mapped = (
  { least, most, computed }: Taken,
  to: (value: number) => Result<number, MixProblem>,
): Result<Taken, MixProblem> => {
  const [low, high, at] = [to(least), to(most), to(computed)];
  if (!low.ok) return low;
  if (!high.ok) return high;
  return at.ok ? done({ least: low.value, most: high.value, computed: at.value }) : at;
};

/** Millilitres of what is used as it is, in the product's own unit. */
function neatOf(neat: Taken, held: StockedProduct | null): Result<Taken, MixProblem> {
  if (held === null || held.unit === 'mL') return done(neat);
  const { name, densityGPerMl } = held;
  return densityGPerMl === undefined
    ? refused('density-missing', { name })
    : mapped(neat, (mL) => done(mL * densityGPerMl));
}

/** Grams of the product, or of the pure agent where there is none; null where the step asks for nothing. */
function gramsOf(
  agent: Agent,
  bath: Bath,
  held: StockedProduct | null,
  targetPh: number | null,
): Result<Taken, MixProblem> | null {
  const dosed = held ?? pureProduct(agent);
  if (targetPh !== null && dosed !== null) return gramsToPh(agent, dosed, bath, targetPh);
  const stated = statedOf(bath.step, agent, 'g');
  if (stated === null) return null;
  return held !== null && isStatedPure(agent) ? gramsOfProduct(agent, held, stated, bath) : done(stated);
}

function lineFor(agent: Agent, bath: Bath, place: MixingPlace): MixLine {
  const found = productFor(agent, place);
  const held = found.ok ? found.value.product : null;
  const isNeat = statedOf(bath.step, agent, 'mL') !== null;
  const targetPh = isDosedToPh(agent) && bath.step.targetPh !== undefined ? middle(bath.step.targetPh) : null;
  const problems: MixProblem[] = found.ok ? [] : [found.problem];
  const none: MixLine = {
    agent,
    product: held === null ? null : { id: held.id, name: held.name },
    lot: found.ok ? (found.value.lot?.lot ?? null) : null,
    ...{ amount: null, isNeat, targetPh, standsAtPh: null, problems },
  };
  const neat = statedOf(bath.step, agent, 'mL');
  const grams = neat === null ? gramsOf(agent, bath, held, targetPh) : null;
  if (neat === null && grams === null) return none;
  const taken =
    neat !== null
      ? neatOf(neat, held)
      : grams?.ok && held !== null
        ? mapped(grams.value, (value) => asPoured(held, held.unit, value))
        : grams;
  if (taken === null) return none;
  if (!taken.ok) return { ...none, problems: [...problems, taken.problem] };
  const unit = held?.unit ?? (isNeat ? 'mL' : 'g');
  const amount = { ...taken.value, unit };
  const stands = grams?.ok === true ? standsAtPh(agent, held ?? pureProduct(agent), grams.value, bath) : null;
  problems.push(...offBand(held?.name ?? statedName(agent), stands, bath.step.targetPh));
  if (held !== null) {
    const chemicals = targetPh !== null || isStatedPure(agent) ? strengthsUnknown(held) : [];
    if (chemicals.length > 0)
      problems.push({ code: 'strength-unknown', facts: { name: held.name, chemicals } });
    const have = held.lots.filter(isFit(place.today)).reduce((sum, lot) => sum + lot.amount, 0);
    if (have < amount.least) {
      problems.push({ code: 'stock-short', facts: { name: held.name, have, need: amount.least, unit } });
    }
  }
  return { ...none, amount, standsAtPh: stands, problems };
}

/** Litres of the bath or of the made-up liquid; a spotter's millilitres are litres inside. */
function volumeOf({ amounts }: Mixed): Pick<StepMix, 'litres' | 'volume'> {
  const bath = amounts.find(({ unit, most }) => unit === 'L' && most > 0);
  if (bath !== undefined) return { litres: bath.most, volume: 'bath' };
  const liquid = amounts.find(({ agent, most }) => agent === madeUp && most > 0);
  return liquid === undefined
    ? { litres: 1, volume: 'each litre' }
    : { litres: liquid.most / 1000, volume: 'made up' };
}

/**
 * What to measure out for one step, or one spotter, from this shelf with this water: to the middle of its pH
 * band where an acid or alkali sets it, else what is stated, by the share of it the product holds.
 *
 * @param step - of a plan, or a spotting card
 * @param place - shelf, supply water and day
 * @returns amounts of the product itself, in its own unit, with the range that unknown water and strength give
 * @source crc-handbook constants through dose; amounts by area are workshop settings (data/wash)
 */
export function stepMix(step: Mixed, place: MixingPlace): StepMix {
  const { litres, volume } = volumeOf(step);
  const water = waterToReckonWith(place.water, place.today);
  const lines = step.agents
    .filter((agent) => agent !== 'water')
    .map((agent) => lineFor(agent, { step, litres, water }, place));
  return { litres, volume, water, lines };
}

/** The amounts a step states that nothing on the shelf has worked out anew: two figures would contradict. */
export const usualAmounts = ({ amounts }: Mixed, { lines, volume }: StepMix): readonly Amount[] => {
  const worked = lines.filter(({ amount }) => amount !== null);
  const names: readonly string[] = worked.flatMap(({ agent }) => [agent, statedName(agent)]);
  const saysLiquid = volume === 'made up' && worked.some(({ isNeat }) => !isNeat);
  return amounts.filter(({ agent }) => !names.includes(agent) && !(saysLiquid && agent === madeUp));
};
