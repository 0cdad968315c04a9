import { type Agent, agents, type Method, methods, type Signatory, signatories } from './planFacts.ts';

/** Harshest first. */
export const agitations = [
  'rotary',
  'brush',
  'brush with the pile',
  'gentle by hand',
  'sponge one way',
  'blot only',
  'none',
] as const;
export type Agitation = (typeof agitations)[number];

/** Harshest first. */
export const extractions = [
  'centrifuge',
  'squeegee and vacuum',
  'vacuum under a screen',
  'blot with cloths',
] as const;
export type Extraction = (typeof extractions)[number];

/** Least careful first. */
export const dryingPostures = ['hung', 'flat', 'flat, face down'] as const;
export type DryingPosture = (typeof dryingPostures)[number];

export const requiredActs = [
  'acid pre-soak',
  'acid pre-treatment',
  're-test after the pre-treatment',
  'fast extraction',
  'acid rinse',
  'weaker acid, tested again',
  'agree a corrective aim',
  'urine pre-flush',
  'test at the urine place',
  'air to the back',
  'support on a board',
  'secure edges',
  'secure weak places',
  'test the repair yarn',
  'block to intake size',
  'take off the lining',
  'quarantine',
  'separate wash line',
  'disinfectant by its label',
  'laboratory test first',
  'contain the wash water',
  'longer dusting',
  'extra rinse',
  'wide gap to dry',
  'team lifting plan',
  'flat bed',
  'photograph the damage',
  'tell the client',
  'ventilate',
] as const;
export type RequiredAct = (typeof requiredActs)[number];

export const forbiddenActs = [
  'soak',
  'hang',
  'fold',
  'roll',
  'beat',
  'machine dusting',
  'wet brushing',
  'share the wash floor',
] as const;
export type ForbiddenAct = (typeof forbiddenActs)[number];

export const protections = ['gloves', 'goggles', 'respirator', 'apron', 'gas warning'] as const;
export type Protection = (typeof protections)[number];

/** Two agents that must not meet on this rug without a full rinse between. */
export const forbiddenPairs = ['hydrogen peroxide + ammonia'] as const;
export type ForbiddenPair = (typeof forbiddenPairs)[number];

/** Risks a client must be told of; their words stand in data/wash/risks.json. */
export const risks = [
  'bleeding',
  'slow bleeding',
  'surface colour',
  'acid change',
  'colour run',
  'urine',
  'viscose',
  'silk',
  'browning',
  'latex',
  'felt',
  'dry rot',
  'weak foundation',
  'open damage',
  'open edges',
  'old repair',
  'painted colour',
  'lightening',
  'corroded brown',
  'ripple',
  'lining',
  'category 3 water',
  'old insecticide',
  'refused test',
  'damage during work',
  'rule set aside',
] as const;
export type Risk = (typeof risks)[number];

/** Both ends included. */
export interface Band {
  readonly least: number;
  readonly most: number;
}

/** `'no liquid'` is the bottom of a pH axis: no liquid at all may stay on the rug. */
export type PhBand = Band | 'no liquid';

/** What may be done to a rug: one value on every axis, the most restrictive of all limits. */
export interface Bounds {
  /** The wettest method still allowed. */
  readonly method: Method;
  /** pH of every liquid, acid treatments and the last rinse apart. */
  readonly bathPh: PhBand;
  /** pH of acid treatments and of what the rug is left at. */
  readonly finalPh: PhBand;
  readonly temperatureC: number;
  /** Largest step between two liquids [K]. */
  readonly temperatureStepK: number;
  readonly agitation: Agitation;
  /** From first wetting to the end of extraction [min]. */
  readonly wetMinutes: number;
  /** In the detergent bath [min]. */
  readonly bathMinutes: number;
  /** Concentrate in the bath [g/L]. */
  readonly strengthGPerL: number;
  /** From first wetting to dry [h]. */
  readonly totalWetHours: number;
  readonly extraction: Extraction;
  readonly dryingPosture: DryingPosture;
  readonly dryingTemperatureC: number;
  /** At least so many people. */
  readonly people: number;
  readonly forbiddenAgents: readonly Agent[];
  readonly forbiddenPairs: readonly ForbiddenPair[];
  readonly forbiddenActs: readonly ForbiddenAct[];
  readonly requiredActs: readonly RequiredAct[];
  readonly protection: readonly Protection[];
  readonly consents: readonly Risk[];
  readonly signOffs: readonly Signatory[];
}
export type Axis = keyof Bounds;
export type AxisValue = Bounds[Axis];

/** One cap on one axis. */
export type Limit = { readonly [A in Axis]: { readonly axis: A; readonly value: Bounds[A] } }[Axis];

interface Order<Value> {
  readonly top: Value;
  readonly meet: (a: Value, b: Value) => Value;
  /** Whether a is as tight as b or tighter. */
  readonly within: (a: Value, b: Value) => boolean;
}

const ordered = <Word extends string>(fromLoosest: readonly [Word, ...Word[]]): Order<Word> => ({
  top: fromLoosest[0],
  meet: (a, b) => (fromLoosest.indexOf(a) >= fromLoosest.indexOf(b) ? a : b),
  within: (a, b) => fromLoosest.indexOf(a) >= fromLoosest.indexOf(b),
});

