import cautionTable from '../../../data/wash/cautions.json' with { type: 'json' };
import { done, type Result, refused } from '../../units/index.ts';
import { type DyePart, dyePart } from './dyeLimits.ts';
import { dryMassOf, findingLimits, wetMassOf } from './findingLimits.ts';
import {
  type Axis,
  type AxisValue,
  type Band,
  type Bounds,
  clash,
  meetAll,
  type PhBand,
  type Risk,
  withinOn,
  withoutLiquidWhenDry,
} from './limit.ts';
import { loosenings } from './loosenings.ts';
import { materialLimits } from './materialLimits.ts';
import { bathProblem } from './mixtures.ts';
import type { PlanFacts } from './planFacts.ts';
import { factsProblem } from './planFactsProblem.ts';
import type { ClashSide, PlanProblem } from './planProblem.ts';
import { planSteps } from './planSteps.ts';
import { bookOf, isOverridable, riskWords, stopConditions } from './rulebook.ts';
import { ruleLimits, type SourcedLimit } from './sourcedLimit.ts';
import type { NarrowBand, PlanConsent, PlanLimit, PlanSignOff, WashPlan } from './washPlan.ts';
import { wasteWaterWords } from './wasteWater.ts';

/** What the facts allow: the limits and their meet, before steps and words; each loosening recomputes it. */
interface Judgement {
  readonly limits: readonly SourcedLimit[];
  readonly bounds: Bounds;
  readonly dyes: DyePart;
  /** Rules that the owner's overrides took out. */
  readonly overridden: WashPlan['overridden'];
}

const sameValue = (a: AxisValue, b: AxisValue) => JSON.stringify(a) === JSON.stringify(b);

/** A cap binds when the plan's value is no looser than it only because of it: it equals or bounds the meet. */
function binds({ axis, value }: SourcedLimit, bounds: Bounds): boolean {
  const met = bounds[axis];
  if (sameValue(value, met)) return true;
  if (Array.isArray(value)) return value.length > 0;
  if (axis === 'bathPh' || axis === 'finalPh') {
    const [own, all] = [value as PhBand, met as PhBand];
    if (own === 'no liquid' || all === 'no liquid') return false;
    return own.least === all.least || own.most === all.most;
  }
  return false;
}

function blocked(limits: readonly SourcedLimit[]): PlanProblem | null {
  const stop = limits.find(({ axis, value }) => axis === 'method' && value === 'refuse and refer');
  if (stop === undefined) return null;
  const { rule, about, because, assumed } = stop;
  const now = assumed
    ? 'Find out whether it is so; until then it counts as so.'
    : rule === 'R34'
      ? 'Settle it with the client, or return the rug.'
      : 'Quarantine it, treat it, inspect it again; once nothing lives, note among the findings that it is ruled out.';
  return { code: 'wash-blocked', facts: { rule, about, because, now } };
}

const side = ({ rule, about, because, value }: SourcedLimit): ClashSide => {
  const { least, most } = value as Band;
  return { rule, about, because, limit: `pH ${least} to ${most}` };
};

function clashing(limits: readonly SourcedLimit[]): PlanProblem | null {
  for (const axis of ['bathPh', 'finalPh'] as const) {
    const pair = clash(limits, axis);
    if (pair !== undefined) {
      return { code: 'wash-limits-clash', facts: { axis, first: side(pair[0]), second: side(pair[1]) } };
    }
  }
  return null;
}

/** A clash that comes only from what is not known keeps the rug dry until it is found out. */
const assumedClash = (facts: PlanFacts, limits: readonly SourcedLimit[]): readonly SourcedLimit[] =>
  (['bathPh', 'finalPh'] as const).flatMap((axis) => {
    const pair = clash(limits, axis);
    if (
      pair === undefined ||
      clash(
        limits.filter(({ assumed }) => !assumed),
        axis,
      ) !== undefined
    )
      return [];
    return ruleLimits(
      bookOf(facts),
      'R40',
      'bath',
      pair.find(({ assumed }) => assumed)?.about ?? pair[0].about,
      true,
    );
  });

