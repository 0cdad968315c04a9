import dyeTestTable from '../../../data/wash/dyeTests.json' with { type: 'json' };
import fibreTable from '../../../data/wash/fibres.json' with { type: 'json' };
import mixtureTable from '../../../data/wash/mixtures.json' with { type: 'json' };
import riskTable from '../../../data/wash/risks.json' with { type: 'json' };
import rulebookTable from '../../../data/wash/rulebook.json' with { type: 'json' };
import ruleTable from '../../../data/wash/rules.json' with { type: 'json' };
import shopTable from '../../../data/wash/shopFacts.json' with { type: 'json' };
import stopTable from '../../../data/wash/stopConditions.json' with { type: 'json' };
import type { Bounds, Risk } from './limit.ts';
import type { Agent, Construction, Fibre, Method, RuleNumber } from './planFacts.ts';
import { ruleIds } from './planFacts.ts';
import type { RuleId, SourceKey, StopCondition } from './washPlan.ts';

/** A reason with the caps it sets. */
export interface RuleCase {
  readonly because: string;
  readonly limits: Partial<Bounds>;
}

interface RuleRow {
  readonly id: RuleId;
  readonly title: string;
  readonly source: SourceKey;
  readonly override: boolean;
  readonly cases: Readonly<Record<string, RuleCase>>;
}

interface FibreRow extends RuleCase {
  readonly source: SourceKey;
  readonly bathAim?: { readonly least: number; readonly most: number };
  readonly finalAim?: { readonly least: number; readonly most: number };
}

export const rulebookVersion = rulebookTable.version;
/** Every rule and mark row of data/wash/rules.json. */
export const ruleRows = ruleTable.rows as unknown as readonly RuleRow[];
export const fibreLimits = fibreTable.pileOrBody as unknown as { readonly [F in Fibre]?: FibreRow };
export const backingLimits = fibreTable.weftOrBacking as unknown as { readonly [F in Fibre]?: FibreRow };
export const unknownPile = fibreTable.unknownPile as readonly Fibre[];
export const unknownFoundation = fibreTable.unknownFoundation as readonly Fibre[];
export const proteinFibres = fibreTable.protein as readonly Fibre[];
export const bastFibres = fibreTable.bast as readonly Fibre[];
export const dyeTestSettings = dyeTestTable;
export const dyeRows = dyeTestTable.rows as unknown as Readonly<
  Record<string, RuleCase & { readonly source: SourceKey }>
>;
export const shopFacts = shopTable;
export const riskWords = riskTable.rows satisfies { readonly [R in Risk]: string };
export const stopConditions = stopTable.rows as readonly StopCondition[];

/** Whether an agent gives off sulfur dioxide in an acid. */
export const isSulfite = (agent: Agent): boolean => mixtureTable.sulfites.some((one) => one === agent);
export const isAcid = (agent: Agent): boolean => mixtureTable.acids.some((one) => one === agent);
/** Below this pH an acid with a sulfite still wants air [pH]. */
export const ventilateBelowPh = mixtureTable.sulfiteVentilateBelowPh;

/** What to do when a stop condition comes up. */
export interface RescueCard {
  readonly title: string;
  readonly do: readonly string[];
  /** Instead, on a rug with a colour that acid changes. */
  readonly doAcidSensitive?: readonly string[];
  readonly never: readonly string[];
  readonly source: SourceKey;
}
export const rescueCards = stopTable.rescueCards as Readonly<Record<string, RescueCard>>;

/** A row of the rule table; a rule without one is a bug of the data, held by a test. */
export function ruleRow(id: RuleId): RuleRow {
  const row = ruleRows.find((one) => one.id === id);
  if (row === undefined) throw new Error(`rule ${id} is not in data/wash/rules.json`);
  return row;
}

/**
 * Whether the owner may take responsibility for a rule.
 *
 * @source none: rule of this project; never for forbidden mixtures, missing consent or quarantine
 */
export const isOverridable = (rule: RuleNumber): boolean => ruleIds.includes(rule) && ruleRow(rule).override;

/**
 * What a square metre of a construction usually weighs, dry.
 *
 * @returns the band [kg/m²], or null for an unknown construction
 * @source common-practice (data/wash/shopFacts.json)
 */
export function massBandOf(
  construction: Construction,
): { readonly least: number; readonly most: number } | null {
  return construction === 'unknown' ? null : shopTable.massKgPerM2[construction];
}

/** Water a method takes, by step [L/m²]; none for methods without water. */
export const waterLPerM2 = (method: Method, use: string): number => {
  const uses = (shopTable.waterLPerM2 as Readonly<Record<string, Readonly<Record<string, number>>>>)[method];
  return uses?.[use] ?? 0;
};
