import { done, type Problem, type Result, refused } from '../../units/index.ts';
import {
  asPoured,
  type DoseProblem,
  dose,
  type Product,
  type ProductProblem,
  type ReckonedWater,
  type SupplyWater,
  sharesOf,
  usualDoseUncertainty,
  waterToReckonWith,
} from '../chemistry/index.ts';
import type { Agent } from './planFacts.ts';
import { isAcid, isAlkaline } from './rulebook.ts';
import type { PlanStep } from './washPlan.ts';

/** One container of a product; a lot past its day is not used. */
export interface StockLot {
  readonly lot: string;
  readonly amount: number;
  /** Last day of use. */
  readonly expires?: string | undefined;
}

/** A product on the shelf, or taken off it. */
export interface StockedProduct extends Product {
  readonly id: string;
  /** Which agents of the plans it is used as. */
  readonly serves: readonly Agent[];
  readonly unit: 'g' | 'mL';
  readonly lots: readonly StockLot[];
  /** Why it was taken off the shelf; null while it stands there. */
  readonly removed: string | null;
}

/** What there is to mix with, and when. */
export interface MixingPlace {
  readonly shelf: readonly StockedProduct[];
  readonly water: SupplyWater | null;
  /** `2026-11-25` */
  readonly today: string;
}

export type MixProblem =
  | DoseProblem
  | ProductProblem
  | Problem<'agent-not-on-shelf', { readonly agent: string }>
  | Problem<'agent-off-shelf', { readonly agent: string; readonly name: string; readonly why: string }>
  | Problem<'lot-expired', { readonly name: string; readonly lot: string; readonly expires: string }>
  | Problem<
      'stock-short',
      { readonly name: string; readonly have: number; readonly need: number; readonly unit: string }
    >;

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
  readonly targetPh: number | null;
  readonly problems: readonly MixProblem[];
}

/** A step's bath mixed from this shelf with this water. */
export interface StepMix {
  /** Water of the bath [L]; 1 where the step states none: the amounts are then for each litre. */
  readonly litres: number;
  readonly perLitre: boolean;
  readonly water: ReckonedWater;
  readonly lines: readonly MixLine[];
}

const isFit =
  (today: string) =>
  ({ expires }: StockLot): boolean =>
    expires === undefined || expires >= today;

/** The lot to use first: the one that expires first of those still in date and not empty. */
const firstLot = (lots: readonly StockLot[], today: string): StockLot | undefined =>
  [...lots]
    .filter((lot) => isFit(today)(lot) && lot.amount > 0)
    .sort((a, b) => ((a.expires ?? '9999') < (b.expires ?? '9999') ? -1 : 1))[0];

/**
 * The product that serves as an agent, with the lot to take.
 *
 * @param agent - of a plan's step
 * @refuses agent-off-shelf - the only product for it was taken off the shelf
 * @refuses agent-not-on-shelf - none was ever shelved for it
 * @refuses lot-expired - there are only lots past their day
 * @source none: rule of this project
 */
export function productFor(
  agent: Agent,
  { shelf, today }: Pick<MixingPlace, 'shelf' | 'today'>,
): Result<{ readonly product: StockedProduct; readonly lot: StockLot | null }, MixProblem> {
  const serving = shelf.filter(({ serves }) => serves.includes(agent));
  const there = serving.filter(({ removed }) => removed === null);
  const [gone] = serving;
  if (there.length === 0) {
    return gone === undefined
      ? refused('agent-not-on-shelf', { agent })
      : refused('agent-off-shelf', { agent, name: gone.name, why: gone.removed ?? '' });
  }
  for (const product of there) {
    const lot = firstLot(product.lots, today);
    if (lot !== undefined) return done({ product, lot });
  }
  const expired = there.flatMap(({ name, lots }) =>
    lots.flatMap(({ lot, expires, amount }) =>
      amount > 0 && expires !== undefined && expires < today ? [{ name, lot, expires }] : [],
    ),
  )[0];
  const [product] = there;
  if (expired !== undefined || product === undefined) {
    return refused('lot-expired', expired ?? { name: agent, lot: '', expires: '' });
  }
  return done({ product, lot: null });
}

interface Bath {
  readonly step: PlanStep;
  readonly litres: number;
  readonly water: ReckonedWater;
}

type Grams = { readonly computed: number; readonly least: number; readonly most: number };

