import agentTable from '../../../data/wash/agents.json' with { type: 'json' };
import { type AgentKind, agentKinds } from '../chemistry/index.ts';
import type { Agent } from './planFacts.ts';

/**
 * What kind of chemical an agent is; null where it is none of these, as water or a stabiliser.
 *
 * @source common-practice (data/wash/agents.json)
 */
export const kindOf = (agent: Agent): AgentKind | null =>
  agentKinds.find((kind) => agentTable[kind].some((one) => one === agent)) ?? null;

/**
 * The agents of a kind.
 *
 * @source common-practice (data/wash/agents.json)
 */
export const agentsOfKind = (kind: AgentKind): readonly string[] => agentTable[kind];

/** Whether a strength is stated as so much of the pure substance, not of the product as it is bought. */
export function isStatedPure(agent: Agent): boolean {
  const kind = kindOf(agent);
  return kind !== null && kind !== 'surfactant' && kind !== 'enzyme' && kind !== 'solvent';
}

/**
 * What an amount of an agent is called where no product is named.
 *
 * @source none: wording of this project
 */
export function statedName(agent: Agent): string {
  if (kindOf(agent) === 'surfactant') return 'detergent concentrate';
  return isStatedPure(agent) ? `pure ${agent}` : agent;
}
