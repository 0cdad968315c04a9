import type { Axis, Band, Bounds, RequiredAct } from './limit.ts';
import type { Agent, Method } from './planFacts.ts';
import type { SpotDose } from './spotAmounts.ts';
import type { RuleId, SourceKey, StepKind } from './washPlan.ts';

/** A reason with the caps it sets. */
export interface RuleCase {
  readonly because: string;
  readonly limits: Partial<Bounds>;
  /** Limits that this workshop's owner set: they are printed as its setting, whatever the row's source. */
  readonly own?: readonly Axis[];
}

/** What a finding forbids, caps or requires (data/wash/rules.json). */
export interface RuleRow {
  readonly id: RuleId;
  readonly title: string;
  readonly source: SourceKey;
  readonly where?: string;
  readonly override: boolean;
  readonly cases: Readonly<Record<string, RuleCase>>;
}

/** Caps of a fibre, and what to aim for within them (data/wash/fibres.json). */
export interface FibreRow extends RuleCase {
  readonly source: SourceKey;
  readonly bathAim?: Band;
  readonly finalAim?: Band;
}

/** Caps of a class of dye reading (data/wash/dyeTests.json). */
export interface DyeRow extends RuleCase {
  readonly source: SourceKey;
}

/** Two groups of agents that never meet; an empty second group: the first alone is enough (data/wash/mixtures.json). */
export interface Mixture {
  readonly id: string;
  readonly a: readonly Agent[];
  readonly b: readonly Agent[];
  readonly hazard: string;
  readonly source: SourceKey;
  readonly belowPh?: number;
  readonly abovePh?: number;
  readonly ifFinding?: 'urine';
  readonly ifFibre?: 'protein' | 'cellulosic';
  readonly ifStain?: 'rust';
  readonly ifHeatedDrying?: true;
  /** Dangerous in a closed vessel, not in the open rug. */
  readonly inVesselOnly?: true;
  /** Dangerous where it is left in the rug, not in the bath that holds it. */
  readonly inRugOnly?: true;
}

/** One thing done to a stain of a class (data/wash/stains.json). */
export interface Treatment {
  readonly phase: 'pre-spot' | 'stain treatment';
  readonly golden: string;
  readonly what: string;
  readonly agents: readonly Agent[];
  readonly dwellMinutes: number;
  readonly spotterTest: boolean;
  readonly ph?: Band;
  readonly mostC?: number;
  readonly strength?: string;
  /** How its liquid is made up. */
  readonly dose?: SpotDose;
}

export interface StainRow {
  readonly class: string;
  readonly never: readonly string[];
  /** Why it is worked so, in a sentence. */
  readonly chemistry: string;
  readonly treatments: readonly Treatment[];
  readonly note: string;
  readonly source: SourceKey;
}

/** One step of the wash, for the methods it belongs to (data/wash/steps.json). */
export interface StepRow {
  readonly kind: StepKind;
  readonly methods: readonly Method[];
  readonly wet: boolean;
  readonly what: string;
  readonly agents: readonly Agent[];
  readonly amounts: readonly string[];
  readonly tools: readonly string[];
  readonly protection: readonly string[];
  readonly stops: readonly string[];
  readonly log: readonly string[];
  readonly source: SourceKey;
  readonly acts?: readonly RequiredAct[];
  readonly unlessActs?: readonly RequiredAct[];
  readonly ph?: 'bath' | 'final';
  readonly warm?: true;
  readonly dwellMinutes?: number;
}

/** What to do when a stop condition comes up. */
export interface RescueCard {
  readonly title: string;
  readonly do: readonly string[];
  /** Instead, on a rug with a colour that acid changes. */
  readonly doAcidSensitive?: readonly string[];
  readonly never: readonly string[];
  readonly source: SourceKey;
}
