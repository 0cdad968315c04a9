import table from '../../../data/chemistry/hardnessBinders.json' with { type: 'json' };
import { done, type OutOfRange, type Problem, type Result, refused } from '../../units/index.ts';
import { asCalciumCarbonate, type HardnessUnit } from './supplyWater.ts';

export const hardnessBinders: readonly string[] = table.rows.map(({ agent }) => agent);

export type HardnessProblem =
  | OutOfRange
  | Problem<'binding-not-fixed', { readonly agent: string; readonly known: readonly string[] }>;

/**
 * Grams of soap or chelator that the hardness of a bath uses up before any is left to work.
 *
 * @param hardness - in any unit of hardness [0 … 5000 mg/L CaCO₃]
 * @param litres - of the bath [L, > 0 … 100 000]
 * @param agent - one that binds in a fixed proportion
 * @returns grams of the pure agent
 * @refuses binding-not-fixed - synthetic detergents, citrate, phosphates and soda bind by equilibrium
 * @refuses out-of-range - of hardness or litres
 * @source crc-handbook molar masses (data/chemistry/hardnessBinders.json); two soap ions, one EDTA or NTA, per Ca
 */
export function hardnessConsumed(
  hardness: { readonly value: number; readonly unit: HardnessUnit },
  litres: number,
  agent: string,
): Result<{ readonly grams: number; readonly hardnessMgPerLCaCO3: number }, HardnessProblem> {
  const binder = table.rows.find((row) => row.agent.toLowerCase() === agent.trim().toLowerCase());
  if (binder === undefined) return refused('binding-not-fixed', { agent, known: hardnessBinders });
  const hardnessMgPerLCaCO3 = asCalciumCarbonate(hardness.value, hardness.unit);
  if (!(hardnessMgPerLCaCO3 >= 0 && hardnessMgPerLCaCO3 <= 5000)) {
    const facts = {
      field: 'hardness',
      value: hardnessMgPerLCaCO3,
      least: 0,
      most: 5000,
      symbol: 'mg/L CaCO₃',
    };
    return refused('out-of-range', facts);
  }
  if (!(litres > 0 && litres <= 100_000)) {
    return refused('out-of-range', { field: 'litres', value: litres, least: 0, most: 100_000, symbol: 'L' });
  }
  const moles =
    (asCalciumCarbonate(hardness.value, hardness.unit) * litres) / 1000 / asCalciumCarbonate(1, 'mmol/L');
  return done({ grams: (moles / binder.molesBound) * binder.molarMassGPerMol, hardnessMgPerLCaCO3 });
}