function tooEarly(facts: PlanFacts): PlanProblem | null {
  const { promiseHours, expectedDryingHours, overrides = [] } = facts;
  if (promiseHours === undefined || expectedDryingHours === undefined) return null;
  const earliestHours = expectedDryingHours + bookOf(facts).shop.checkHours;
  if (promiseHours >= earliestHours || overrides.some(({ rule }) => rule === 'R39')) return null;
  return { code: 'wash-promise-too-early', facts: { rule: 'R39', promiseHours, earliestHours } };
}

function narrowBands(limits: readonly SourcedLimit[], bounds: Bounds): readonly NarrowBand[] {
  return (['bathPh', 'finalPh'] as const).flatMap((axis) => {
    const band = bounds[axis];
    if (band === 'no liquid' || band.most - band.least >= 0.5) return [];
    const from = (end: 'least' | 'most') =>
      limits.find(
        (limit) =>
          limit.axis === axis && limit.value !== 'no liquid' && (limit.value as Band)[end] === band[end],
      );
    const [lower, upper] = [from('least'), from('most')];
    if (lower === undefined || upper === undefined) return [];
    return [{ axis, ...band, lowerFrom: lower.rule, upperFrom: upper.rule }];
  });
}

/** For each rule the owner sets aside, that the client is told why the rule is there. */
const toldOfOverrides = (setAside: readonly SourcedLimit[]): readonly SourcedLimit[] =>
  setAside
    .filter(
      ({ rule, because }, index) =>
        setAside.findIndex((one) => one.rule === rule && one.because === because) === index,
    )
    .map((limit): SourcedLimit => ({ ...limit, axis: 'consents', value: ['rule set aside'] }));

function consentsOf(limits: readonly SourcedLimit[]): readonly PlanConsent[] {
  const told = new Map<string, PlanConsent>();
  for (const { axis, value, rule, about, because } of limits) {
    if (axis !== 'consents') continue;
    for (const risk of value as readonly Risk[]) {
      const text = riskWords[risk].replace('{about}', about).replace('{because}', because);
      if (!told.has(text)) told.set(text, { risk, text, rule, about });
    }
  }
  return [...told.values()];
}

const signOffsOf = (
  limits: readonly SourcedLimit[],
  { signOffs = [] }: PlanFacts,
): readonly PlanSignOff[] => {
  const asked = limits.flatMap(({ axis, value, rule, because }) =>
    axis === 'signOffs'
      ? (value as Bounds['signOffs']).map((who) => ({ who, given: signOffs.includes(who), rule, because }))
      : [],
  );
  return asked.filter(({ who }, index) => asked.findIndex((one) => one.who === who) === index);
};

function judge(facts: PlanFacts): Result<Judgement, PlanProblem> {
  const wrong = factsProblem(facts);
  if (wrong !== null) return { ok: false, problem: wrong };
  const { overrides = [] } = facts;
  const forbidden = overrides.find(({ rule }) => !isOverridable(rule));
  if (forbidden !== undefined) return refused('wash-override-not-possible', { rule: forbidden.rule });
  const dyes = dyePart(facts);
  const all = [...materialLimits(facts), ...findingLimits(facts), ...dyes.limits];
  const isSetAside = ({ rule, about, overridable }: SourcedLimit): boolean =>
    overridable &&
    overrides.some((one) => one.rule === rule && (one.about === undefined || one.about.includes(about)));
  // An override lifts what a rule caps, never what the client must be told of.
  const kept = [
    ...all.filter((limit) => limit.axis === 'consents' || !isSetAside(limit)),
    ...toldOfOverrides(all.filter(isSetAside)),
  ];
  const limits = [...kept, ...assumedClash(facts, kept)];
  const stop = blocked(limits);
  if (stop !== null) return { ok: false, problem: stop };
  for (const bath of facts.plannedBaths ?? []) {
    const problem = bathProblem(facts, bath, limits);
    if (problem !== null) return { ok: false, problem };
  }
  const bounds = withoutLiquidWhenDry(meetAll(limits));
  if (!withinOn('method', bounds.method, 'dry only')) {
    const problem = clashing(limits) ?? tooEarly(facts);
    if (problem !== null) return { ok: false, problem };
  }
  const overridden = overrides.filter(
    ({ rule }) => all.some((limit) => limit.rule === rule) || rule === 'R39',
  );
  return done({ limits, bounds, dyes, overridden });
}

