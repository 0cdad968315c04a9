import nameTable from '../../../data/chemistry/agentNames.json' with { type: 'json' };
import { done, type Problem, type Result, refused } from '../../units/index.ts';
import { type ChemicalAgent, chemicalAgents } from './acidTable.ts';

/** What a name leaves open and the reading of it assumes. */
export type NameAssumption = 'strength' | 'hydrate';

/** An agent as its name gives it. */
export interface NamedAgent {
  readonly agent: ChemicalAgent;
  /** Mass share of the agent that the name stands for [0 … 1]. */
  readonly strength: number;
  /** Of what the name stands for [g/mL]; null where it is not known. */
  readonly densityGPerMl: number | null;
  readonly assumed: NameAssumption | null;
}

export type AgentNameProblem =
  | Problem<
      'agent-unknown',
      { readonly agent: string; readonly near: readonly string[]; readonly known: readonly string[] }
    >
  | Problem<'agent-strength-missing', { readonly agent: string; readonly means: string }>;

interface OtherName {
  readonly name: string;
  readonly agent: string;
  readonly strength?: number;
  readonly densityGPerMl?: number;
  readonly assumed?: NameAssumption;
  readonly needs?: 'strength';
}

const otherNames = nameTable.rows as readonly OtherName[];

const waters = [
  '',
  'mono',
  'di',
  'tri',
  'tetra',
  'penta',
  'hexa',
  'hepta',
  'octa',
  'nona',
  'deca',
  'undeca',
  'dodeca',
];

/** A name without case, accents, stops and the order of its words about water. */
function plain(name: string): string {
  const words = name
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/\p{M}/gu, '')
    .replaceAll('sulph', 'sulf')
    .replaceAll(/[^a-z0-9]+/g, ' ')
    .replaceAll(
      /\b(\d*) ?h(?:2o|ydrate)\b/g,
      (_, count: string) => ` ${waters[Number(count || 1)] ?? count}hydrate`,
    )
    .replaceAll(
      /\b(mono|di|tri|tetra|penta|hexa|hepta|octa|nona|deca|undeca|dodeca|sesqui) hydrate\b/g,
      '$1hydrate',
    )
    .trim()
    .split(/ +/);
  const isWater = (word: string) => word.endsWith('hydrate') || word === 'anhydrous';
  return [...words.filter((word) => !isWater(word)), ...words.filter(isWater)].join(' ');
}

const byName = new Map<string, ChemicalAgent>([
  ...chemicalAgents.map((one) => [plain(one.formula), one] as const),
  ...chemicalAgents.map((one) => [plain(one.agent), one] as const),
]);
const byOtherName = new Map(otherNames.map((one) => [plain(one.name), one]));

const isHydrate = ({ formula }: ChemicalAgent): boolean => formula.endsWith('H2O');
const withHydrates = new Set(chemicalAgents.filter(isHydrate).map(({ agent }) => agent.replace(/, .*$/, '')));

const asItself = (agent: ChemicalAgent, assumed: NameAssumption | null): NamedAgent => ({
  ...{ agent, strength: 1, assumed },
  densityGPerMl: agent.densityGPerMl ?? null,
});

/** A strength by mass that stands in the name itself: `acetic acid 80 %`, `3% hydrogen peroxide solution`. */
function withPercent(name: string): { readonly share: number; readonly rest: string } | null {
  const found = /(\d+(?:[.,]\d+)?) *%( *w\/w)?/.exec(name);
  const percent = Number((found?.[1] ?? '').replace(',', '.'));
  if (found === null || !(percent > 0 && percent <= 100)) return null;
  const rest = name.replace(found[0], ' ').replace(/\b(?:aqueous )?solution\b/i, ' ');
  return { share: percent / 100, rest };
}

/** Pairs of letters of a name, by which two spellings are likened. */
const pairsOf = (name: string): readonly string[] =>
  plain(name)
    .split(' ')
    .flatMap((word) => Array.from({ length: Math.max(1, word.length - 1) }, (_, i) => word.slice(i, i + 2)));

