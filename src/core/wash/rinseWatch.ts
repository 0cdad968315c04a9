import type { Rulebook } from './rulebook.ts';

/** When rinse water counts as the supply, by the workshop's rulebook. */
export type RinseLimits = Rulebook['residues'];

/** A reading of rinse water beside the supply's. */
export interface RinseReading {
  readonly conductivityUsPerCm?: number | undefined;
  readonly supplyConductivityUsPerCm?: number | undefined;
  readonly ph?: number | undefined;
  readonly supplyPh?: number | undefined;
  readonly foam?: 'none' | 'some' | 'much' | undefined;
}

/**
 * Whether rinse water conducts as the supply does: as delivered within 20 µS/cm or 5 %, whichever is more.
 *
 * @returns null where either was not measured
 * @source workshop-setting (data/wash/residues.json)
 */
export const conductsAsSupply = (reading: RinseReading, { atSupply }: RinseLimits): boolean | null => {
  const { conductivityUsPerCm: rinse, supplyConductivityUsPerCm: supply } = reading;
  if (rinse === undefined || supply === undefined) return null;
  return rinse - supply <= Math.max(atSupply.conductivityUsPerCm, supply * atSupply.conductivityShare);
};

/**
 * How far the rinse water's pH is from the supply's, and whether that is near enough: as delivered within 0.5.
 *
 * @returns null where either was not measured
 * @source workshop-setting (data/wash/residues.json)
 */
export const phFromSupply = (
  { ph, supplyPh }: RinseReading,
  { atSupply }: RinseLimits,
): { off: number; isNear: boolean } | null => {
  if (ph === undefined || supplyPh === undefined) return null;
  const off = Math.abs(ph - supplyPh);
  return { off, isNear: off <= atSupply.ph + 1e-9 };
};

/**
 * Whether a reading shows nothing but the supply: conductivity, pH and no foam. What was not measured is not
 * shown.
 *
 * @source workshop-setting (data/wash/residues.json)
 */
export const isAtSupply = (reading: RinseReading, limits: RinseLimits): boolean =>
  conductsAsSupply(reading, limits) === true &&
  phFromSupply(reading, limits)?.isNear === true &&
  reading.foam === 'none';
