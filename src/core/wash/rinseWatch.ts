import residueTable from '../../../data/wash/residues.json' with { type: 'json' };

const { atSupply } = residueTable;

/** A reading of rinse water beside the supply's. */
export interface RinseReading {
  readonly conductivityUsPerCm?: number | undefined;
  readonly supplyConductivityUsPerCm?: number | undefined;
  readonly ph?: number | undefined;
  readonly supplyPh?: number | undefined;
  readonly foam?: 'none' | 'some' | 'much' | undefined;
}

/**
 * Whether rinse water conducts as the supply does: within 20 µS/cm or 5 %, whichever is more.
 *
 * @returns null where either was not measured
 * @source workshop-setting (data/wash/residues.json)
 */
export const conductsAsSupply = (reading: RinseReading): boolean | null => {
  const { conductivityUsPerCm: rinse, supplyConductivityUsPerCm: supply } = reading;
  if (rinse === undefined || supply === undefined) return null;
  return rinse - supply <= Math.max(atSupply.conductivityUsPerCm, supply * atSupply.conductivityShare);
};

/**
 * How far the rinse water's pH is from the supply's, and whether that is near enough: within 0.5.
 *
 * @returns null where either was not measured
 * @source workshop-setting (data/wash/residues.json)
 */
export const phFromSupply = ({ ph, supplyPh }: RinseReading): { off: number; isNear: boolean } | null => {
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
export const isAtSupply = (reading: RinseReading): boolean =>
  conductsAsSupply(reading) === true && phFromSupply(reading)?.isNear === true && reading.foam === 'none';