/** Share of letter pairs two names have in common [0 … 1]. @source none: Dice’s coefficient */
function likeness(one: string, other: string): number {
  const [a, b] = [pairsOf(one), [...pairsOf(other)]];
  const shared = a.filter((pair) => {
    const at = b.indexOf(pair);
    if (at >= 0) b.splice(at, 1);
    return at >= 0;
  }).length;
  return (2 * shared) / (a.length + pairsOf(other).length);
}

/** Known names that are most like a name, best first. */
function namesLike(name: string): readonly string[] {
  const asked = plain(name).split(' ');
  const rated = [...chemicalAgents, ...otherNames.map(({ name: agent }) => ({ agent }))]
    .map(({ agent }) => {
      const words = plain(agent).split(' ');
      const holds = asked.every((word) => words.includes(word)) ? 0.5 : 0;
      return { agent, like: likeness(name, agent) + holds };
    })
    .filter(({ like }) => like > 0.5);
  return rated
    .sort((a, b) => b.like - a.like)
    .slice(0, 6)
    .map(({ agent }) => agent);
}

/**
 * An agent by its chemical name, a synonym, its formula or a household name.
 *
 * @param name - in any case, British or American, its water of crystallisation before or after
 * @returns the agent, the strength the name stands for, and what had to be assumed
 * @refuses agent-unknown - with the known names most like it
 * @refuses agent-strength-missing - a solution that is sold in too many strengths to assume one
 * @source none: tables are read (data/chemistry/agents.json, data/chemistry/agentNames.json)
 */
export function readAgentName(name: string, isStrengthGiven = false): Result<NamedAgent, AgentNameProblem> {
  const labelled = withPercent(name);
  if (labelled !== null) {
    const bare = readAgentName(labelled.rest, true);
    if (!bare.ok) return bare;
    const { assumed, strength, densityGPerMl } = bare.value;
    return done({
      ...{ ...bare.value, strength: labelled.share, assumed: assumed === 'strength' ? null : assumed },
      // The density of a neat liquid says nothing about a thinned one.
      densityGPerMl: strength === 1 && labelled.share < 1 ? null : densityGPerMl,
    });
  }
  const asked = plain(name);
  const exact = byName.get(asked);
  if (exact !== undefined) {
    const isOpen = !isHydrate(exact) && withHydrates.has(exact.agent) && !asked.includes('anhydrous');
    return done(asItself(exact, isOpen ? 'hydrate' : null));
  }
  const other = byOtherName.get(asked);
  const meant = other === undefined ? undefined : byName.get(plain(other.agent));
  if (other !== undefined && meant !== undefined) {
    if (other.needs === 'strength' && !isStrengthGiven) {
      return refused('agent-strength-missing', { agent: name, means: other.agent });
    }
    const assumed = other.assumed === 'strength' && isStrengthGiven ? null : (other.assumed ?? null);
    const densityGPerMl = other.densityGPerMl ?? (other.needs === undefined ? meant.densityGPerMl : null);
    return done({
      ...{ agent: meant, strength: other.strength ?? 1, assumed },
      densityGPerMl: densityGPerMl ?? null,
    });
  }
  if (asked.endsWith(' anhydrous')) {
    const dry = readAgentName(asked.slice(0, -' anhydrous'.length), isStrengthGiven);
    if (dry.ok && !isHydrate(dry.value.agent)) return done({ ...dry.value, assumed: null });
  }
  return refused('agent-unknown', {
    ...{ agent: name, near: namesLike(name) },
    known: chemicalAgents.map((one) => one.agent),
  });
}

/** By how much a household solution may differ from the strength its name stands for: vinegar is 4 to 6 %. */
const assumedStrengthShare = 0.25;

/**
 * By what share the strength of an agent may be off: more where only its name says it.
 *
 * @param strength - as it was given, if it was
 * @param usual - for what is weighed from its own bottle
 * @source workshop-setting
 */
export function strengthShare(name: string, strength: number | undefined, usual: number): number {
  const named = readAgentName(name, strength !== undefined);
  return named.ok && named.value.assumed === 'strength' ? Math.max(usual, assumedStrengthShare) : usual;
}
