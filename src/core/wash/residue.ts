import residueTable from '../../../data/wash/residues.json' with { type: 'json' };
import { leftAfterFills, usualRinse } from '../chemistry/index.ts';
import { kindOf } from './agentKind.ts';
import type { Bounds } from './limit.ts';
import { mixtureApplies } from './mixtures.ts';
import type { Agent, PlanFacts } from './planFacts.ts';
import type { RinseLimits } from './rinseWatch.ts';
import { bookOf, isAcid, isSulfite } from './rulebook.ts';
import type { Mixture } from './ruleTables.ts';
import type { RuleId, SourceKey } from './washPlan.ts';

/** Where a liquid was laid: the id of a stain, or the whole rug. */
export type Where = string | null;

/** What was done to a rug, as far as it leaves or takes away something. */
export type WorkEvent =
  | {
      readonly kind: 'laid';
      readonly where: Where;
      readonly agents: readonly Agent[];
      /** As measured; absent: unknown, which counts as the most dangerous. */
      readonly ph?: number;
      /** When it was laid, and whether by others: carried along for whoever reads of it. */
      readonly when?: string;
      readonly byOthers?: true;
    }
  /** Fresh water through it and out again; what is left is computed, nothing is proven. */
  | { readonly kind: 'rinsed'; readonly where: Where; readonly freshLPerKg?: number }
  | { readonly kind: 'extracted' }
  /** A reading of the rinse water: whether conductivity, pH and foam all stand at the supply. */
  | { readonly kind: 'rinse read'; readonly where: Where; readonly isAtSupply: boolean }
  | { readonly kind: 'aired'; readonly where: Where }
  /** Somebody says, with a reason, that an agent laid by others, or before an instant, is no longer there. */
  | { readonly kind: 'answered'; readonly where: Where; readonly agent: Agent; readonly laidBefore: string };

export type Clearing = 'verified rinse' | 'airing';

/** An agent that is, or may be, still in the rug. */
export interface Residue {
  readonly agent: Agent;
  readonly where: Where;
  readonly ph?: number;
  /** Share of what was laid that the rinses since would leave by perfect mixing; an estimate, never a proof. */
  readonly left: number;
  readonly clears: Clearing;
  readonly when?: string;
  readonly byOthers?: true;
}

interface ClearingRow {
  readonly clears: Clearing;
  readonly how: string;
  readonly agents: readonly Agent[];
  readonly source: SourceKey;
}
const rows = residueTable.rows as unknown as readonly ClearingRow[];
const rowOf = (agent: Agent) => rows.find(({ agents }) => agents.includes(agent));

/** How a residue is cleared, in words. */
export const clearingWords = (clears: Clearing): string =>
  rows.find((row) => row.clears === clears)?.how ?? clears;

interface Held extends Residue {
  /** Good readings in a row since it was laid. */
  readonly good: number;
}

const laidBy = (event: Extract<WorkEvent, { kind: 'laid' }>): readonly Held[] =>
  event.agents.flatMap((agent) => {
    const row = rowOf(agent);
    if (row === undefined) return [];
    const { where, ph, when, byOthers } = event;
    return [
      {
        ...{ agent, where, left: 1, good: 0, clears: row.clears },
        ...(ph === undefined ? {} : { ph }),
        ...(when === undefined ? {} : { when }),
        ...(byOthers === undefined ? {} : { byOthers }),
      },
    ];
  });

/** Water through the whole rug goes through every place of it; water at one place only through that. */
const reaches = (water: Where, residue: Where): boolean => water === null || water === residue;

function after(
  held: readonly Held[],
  event: WorkEvent,
  isExtracted: boolean,
  readingsInARow: number,
): readonly Held[] {
  switch (event.kind) {
    case 'laid':
      return [...held, ...laidBy(event)];
    case 'rinsed': {
      const retained = isExtracted ? usualRinse.extractedLPerKg : usualRinse.drainedLPerKg;
      const share = leftAfterFills(retained, event.freshLPerKg ?? 0, 1);
      return held.map((one) =>
        one.clears === 'verified rinse' && reaches(event.where, one.where)
          ? { ...one, left: one.left * share }
          : one,
      );
    }
    case 'extracted':
      return held;
    case 'rinse read':
      // A reading speaks only of the water it was taken in: the whole rug's hides a small place.
      return held
        .map((one) =>
          one.where === event.where ? { ...one, good: event.isAtSupply ? one.good + 1 : 0 } : one,
        )
        .filter((one) => one.clears !== 'verified rinse' || one.good < readingsInARow);
    case 'aired':
      return held.filter((one) => one.clears !== 'airing' || !reaches(event.where, one.where));
    case 'answered':
      return held.filter(
        ({ agent, where, when = '', byOthers }) =>
          agent !== event.agent || where !== event.where || !(byOthers === true || when < event.laidBefore),
      );
  }
}

/**
 * What is still in a rug after everything that was done to it. Rinsing lowers the estimate of what is left;
 * only readings at the supply, as delivered twice in a row, or an airing clear it.
 *
 * @param events - oldest first
 * @param limits - of the workshop's rulebook
 * @returns each agent at each place that nothing has cleared
 * @source common-practice (data/wash/residues.json); shares by perfect mixing, (r/(r+w))ⁿ
 */