function planFrom(facts: PlanFacts, judgement: Judgement): WashPlan {
  const { limits, bounds, dyes, overridden } = judgement;
  const book = bookOf(facts);
  const steps = planSteps(facts, bounds);
  const used = new Set(steps.flatMap(({ stopConditions: ids }) => ids));
  const mass = dryMassOf(facts);
  const wet = steps.some((one) => one.wet);
  return {
    rulebook: book.version,
    ...(book.changes.length === 0 ? {} : { ownRules: book.changes }),
    method: bounds.method,
    bounds,
    limits: limits.map((limit): PlanLimit => ({ ...limit, binding: binds(limit, bounds) })),
    narrow: narrowBands(limits, bounds),
    dyes: dyes.verdicts,
    missingDyeTests: dyes.missing,
    steps,
    stopConditions: stopConditions.filter(({ id }) => used.has(id)),
    loosens: loosenings(facts, bounds, judge),
    consents: consentsOf(limits),
    signOffs: signOffsOf(limits, facts),
    overridden,
    cautions: [
      ...(wet ? [...cautionTable.wet, wasteWaterWords(book)] : cautionTable.dry),
      ...(wet && facts.areaM2 * book.shop.washAndRinseMinPerM2.least > bounds.wetMinutes
        ? [cautionTable.largeForItsWetMinutes]
        : []),
    ],
    basis: {
      areaM2: facts.areaM2,
      dryMassKg: mass.kg,
      dryMassFrom: mass.weighed ? 'weighed' : 'estimate from mass band',
      wetMassKg: wetMassOf(facts),
      ...(facts.expectedDryingHours === undefined ? {} : { expectedDryingHours: facts.expectedDryingHours }),
      expectedDryingFrom:
        facts.expectedDryingHours === undefined
          ? 'unknown'
          : (facts.expectedDryingFrom ?? 'estimated by hand'),
    },
  };
}

/**
 * The wash a rug can bear: method, limits with reasons and sources, ordered steps, what would loosen it,
 * and the risks its owner must agree to. What is not known counts as its most sensitive candidate.
 *
 * @param facts - what is known of the rug
 * @returns a plan that lies within every limit; a dry-only plan has dry steps
 * @refuses wash-facts-invalid, wash-override-not-possible - the facts themselves cannot be
 * @refuses wash-blocked - quarantine or the client's no
 * @refuses wash-mixture-forbidden, wash-agent-forbidden, wash-bath-ph-outside - a bath somebody means to mix
 * @refuses wash-limits-clash - two limits leave no pH between them
 * @refuses wash-promise-too-early - dry and checked later than promised
 * @source data/wash/rules.json, data/wash/fibres.json, data/wash/dyeTests.json, each row with its own source
 */
export function planWash(facts: PlanFacts): Result<WashPlan, PlanProblem> {
  const judgement = judge(facts);
  return judgement.ok ? done(planFrom(facts, judgement.value)) : judgement;
}

/** An axis on which a later plan is tighter than an earlier one. */
export interface Tightening {
  readonly axis: Axis;
  readonly from: AxisValue;
  readonly to: AxisValue;
}

/**
 * Axes on which a plan allows less than the one before: what voids an agreement to the earlier one.
 * A signature that was asked for and given does not count.
 *
 * @source none: rule of this project
 */
export function tightens(before: WashPlan, after: WashPlan): readonly Tightening[] {
  return (Object.keys(after.bounds) as Axis[]).flatMap((axis) => {
    if (axis === 'signOffs') return [];
    const [from, to] = [before.bounds[axis], after.bounds[axis]];
    return withinOn(axis, from as never, to as never) ? [] : [{ axis, from, to }];
  });
}
