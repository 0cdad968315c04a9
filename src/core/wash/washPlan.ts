import type { Axis, AxisValue, Bounds } from './limit.ts';
import type {
  Agent,
  ColourKind,
  DryingHoursFrom,
  Grade,
  Method,
  RuleNumber,
  Side,
  Signatory,
  TestLiquid,
} from './planFacts.ts';

/** `R05`, or a row of another table: `fibre silk`, `dye watch`, `test coverage`, `mark hole`. */
export type RuleId = RuleNumber | `fibre ${string}` | `dye ${string}` | `test ${string}` | `mark ${string}`;

/** A key of data/references.json. */
export type SourceKey = string;

/** One cap on one axis, with the finding or table row that sets it. */
export interface PlanLimit {
  readonly axis: Axis;
  readonly value: AxisValue;
  readonly rule: RuleId;
  /** One sentence a client can read. */
  readonly because: string;
  readonly source: SourceKey;
  /** The finding, colour or part it comes from. */
  readonly about: string;
  /** True when the fact is unknown and its most sensitive candidate was assumed. */
  readonly assumed: boolean;
  /** True when the plan's value on this axis is this one. */
  readonly binding: boolean;
  readonly overridable: boolean;
}

export const dyeStandings = ['stable', 'watch', 'controlled', 'do not immerse', 'unknown'] as const;
export type DyeStanding = (typeof dyeStandings)[number];

export const dyeTraits = ['surface colour', 'acid sensitive', 'thin margin', 'slow bleeder'] as const;
export type DyeTrait = (typeof dyeTraits)[number];

/** What the tests say of one colour. */
export interface ColourVerdict {
  readonly colour: string;
  readonly name: string;
  readonly kind: ColourKind;
  readonly standing: DyeStanding;
  readonly traits: readonly DyeTrait[];
  /** The reading that decides the standing; absent where nothing was graded. */
  readonly binding?: { readonly liquid: TestLiquid; readonly side: Side; readonly grade: Grade };
}

/** A test that must still be made, with the conditions to make it under. */
export interface RequiredDyeTest {
  readonly colour: string;
  readonly name: string;
  readonly side: Side;
  readonly liquid: TestLiquid;
  readonly atUrinePlace: boolean;
  readonly agents: readonly Agent[];
  readonly strengthGPerL?: number;
  readonly pH?: number;
  readonly temperatureC?: number;
  readonly minutes?: number;
  /** Why this one: the rule or forecast that asks for it. */
  readonly because: string;
  /** Whether wet work waits for it; otherwise its absence only tightens the caps. */
  readonly blocksWetWork: boolean;
}

export interface Amount {
  readonly agent: string;
  readonly least: number;
  readonly most: number;
  readonly unit: 'g' | 'mL' | 'L' | 'kg' | 'min';
  readonly source: SourceKey;
}

export interface StopCondition {
  readonly id: string;
  readonly when: string;
  readonly rescue: string;
  readonly source: SourceKey;
}

export const stepKinds = [
  'laboratory test',
  'dusting',
  'stabilise',
  'pre-spot',
  'urine pre-flush',
  'acid pre-treatment',
  're-test',
  'wet out',
  'stain treatment',
  'wash',
  'rinse',
  'second wash',
  'acid rinse',
  'extract',
  'fringe',
  'set pile and block',
  'dry',
  'dry cleaning',
] as const;
export type StepKind = (typeof stepKinds)[number];

export interface PlanStep {
  readonly order: number;
  readonly kind: StepKind;
  readonly wet: boolean;
  /** What to do, in one or two sentences. */
  readonly what: string;
  readonly agents: readonly Agent[];
  readonly amounts: readonly Amount[];
  readonly targetPh?: { readonly least: number; readonly most: number };
  readonly temperatureC?: { readonly least: number; readonly most: number };
  readonly dwellMinutes?: number;
  readonly tools: readonly string[];
  readonly protection: readonly string[];
  readonly people: number;
  readonly stopConditions: readonly string[];
  readonly log: readonly string[];
  readonly source: SourceKey;
  /** The stain a spotting step is for, and its place in the golden order. */
  readonly stain?: string;
  readonly golden?: string;
}

/** What to find out or do, and what the plan would then allow. */
export interface Loosening {
  readonly find: string;
  readonly fact: string;
  readonly assumed: string;
  readonly favourable: string;
  readonly allows: readonly {
    readonly axis: Axis | 'steps';
    readonly from: AxisValue;
    readonly to: AxisValue;
  }[];
}

/** A risk of this rug the client must be told and agree to. */
export interface PlanConsent {
  readonly risk: string;
  readonly text: string;
  readonly rule: RuleId;
  readonly about: string;
}

export interface PlanSignOff {
  readonly who: Signatory;
  readonly given: boolean;
  readonly rule: RuleId;
  readonly because: string;
}

/** Two limits leave less than half a pH: it can be worked, with care. */
export interface NarrowBand {
  readonly axis: 'bathPh' | 'finalPh';
  readonly least: number;
  readonly most: number;
  readonly lowerFrom: RuleId;
  readonly upperFrom: RuleId;
}

/** One value of the rulebook as this workshop's owner set it. */
export interface OwnRule {
  readonly address: string;
  readonly value: unknown;
}

export interface WashPlan {
  readonly rulebook: string;
  /** Where the rulebook is not the delivered one: what the workshop set itself. */
  readonly ownRules?: readonly OwnRule[];
  readonly method: Method;
  readonly bounds: Bounds;
  readonly limits: readonly PlanLimit[];
  readonly narrow: readonly NarrowBand[];
  readonly dyes: readonly ColourVerdict[];
  readonly missingDyeTests: readonly RequiredDyeTest[];
  readonly steps: readonly PlanStep[];
  readonly stopConditions: readonly StopCondition[];
  readonly loosens: readonly Loosening[];
  readonly consents: readonly PlanConsent[];
  readonly signOffs: readonly PlanSignOff[];
  readonly overridden: readonly { readonly rule: RuleNumber; readonly reason: string }[];
  readonly cautions: readonly string[];
  /** What the amounts were worked out from; a mass that was not weighed is named an estimate. */
  readonly basis: {
    readonly areaM2: number;
    readonly dryMassKg: number;
    readonly dryMassFrom: 'weighed' | 'estimate from mass band';
    readonly wetMassKg: number;
    readonly expectedDryingHours?: number;
    readonly expectedDryingFrom: DryingHoursFrom | 'unknown';
  };
}
