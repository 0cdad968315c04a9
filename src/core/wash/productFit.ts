import mixtureTable from '../../../data/wash/mixtures.json' with { type: 'json' };
import { done, type Problem, type Result, refused } from '../../units/index.ts';
import { type AgentKind, type Product, readAgentName } from '../chemistry/index.ts';
import { agentsOfKind, kindOf } from './agentKind.ts';
import type { Agent } from './planFacts.ts';

export type ProductFitProblem =
  | Problem<
      'agent-hidden',
      {
        readonly name: string;
        readonly chemical: string;
        readonly as: string;
        readonly serves: string;
      }
    >
  | Problem<
      'detergent-not-neutral',
      { readonly name: string; readonly ph: number; readonly least: number; readonly most: number }
    >
  | Problem<
      'constituent-kind-wrong',
      { readonly name: string; readonly chemical: string; readonly kind: string; readonly is: string }
    >;

/** A product with what it is used as, and the pH its supplier states. */
export interface ServingProduct extends Product {
  readonly serves: readonly Agent[];
  readonly ph?: { readonly value: number } | undefined;
}

const onlyAs = mixtureTable.onlyAs as Readonly<Record<string, Agent>>;
const { neutralDetergentPh } = mixtureTable;
const onlyAsKind: { readonly [K in AgentKind]?: string } = mixtureTable.onlyAsKind;

/**
 * Whether a product may serve as what it is said to. Plans judge forbidden mixtures by what a product serves
 * as, so bleach, a sulfite or an enzyme may not pass under another name; one that nobody named may be the worst
 * of its kind.
 *
 * @param product - composition, what it serves as, its stated pH
 * @refuses agent-hidden - it holds an agent that forbidden mixtures know, and would be used as something else
 * @refuses detergent-not-neutral - a neutral detergent whose own dilution is acid or alkaline
 * @refuses constituent-kind-wrong - a named chemical under a kind it is not
 * @source workshop-setting (data/wash/mixtures.json)
 */
export function productFit({ name, parts, serves, ph }: ServingProduct): Result<null, ProductFitProblem> {
  const named = parts.flatMap(({ chemical, kind }) => {
    const found = chemical === undefined ? null : readAgentName(chemical, true);
    return chemical === undefined || !found?.ok ? [] : [{ chemical, kind, agent: found.value.agent }];
  });
  const wrong = named.find(({ kind, agent }) => agent.kind !== kind);
  if (wrong !== undefined) {
    const { chemical, kind, agent } = wrong;
    return refused('constituent-kind-wrong', { name, chemical, kind, is: agent.kind });
  }
  const held = named.flatMap(({ chemical, agent }) => {
    const as = onlyAs[agent.agent];
    return as === undefined ? [] : [{ chemical, as }];
  });
  const [first] = held;
  const other = serves.find((agent) => held.every(({ as }) => as !== agent));
  if (first !== undefined && other !== undefined) {
    return refused('agent-hidden', { name, ...first, serves: other });
  }
  for (const { kind, chemical } of parts) {
    const held = onlyAsKind[kind];
    const strange = held === undefined ? undefined : serves.find((agent) => kindOf(agent) !== kind);
    if (held === undefined || strange === undefined) continue;
    const as = agentsOfKind(kind).join(', ');
    return refused('agent-hidden', { name, chemical: chemical ?? held, as, serves: strange });
  }
  const { least, most } = neutralDetergentPh;
  const isOff = ph !== undefined && (ph.value < least || ph.value > most);
  return isOff && serves.includes('neutral detergent')
    ? refused('detergent-not-neutral', { name, ph: ph.value, least, most })
    : done(null);
}
