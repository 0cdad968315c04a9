import { done, type OutOfRange, type Problem, type Result, refused } from '../../units/index.ts';
import { type ChemicalAgent, chemicalAgents, equivalentsPerMgCaCO3 } from './acidTable.ts';
import type { Solution } from './bathPh.ts';

/** So much of an agent, as weighed or poured; strength is the share of it that is the agent. */
export interface AgentAmount {
  readonly agent: string;
  readonly grams?: number | undefined;
  readonly millilitres?: number | undefined;
  /** Mass fraction [0 … 1]; 1 when absent. */
  readonly strength?: number | undefined;
  /** [g/mL]; needed for millilitres. */
  readonly densityGPerMl?: number | undefined;
}

/** A bath: water of an alkalinity, and what is put into it. */
export interface BathRecipe {
  readonly litres: number;
  readonly temperatureC: number;
  readonly alkalinityMgPerLCaCO3: number;
  readonly activity: Solution['activity'];
  readonly openToAir: boolean;
  readonly add: readonly AgentAmount[];
}

export type RecipeProblem =
  | OutOfRange
  | Problem<'agent-unknown', { readonly agent: string; readonly known: readonly string[] }>
  | Problem<'amount-missing', { readonly agent: string }>;

const bounds = {
  litres: { least: 0.001, most: 100_000, symbol: 'L' },
  temperatureC: { least: 0, most: 60, symbol: '°C' },
  alkalinityMgPerLCaCO3: { least: 0, most: 5000, symbol: 'mg/L CaCO₃' },
} as const;

const outside = (field: string, value: number, least: number, most: number, symbol: string) =>
  Number.isFinite(value) && value >= least && value <= most
    ? null
    : refused('out-of-range', { field, value, least, most, symbol });

/**
 * The agent by its chemical name.
 *
 * @refuses agent-unknown - with the names that are known
 * @source none: a table is read
 */
export function agentNamed(agent: string): Result<ChemicalAgent, RecipeProblem> {
  const found = chemicalAgents.find((one) => one.agent === agent.trim().toLowerCase());
  if (found !== undefined) return done(found);
  return refused('agent-unknown', { agent, known: chemicalAgents.map((one) => one.agent) });
}

/**
 * Grams of pure agent in an amount.
 *
 * @refuses amount-missing, out-of-range - strength is a mass fraction 0 … 1
 * @source none: definition
 */
export function pureGrams(amount: AgentAmount): Result<number, RecipeProblem> {
  const { agent, grams, millilitres, strength = 1, densityGPerMl } = amount;
  const weak = outside(`strength of ${agent}`, strength, 0, 1, 'mass fraction');
  if (weak !== null) return weak;
  const mass =
    grams ??
    (millilitres !== undefined && densityGPerMl !== undefined ? millilitres * densityGPerMl : undefined);
  if (mass === undefined) return refused('amount-missing', { agent });
  return outside(`amount of ${agent}`, mass, 0, 1e6, 'g') ?? done(mass * strength);
}

/**
 * The bath as the charge balance sees it. Alkalinity is taken as bicarbonate that has lost no carbon dioxide.
 *
 * @param recipe - litres [L], temperature [°C, 0 … 60], alkalinity [mg/L CaCO₃], agents
 * @refuses out-of-range, agent-unknown, amount-missing
 * @source none: bookkeeping of moles over data/chemistry
 */
export function solutionOf(recipe: BathRecipe): Result<Solution, RecipeProblem> {
  for (const field of ['litres', 'temperatureC', 'alkalinityMgPerLCaCO3'] as const) {
    const { least, most, symbol } = bounds[field];
    const problem = outside(field, recipe[field], least, most, symbol);
    if (problem !== null) return problem;
  }
  const alkalinity = recipe.alkalinityMgPerLCaCO3 * equivalentsPerMgCaCO3;
  const acids: Record<string, number> = alkalinity > 0 ? { carbonic: alkalinity } : {};
  let strongCharge = alkalinity;
  let inert = 0;
  for (const amount of recipe.add) {
    const agent = agentNamed(amount.agent);
    if (!agent.ok) return agent;
    const mass = pureGrams(amount);
    if (!mass.ok) return mass;
    const { molarMassGPerMol, acids: given, strongCharge: charge, inertIonicStrengthPerMol } = agent.value;
    const molPerL = mass.value / molarMassGPerMol / recipe.litres;
    for (const [acid, count] of Object.entries(given)) acids[acid] = (acids[acid] ?? 0) + count * molPerL;
    strongCharge += charge * molPerL;
    inert += (inertIonicStrengthPerMol ?? 0) * molPerL;
  }
  return done({
    acidsMolPerL: acids,
    strongChargeMolPerL: strongCharge,
    inertIonicStrengthMolPerL: inert,
    temperatureC: recipe.temperatureC,
    activity: recipe.activity,
    openToAir: recipe.openToAir,
  });
}
