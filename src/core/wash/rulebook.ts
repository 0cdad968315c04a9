import rinseTable from '../../../data/chemistry/rinsePace.json' with { type: 'json' };
import sewerTable from '../../../data/chemistry/sewer.json' with { type: 'json' };
import dyeTestTable from '../../../data/wash/dyeTests.json' with { type: 'json' };
import fibreTable from '../../../data/wash/fibres.json' with { type: 'json' };
import flowTable from '../../../data/wash/flows.json' with { type: 'json' };
import mixtureTable from '../../../data/wash/mixtures.json' with { type: 'json' };
import residueTable from '../../../data/wash/residues.json' with { type: 'json' };
import riskTable from '../../../data/wash/risks.json' with { type: 'json' };
import rulebookTable from '../../../data/wash/rulebook.json' with { type: 'json' };
import ruleTable from '../../../data/wash/rules.json' with { type: 'json' };
import shopTable from '../../../data/wash/shopFacts.json' with { type: 'json' };
import stainTable from '../../../data/wash/stains.json' with { type: 'json' };
import stepTable from '../../../data/wash/steps.json' with { type: 'json' };
import stopTable from '../../../data/wash/stopConditions.json' with { type: 'json' };
import type { RinsePace, SewerLimits } from '../chemistry/index.ts';
import type { Flow } from './flows.ts';
import type { Risk } from './limit.ts';
import type { Agent, Construction, Fibre, Method, PlanFacts, RuleNumber } from './planFacts.ts';
import { ruleIds } from './planFacts.ts';
import type { DyeRow, FibreRow, Mixture, RescueCard, RuleRow, StainRow, StepRow } from './ruleTables.ts';
import type { OwnRule, RuleId, StopCondition } from './washPlan.ts';

/**
 * Everything a plan is judged by, as one value: the shipped tables, or those of a workshop whose owner
 * changed some of them. The version says which.
 */
export interface Rulebook {
  readonly version: string;
  /** The owner's own values, each printed as a workshop setting; none in the delivered rulebook. */
  readonly changes: readonly OwnRule[];
  readonly rules: readonly RuleRow[];
  readonly fibres: { readonly [F in Fibre]?: FibreRow };
  readonly backings: { readonly [F in Fibre]?: FibreRow };
  readonly dyes: Readonly<Record<string, DyeRow>>;
  readonly tests: typeof dyeTestTable;
  readonly shop: typeof shopTable;
  readonly mixtures: readonly Mixture[];
  readonly stains: readonly StainRow[];
  readonly steps: readonly StepRow[];
  readonly flows: readonly Flow[];
  readonly stops: typeof stopTable;
  readonly residues: typeof residueTable;
  readonly spotting: typeof stainTable;
  readonly sewer: SewerLimits;
  readonly rinse: typeof rinseTable;
}

/** The rulebook as it is delivered, before any owner's change. */
export const shippedRulebook: Rulebook = {
  version: rulebookTable.version,
  changes: [],
  rules: ruleTable.rows as unknown as readonly RuleRow[],
  fibres: fibreTable.pileOrBody as unknown as Rulebook['fibres'],
  backings: fibreTable.weftOrBacking as unknown as Rulebook['backings'],
  dyes: dyeTestTable.rows as unknown as Rulebook['dyes'],
  tests: dyeTestTable,
  shop: shopTable,
  mixtures: mixtureTable.rows as unknown as readonly Mixture[],
  stains: stainTable.rows as unknown as readonly StainRow[],
  steps: stepTable.rows as unknown as readonly StepRow[],
  flows: flowTable.rows as unknown as readonly Flow[],
  stops: stopTable,
  residues: residueTable,
  spotting: stainTable,
  sewer: sewerTable,
  rinse: rinseTable,
};

/** The rulebook a rug is judged by: its workshop's, or the shipped one. */
export const bookOf = ({ rulebook }: PlanFacts): Rulebook => rulebook ?? shippedRulebook;

export const unknownPile = fibreTable.unknownPile as readonly Fibre[];
export const unknownFoundation = fibreTable.unknownFoundation as readonly Fibre[];
export const proteinFibres = fibreTable.protein as readonly Fibre[];
export const cellulosicFibres = fibreTable.cellulosic as readonly Fibre[];
export const bastFibres = fibreTable.bast as readonly Fibre[];
export const riskWords = riskTable.rows satisfies { readonly [R in Risk]: string };
export const stopConditions = stopTable.rows as readonly StopCondition[];
export const rescueCards = stopTable.rescueCards as Readonly<Record<string, RescueCard>>;

/** Whether an agent gives off sulfur dioxide in an acid. */
export const isSulfite = (agent: Agent): boolean => mixtureTable.sulfites.some((one) => one === agent);
export const isPeroxide = (agent: Agent): boolean => mixtureTable.peroxides.some((one) => one === agent);
export const isAcid = (agent: Agent): boolean => mixtureTable.acids.some((one) => one === agent);
/** Whether an agent makes a bath alkaline enough to move dyes that hold in a neutral one. */
export const isAlkaline = (agent: Agent): boolean => mixtureTable.alkaline.some((one) => one === agent);
/** Below this pH an acid with a sulfite still wants air [pH]. */
export const ventilateBelowPh = mixtureTable.sulfiteVentilateBelowPh;
/** Agents this product never lets near a rug. */
export const neverUsed = mixtureTable.neverUsed as readonly {
  readonly agent: Agent;
  readonly because: string;
}[];

/** A row of the rule table; a rule without one is a bug of the data, held by a test. */
export function ruleRow(book: Rulebook, id: RuleId): RuleRow {
  const row = book.rules.find((one) => one.id === id);
  if (row === undefined) throw new Error(`rule ${id} is not in data/wash/rules.json`);
  return row;
}

/**
 * Whether the owner may take responsibility for a rule.
 *
 * @source none: rule of this project; never for forbidden mixtures, missing consent or quarantine. No change
 * of the rulebook makes a rule overridable, so the shipped table answers.
 */
export const isOverridable = (rule: RuleNumber): boolean =>
  ruleIds.includes(rule) && ruleRow(shippedRulebook, rule).override;

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

/** How long the parts of a rinse take in this shop; extraction is told once, with the other times. */
export const rinsePaceOf = ({ rinse, shop }: Rulebook): RinsePace => ({
  ...rinse,
  extractionMin: shop.extractionMin,
});

/** Water a method takes, by step [L/m²]; none for methods without water. */
export const waterLPerM2 = (book: Rulebook, method: Method, use: string): number => {
  const uses = (book.shop.waterLPerM2 as Readonly<Record<string, Readonly<Record<string, number>>>>)[method];
  return uses?.[use] ?? 0;
};
