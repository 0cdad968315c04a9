import { mayHave } from './dyeVerdict.ts';
import type { Bounds } from './limit.ts';
import type { Agent, PlanFacts, PlannedBath } from './planFacts.ts';
import type { AgentForbidden, BathPhOutside, MixtureForbidden } from './planProblem.ts';
import { bookOf, cellulosicFibres, isAlkaline, neverUsed, proteinFibres, ruleRow } from './rulebook.ts';
import type { Mixture } from './ruleTables.ts';
import type { SourcedLimit } from './sourcedLimit.ts';

/** Every fibre of the rug; an unknown one may be any. */
const hasFibre = ({ pile = {}, foundation = {} }: PlanFacts, wanted: readonly string[]): boolean => {
  const { warp = 'unknown', weft = 'unknown', backing } = foundation;
  const known = [...Object.keys(pile), warp, weft, ...(backing === undefined ? [] : [backing])];
  return (
    Object.keys(pile).length === 0 || known.some((fibre) => fibre === 'unknown' || wanted.includes(fibre))
  );
};

/** Whether a bath is a forbidden mixture on this rug; an unknown pH counts as the dangerous one. */
export function mixtureApplies(mixture: Mixture, facts: PlanFacts, { agents, pH }: PlannedBath): boolean {
  const { a, b, belowPh, abovePh, ifFinding, ifFibre, ifStain } = mixture;
  const meets = (list: readonly Agent[]) => list.length === 0 || list.some((agent) => agents.includes(agent));
  if (!a.some((agent) => agents.includes(agent)) || !meets(b)) return false;
  // An unknown pH counts as the dangerous one.
  if (belowPh !== undefined && pH !== undefined && pH >= belowPh) return false;
  if (abovePh !== undefined && pH !== undefined && pH <= abovePh) return false;
  if (ifFinding !== undefined && !mayHave(facts, ifFinding)) return false;
  if (
    ifStain !== undefined &&
    !(facts.stains ?? []).some(({ class: kind = 'unknown' }) => kind === ifStain || kind === 'unknown')
  )
    return false;
  return ifFibre === undefined || hasFibre(facts, ifFibre === 'protein' ? proteinFibres : cellulosicFibres);
}

/**
 * Whether a bath lies outside the pH that a fibre or the kind of a dye bears, or that made a colour run. What
 * the tests merely do not cover is another matter: a test can be made. Alkali whose pH nobody knows counts as too alkaline for natural dyes.
 */
function phProblem(
  { purpose, agents, pH }: PlannedBath,
  limits: readonly SourcedLimit[],
): BathPhOutside | null {
  for (const { axis, value, rule, about, because } of limits) {
    if (axis !== 'bathPh' || value === 'no liquid') continue;
    if (!rule.startsWith('fibre ') && rule !== 'R20' && rule !== 'dye thin margin') continue;
    const isUnknownAlkali = pH === undefined && rule === 'R20' && agents.some(isAlkaline);
    if (!isUnknownAlkali && (pH === undefined || (pH >= value.least && pH <= value.most))) continue;
    const { least, most } = value;
    const facts = { bath: purpose, pH: pH ?? null, least, most, rule, about, because };
    return { code: 'wash-bath-ph-outside', facts };
  }
  return null;
}

/**
 * The first thing that forbids a bath somebody means to mix: an agent never used, a forbidden mixture, a
 * forbidden pair, an agent that a limit of this rug forbids, or a pH that its fibre or dye does not bear.
 *
 * @source data/wash/mixtures.json, each row with its own source; R19 to R24 are never overridden
 */
export function bathProblem(
  facts: PlanFacts,
  bath: PlannedBath,
  limits: readonly SourcedLimit[],
): MixtureForbidden | AgentForbidden | BathPhOutside | null {
  const { purpose, agents } = bath;
  const never = neverUsed.find(({ agent }) => agents.some((one) => one === agent));
  if (never !== undefined) {
    const facts = { rule: 'mixture' as const, bath: purpose, agents: [never.agent], hazard: never.because };
    return { code: 'wash-mixture-forbidden', facts };
  }
  const mixture = bookOf(facts).mixtures.find(
    (one) => one.inRugOnly !== true && mixtureApplies(one, facts, bath),
  );
  if (mixture !== undefined) {
    const involved = agents.filter((agent) => mixture.a.includes(agent) || mixture.b.includes(agent));
    const rule = mixture.id.includes('sulfite below') ? ('R24' as const) : ('mixture' as const);
    return {
      code: 'wash-mixture-forbidden',
      facts: { rule, bath: purpose, agents: involved, hazard: mixture.hazard },
    };
  }
  for (const limit of limits) {
    if (limit.axis === 'forbiddenPairs' && limit.value.length > 0) {
      const [first, second] = (limit.value[0] ?? '').split(' + ');
      if (agents.some((one) => one === first) && agents.some((one) => one === second)) {
        const hazard = ruleRow(bookOf(facts), 'R23').title;
        return {
          code: 'wash-mixture-forbidden',
          facts: { rule: limit.rule, bath: purpose, agents: limit.value, hazard },
        };
      }
    }
    if (limit.axis === 'forbiddenAgents') {
      const agent = limit.value.find((one) => agents.includes(one));
      if (agent !== undefined) {
        const { rule, about, because } = limit;
        return { code: 'wash-agent-forbidden', facts: { bath: purpose, agent, rule, about, because } };
      }
    }
  }
  return phProblem(bath, limits);
}

/**
 * What an agent would do on this very rug, its fibres, stains and findings, wherever it is laid: a wet rug carries
 * liquid from place to place. Null where nothing forbids it.
 *
 * @source data/wash/mixtures.json, each row with its own source
 */
export function hazardOnRug(
  facts: PlanFacts,
  agents: readonly Agent[],
  band: { readonly least: number; readonly most: number } | null,
): string | null {
  const ends = band === null ? [{}] : [{ pH: band.least }, { pH: band.most }];
  const met = bookOf(facts).mixtures.find(
    (one) =>
      one.inRugOnly !== true &&
      one.ifHeatedDrying !== true &&
      ends.some((end) => mixtureApplies(one, facts, { purpose: '', agents, ...end })),
  );
  return met?.hazard ?? null;
}

/** Whether a step may use its agents on this rug. */
export const agentsAllowed = (
  agents: readonly Agent[],
  { forbiddenAgents }: Pick<Bounds, 'forbiddenAgents'>,
): boolean => !agents.some((agent) => forbiddenAgents.includes(agent));
