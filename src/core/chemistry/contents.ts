import { done, type OutOfRange, type Problem, type Result, refused } from '../../units/index.ts';
import { type AgentNameProblem, readAgentName } from './agentName.ts';
import type { Solution } from './chargeBalance.ts';

/** So much of an agent, as weighed or poured; strength is the share of it that is the agent. */
export interface AgentAmount {
  readonly agent: string;
  readonly grams?: number | undefined;
  readonly millilitres?: number | undefined;
  /** Mass fraction [0 … 1]; when absent what the name stands for, 1 for a pure agent. */
  readonly strength?: number | undefined;
  /** [g/mL]; needed for millilitres, unless the name stands for a liquid whose density is known. */
  readonly densityGPerMl?: number | undefined;
}

export type RecipeProblem =
  | OutOfRange
  | AgentNameProblem
  | Problem<'amount-missing', { readonly agent: string }>;

/** A value outside its bounds, named. */
export const outside = (field: string, value: number, least: number, most: number, symbol: string) =>
  Number.isFinite(value) && value >= least && value <= most
    ? null
    : refused('out-of-range', { field, value, least, most, symbol });

/** Moles of each acid family, charge and ionic strength that agents put into a bath. */
export interface Contents {
  readonly acids: Readonly<Record<string, number>>;
  readonly strongCharge: number;
  readonly spectatorStrength: number;
}

/** Plain water. */
export const nothing: Contents = { acids: {}, strongCharge: 0, spectatorStrength: 0 };

/** Two contents in one bath. */
export const together = (one: Contents, other: Contents): Contents => ({
  acids: Object.fromEntries(
    [...Object.keys(one.acids), ...Object.keys(other.acids)].map((acid) => [
      acid,
      (one.acids[acid] ?? 0) + (other.acids[acid] ?? 0),
    ]),
  ),
  strongCharge: one.strongCharge + other.strongCharge,
  spectatorStrength: one.spectatorStrength + other.spectatorStrength,
});

/**
 * What an amount of an agent puts into a bath.
 *
 * @returns moles, and grams of what is weighed
 * @refuses agent-unknown, agent-strength-missing, amount-missing, out-of-range - strength is a mass fraction 0 … 1
 * @source none: definitions of strength, density and molar mass
 */
export function contentsOf(
  amount: AgentAmount,
): Result<{ readonly contents: Contents; readonly grams: number }, RecipeProblem> {
  const named = readAgentName(amount.agent, amount.strength !== undefined);
  if (!named.ok) return named;
  const { agent, strength: usual, densityGPerMl } = named.value;
  const { grams, millilitres, strength = usual } = amount;
  const weak = outside(`strength of ${amount.agent}`, strength, 0, 1, 'mass fraction');
  if (weak !== null) return weak;
  // The density of a neat liquid says nothing about a thinned one.
  const isThinned = usual === 1 && strength < 1;
  const density = amount.densityGPerMl ?? (isThinned ? null : densityGPerMl);
  if (density !== null) {
    const wrong = outside(`density of ${amount.agent}`, density, 0.5, 3, 'g/mL');
    if (wrong !== null) return wrong;
  }
  const mass = grams ?? (millilitres !== undefined && density !== null ? millilitres * density : undefined);
  if (mass === undefined) return refused('amount-missing', { agent: amount.agent });
  const moles = (mass * strength) / agent.molarMassGPerMol;
  return done({
    grams: mass,
    contents: {
      acids: Object.fromEntries(Object.entries(agent.acids).map(([acid, count]) => [acid, count * moles])),
      strongCharge: agent.strongCharge * moles,
      spectatorStrength: (Math.abs(agent.strongCharge) / 2 + (agent.inertIonicStrengthPerMol ?? 0)) * moles,
    },
  });
}

/** A bath with so many times a litre’s contents put into each litre. @source none: bookkeeping of moles */
export const withContents = (
  bath: Solution,
  { acids, strongCharge, spectatorStrength }: Contents,
  times: number,
): Solution => ({
  ...bath,
  acidsMolPerL: Object.fromEntries(
    [...Object.keys(bath.acidsMolPerL), ...Object.keys(acids)].map((acid) => [
      acid,
      (bath.acidsMolPerL[acid] ?? 0) + times * (acids[acid] ?? 0),
    ]),
  ),
  strongChargeMolPerL: bath.strongChargeMolPerL + times * strongCharge,
  spectatorStrengthMolPerL: bath.spectatorStrengthMolPerL + times * spectatorStrength,
});