export function residuesOf(
  events: readonly WorkEvent[],
  { readingsInARow }: RinseLimits,
): readonly Residue[] {
  let held: readonly Held[] = [];
  let isExtracted = false;
  for (const event of events) {
    held = after(held, event, isExtracted, readingsInARow);
    isExtracted =
      event.kind === 'extracted' || (isExtracted && event.kind !== 'laid' && event.kind !== 'rinsed');
  }
  return held.map(({ good: _good, ...residue }) => residue);
}

/** Something about to be laid on the rug, or done to it. */
export interface NextLiquid {
  readonly what: string;
  readonly agents: readonly Agent[];
  /** Band it is used in; absent: unknown, the most dangerous. */
  readonly ph?: { readonly least: number; readonly most: number };
  /** Heat in the dryer or the room; unknown counts as heat. */
  readonly isHeatedDrying?: boolean;
}

/** Why a liquid may not meet what is in the rug, and how to clear the way. */
export interface ResidueBlock {
  readonly what: string;
  readonly rule: RuleId | 'mixture';
  readonly agents: readonly Agent[];
  readonly residues: readonly Residue[];
  readonly hazard: string;
  readonly clear: readonly string[];
  readonly source: SourceKey;
}

/**
 * The pH a liquid and residues may have where they meet. Mixing is linear in the charge of each, so the pH
 * lies between theirs; one that is unknown makes it unknown.
 */
function meetingPh(
  next: NextLiquid,
  residues: readonly Residue[],
): { readonly least: number; readonly most: number } | null {
  if (next.ph === undefined) return null;
  const known = residues.flatMap(({ ph }) => (ph === undefined ? [] : [ph]));
  if (known.length < residues.length) return null;
  return { least: Math.min(next.ph.least, ...known), most: Math.max(next.ph.most, ...known) };
}

/** Acids, sulfites, neutral detergent and solvents are no alkali, whatever their pH is; of the rest any may be. */
const mayBeAlkaline = (agent: Agent): boolean =>
  !isAcid(agent) && !isSulfite(agent) && agent !== 'neutral detergent' && kindOf(agent) !== 'solvent';

function meets(
  mixture: Mixture,
  facts: PlanFacts,
  next: NextLiquid,
  residues: readonly Residue[],
): readonly Residue[] | null {
  if (mixture.inVesselOnly === true) return null;
  if (mixture.ifHeatedDrying === true) {
    const left = residues.filter(({ agent }) => mixture.a.includes(agent));
    return next.isHeatedDrying === true && left.length > 0 ? left : null;
  }
  const byPh = mixture.abovePh !== undefined || mixture.belowPh !== undefined;
  const involved = residues.filter(
    ({ agent, ph }) =>
      mixture.a.includes(agent) ||
      mixture.b.includes(agent) ||
      // What is too alkaline, or may be since nobody read it, carries a lone agent over its limit.
      (mixture.b.length === 0 &&
        mixture.abovePh !== undefined &&
        (ph === undefined ? mayBeAlkaline(agent) : ph > mixture.abovePh)),
  );
  if (involved.length === 0) return null;
  const brings = next.agents.some((agent) => mixture.a.includes(agent) || mixture.b.includes(agent));
  const alters = mixture.b.length === 0 && byPh && next.agents.some((agent) => agent !== 'water');
  if (!brings && !alters) return null;
  const agents = [...new Set([...next.agents, ...involved.map(({ agent }) => agent)])];
  const ph = byPh ? meetingPh(next, involved) : null;
  const worst = mixture.belowPh === undefined ? ph?.most : ph?.least;
  const bath = { purpose: next.what, agents, ...(worst === undefined ? {} : { pH: worst }) };
  return mixtureApplies(mixture, facts, bath) ? involved : null;
}

/**
 * The first reason why a liquid may not be laid on what is still in the rug.
 *
 * @param facts - what is known of the rug
 * @param residues - what is still in it, wherever it lies: a wet rug carries liquid from place to place
 * @param next - what is about to be done
 * @param bounds - the rug's limits, for pairs that only this rug forbids
 * @returns null where nothing forbids it
 * @source data/wash/mixtures.json, each row with its own source; nobody may override it
 */
export function residueBlock(
  facts: PlanFacts,
  residues: readonly Residue[],
  next: NextLiquid,
  { forbiddenPairs }: Pick<Bounds, 'forbiddenPairs'>,
): ResidueBlock | null {
  const block = (rule: ResidueBlock['rule'], hazard: string, source: SourceKey, met: readonly Residue[]) => ({
    ...{ what: next.what, rule, hazard, source, residues: met, agents: next.agents },
    clear: [...new Set(met.map(({ clears }) => clearingWords(clears)))],
  });
  for (const mixture of bookOf(facts).mixtures) {
    const met = meets(mixture, facts, next, residues);
    if (met !== null) {
      const rule = mixture.id.includes('sulfite below') ? ('R24' as const) : ('mixture' as const);
      return block(rule, mixture.hazard, mixture.source, met);
    }
  }
  for (const pair of forbiddenPairs) {
    const both = pair.split(' + ');
    const met = residues.filter(
      ({ agent }) => both.includes(agent) && next.agents.some((one) => one !== agent && both.includes(one)),
    );
    if (met.length > 0) return block('R23', 'it strips the dye', 'common-practice', met);
  }
  return null;
}