/** Grams of a product to the middle of the step's band, over all the water may be. */
function gramsToPh(
  product: Product,
  { step, litres, water }: Bath,
  target: number,
): Result<Grams, MixProblem> {
  const shares = sharesOf(product);
  if (!shares.ok) return shares;
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

/** Grams the plan already states for an agent, by area and what the dyes were tested with. */
function gramsStated(step: PlanStep, agent: Agent): Grams | null {
  const name = agent === 'neutral detergent' ? 'detergent concentrate' : agent;
  const stated = step.amounts.find((one) => one.agent === name && one.unit === 'g');
  return stated === undefined ? null : { computed: stated.least, least: stated.least, most: stated.most };
}

const isDosedToPh = (agent: Agent): boolean => isAcid(agent) || isAlkaline(agent);

const middle = ({ least, most }: { readonly least: number; readonly most: number }) => (least + most) / 2;

/** Pure citric acid and the like, for a shelf that has none: the plan still says how much. */
const pureOf: { readonly [A in Agent]?: string } = {
  'citric acid': 'citric acid, anhydrous',
  'acetic acid': 'acetic acid',
  'formic acid': 'formic acid',
  'sodium carbonate': 'sodium carbonate',
  'sodium bicarbonate': 'sodium bicarbonate',
  ammonia: 'ammonia',
};

const pureProduct = (agent: Agent): Product | null => {
  const chemical = pureOf[agent];
  if (chemical === undefined) return null;
  const parts = [{ kind: 'acid', chemical, strength: { value: 100, unit: '% w/w' } }] as const;
  return { name: `pure ${chemical}`, parts };
};

function lineFor(agent: Agent, bath: Bath, place: MixingPlace): MixLine {
  const found = productFor(agent, place);
  const product = found.ok ? found.value.product : pureProduct(agent);
  const targetPh = isDosedToPh(agent) && bath.step.targetPh !== undefined ? middle(bath.step.targetPh) : null;
  const problems: MixProblem[] = found.ok ? [] : [found.problem];
  const held = found.ok ? found.value : null;
  const none: MixLine = {
    agent,
    product: held === null ? null : { id: held.product.id, name: held.product.name },
    lot: held?.lot?.lot ?? null,
    ...{ amount: null, targetPh, problems },
  };
  const stated = gramsStated(bath.step, agent);
  const needed =
    targetPh !== null && product !== null
      ? gramsToPh(product, bath, targetPh)
      : stated === null
        ? null
        : done(stated);
  if (needed === null) return none;
  if (!needed.ok) return { ...none, problems: [...problems, needed.problem] };
  const unit = held?.product.unit ?? 'g';
  const poured = (grams: number) => (held === null ? done(grams) : asPoured(held.product, unit, grams));
  const [least, most, computed] = [
    poured(needed.value.least),
    poured(needed.value.most),
    poured(needed.value.computed),
  ];
  if (!least.ok) return { ...none, problems: [...problems, least.problem] };
  if (!most.ok || !computed.ok) return none;
  const amount = { least: least.value, most: most.value, computed: computed.value, unit };
  const have =
    held === null
      ? null
      : held.product.lots.filter(isFit(place.today)).reduce((sum, lot) => sum + lot.amount, 0);
  if (held !== null && have !== null && have < amount.least) {
    problems.push({
      code: 'stock-short',
      facts: { name: held.product.name, have, need: amount.least, unit },
    });
  }
  return { ...none, amount, problems };
}

const litresOf = ({ amounts }: PlanStep): number | null =>
  amounts.find(({ unit, most }) => unit === 'L' && most > 0)?.most ?? null;

/**
 * What to measure out for one step from this shelf with this water: to the middle of the step's pH band
 * where an acid or alkali sets it, else what the plan states by area.
 *
 * @param step - of a plan
 * @param place - shelf, supply water and day
 * @returns amounts of the product itself, in its own unit, with the range that unknown water and strength give
 * @source crc-handbook constants through dose; amounts by area are workshop settings (data/wash/shopFacts.json)
 */
export function stepMix(step: PlanStep, place: MixingPlace): StepMix {
  const stated = litresOf(step);
  const bath = { step, litres: stated ?? 1, water: waterToReckonWith(place.water, place.today) };
  const lines = step.agents.filter((agent) => agent !== 'water').map((agent) => lineFor(agent, bath, place));
  return { litres: bath.litres, perLitre: stated === null, water: bath.water, lines };
}

/** Whether shelf and water decide an amount of a step: the usual figure beside it would contradict. */
export const isMixedAnew = (
  { targetPh, agents }: PlanStep,
  { agent }: PlanStep['amounts'][number],
): boolean => targetPh !== undefined && agents.some((one) => one === agent);
