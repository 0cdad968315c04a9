import type { Problem } from '../../units/index.ts';
import type { Axis } from './limit.ts';
import type { Agent, RuleNumber } from './planFacts.ts';
import type { RuleId } from './washPlan.ts';

/** One side of a clash: the limit in words and where it comes from. */
export interface ClashSide {
  readonly rule: RuleId;
  readonly about: string;
  readonly because: string;
  readonly limit: string;
}

export type LimitsClash = Problem<
  'wash-limits-clash',
  { readonly axis: Axis; readonly first: ClashSide; readonly second: ClashSide }
>;
/** A rule stops the rug altogether: quarantine, missing consent, … */
export type WashBlocked = Problem<
  'wash-blocked',
  { readonly rule: RuleId; readonly about: string; readonly because: string; readonly now: string }
>;
export type PromiseTooEarly = Problem<
  'wash-promise-too-early',
  { readonly rule: 'R39'; readonly promiseHours: number; readonly earliestHours: number }
>;
export type MixtureForbidden = Problem<
  'wash-mixture-forbidden',
  {
    readonly rule: RuleId | 'mixture';
    readonly bath: string;
    readonly agents: readonly string[];
    readonly hazard: string;
  }
>;
export type AgentForbidden = Problem<
  'wash-agent-forbidden',
  {
    readonly bath: string;
    readonly agent: Agent;
    readonly rule: RuleId;
    readonly about: string;
    readonly because: string;
  }
>;
/** A bath somebody means to mix stands outside what a fibre or dye bears, whatever the tests say. */
export type BathPhOutside = Problem<
  'wash-bath-ph-outside',
  {
    readonly bath: string;
    /** Null while it is not known; it then counts as the worst. */
    readonly pH: number | null;
    readonly least: number;
    readonly most: number;
    readonly rule: RuleId;
    readonly about: string;
    readonly because: string;
  }
>;
export type OverrideNotPossible = Problem<'wash-override-not-possible', { readonly rule: RuleNumber }>;
export type PlanFactsInvalid = Problem<
  'wash-facts-invalid',
  { readonly faults: readonly { readonly field: string; readonly value: string; readonly allowed: string }[] }
>;

export type PlanProblem =
  | LimitsClash
  | WashBlocked
  | PromiseTooEarly
  | MixtureForbidden
  | AgentForbidden
  | BathPhOutside
  | OverrideNotPossible
  | PlanFactsInvalid;