const cap = (top: number): Order<number> => ({ top, meet: Math.min, within: (a, b) => a <= b });

const floor = (top: number): Order<number> => ({ top, meet: Math.max, within: (a, b) => a >= b });

/** Union in the vocabulary's order, so that equal sets are equal lists. */
const all = <Word extends string>(vocabulary: readonly Word[]): Order<readonly Word[]> => ({
  top: [],
  meet: (a, b) =>
    a.length === 0
      ? b
      : b.length === 0
        ? a
        : vocabulary.filter((word) => a.includes(word) || b.includes(word)),
  within: (a, b) => b.every((word) => a.includes(word)),
});

const phBand: Order<PhBand> = {
  top: { least: 0, most: 14 },
  meet: (a, b) => {
    if (a === 'no liquid' || b === 'no liquid') return 'no liquid';
    const met = { least: Math.max(a.least, b.least), most: Math.min(a.most, b.most) };
    return met.least <= met.most ? met : 'no liquid';
  },
  within: (a, b) => a === 'no liquid' || (b !== 'no liquid' && a.least >= b.least && a.most <= b.most),
};

/**
 * The order of every axis. Tops are what a workshop could at most mean, not what any rug bears:
 * the fibre table always lies below them.
 */
const orders: { readonly [A in Axis]: Order<Bounds[A]> } = {
  method: ordered(methods),
  bathPh: phBand,
  finalPh: phBand,
  temperatureC: cap(40),
  temperatureStepK: cap(20),
  agitation: ordered(agitations),
  wetMinutes: cap(120),
  bathMinutes: cap(60),
  strengthGPerL: cap(20),
  totalWetHours: cap(168),
  extraction: ordered(extractions),
  dryingPosture: ordered(dryingPostures),
  dryingTemperatureC: cap(35),
  people: floor(1),
  forbiddenAgents: all(agents),
  forbiddenPairs: all(forbiddenPairs),
  forbiddenActs: all(forbiddenActs),
  requiredActs: all(requiredActs),
  protection: all(protections),
  consents: all(risks),
  signOffs: all(signatories),
};

export const axes = Object.keys(orders) as readonly Axis[];

const each = (value: <A extends Axis>(axis: A) => Bounds[A]): Bounds =>
  Object.fromEntries(axes.map((axis) => [axis, value(axis)])) as unknown as Bounds;

/** No limit at all: the top of the order. */
export const noLimit: Bounds = each((axis) => orders[axis].top);

/** The tighter of two values on one axis; for sets both together, for bands what lies in both. */
export const meetOn = <A extends Axis>(axis: A, a: Bounds[A], b: Bounds[A]): Bounds[A] =>
  orders[axis].meet(a, b);

/** Whether a is as tight as b, or tighter, on one axis. */
export const withinOn = <A extends Axis>(axis: A, a: Bounds[A], b: Bounds[A]): boolean =>
  orders[axis].within(a, b);

/**
 * The greatest bounds that satisfy both: commutative, associative, idempotent, `noLimit` neutral.
 *
 * @returns on every axis the tighter value; a pH axis whose bands do not touch becomes `'no liquid'`
 * @source none: rule of this project (limits combine by the most restrictive)
 */
export const meet = (a: Bounds, b: Bounds): Bounds => each((axis) => meetOn(axis, a[axis], b[axis]));

/** Whether a allows nothing that b forbids. */
export const within = (a: Bounds, b: Bounds): boolean =>
  axes.every((axis) => withinOn(axis, a[axis], b[axis]));

/**
 * All limits together.
 *
 * @param limits - any number of single caps, in any order
 * @returns the bounds a plan must live in
 * @source none: rule of this project
 */
export function meetAll(limits: readonly Limit[]): Bounds {
  const met = { ...noLimit } as { -readonly [A in Axis]: Bounds[A] };
  const tighten = <A extends Axis>(axis: A, value: Bounds[A]) => {
    met[axis] = orders[axis].meet(met[axis], value);
  };
  for (const { axis, value } of limits) tighten<Axis>(axis, value);
  return met;
}

/**
 * A plan that may use no water has no pH, no bath and no wet minutes; saying so keeps the order of
 * plans true when a test stops covering a bath.
 *
 * @source none: rule of this project
 */
export function withoutLiquidWhenDry(bounds: Bounds): Bounds {
  if (!withinOn('method', bounds.method, 'dry only')) return bounds;
  return { ...bounds, bathPh: 'no liquid', finalPh: 'no liquid', wetMinutes: 0, bathMinutes: 0 };
}

/**
 * The two limits that leave no pH between them.
 *
 * @returns the limit with the highest lower end and the one with the lowest upper end, when they do not touch
 * @source none: rule of this project
 */
export function clash<L extends Limit>(
  limits: readonly L[],
  axis: 'bathPh' | 'finalPh',
): readonly [L, L] | undefined {
  let lower: readonly [L, number] | undefined;
  let upper: readonly [L, number] | undefined;
  for (const limit of limits) {
    if (limit.axis !== axis || limit.value === 'no liquid') continue;
    const { least, most } = limit.value as Band;
    if (lower === undefined || least > lower[1]) lower = [limit, least];
    if (upper === undefined || most < upper[1]) upper = [limit, most];
  }
  return lower !== undefined && upper !== undefined && lower[1] > upper[1] ? [lower[0], upper[0]] : undefined;
}
