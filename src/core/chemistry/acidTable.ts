import acidTable from '../../../data/chemistry/acids.json' with { type: 'json' };
import agentTable from '../../../data/chemistry/agents.json' with { type: 'json' };
import waterTable from '../../../data/chemistry/water.json' with { type: 'json' };
import { monotoneCurve } from '../air/index.ts';

/** An acid by its dissociations; `topCharge` is the charge with every proton on. */
export interface AcidFamily {
  readonly acid: string;
  readonly topCharge: number;
  readonly pKa: readonly number[];
  readonly enthalpyKJ: readonly (number | null)[];
}

/** What one mole of an agent puts into a bath. */
export interface ChemicalAgent {
  readonly agent: string;
  readonly molarMassGPerMol: number;
  readonly acids: Readonly<Record<string, number>>;
  /** Net charge of ions that take no part in any balance. */
  readonly strongCharge: number;
  readonly inertIonicStrengthPerMol?: number;
  readonly kind: string;
}

export const acidFamilies: readonly AcidFamily[] = acidTable.rows;
export const chemicalAgents = agentTable.rows as unknown as readonly ChemicalAgent[];

const gasConstant = 8.314462618e-3;
const kelvin = (temperatureC: number) => temperatureC + 273.15;
const standard = kelvin(25);

/**
 * pKa of each dissociation at a temperature, by the van ’t Hoff equation; where no enthalpy is known,
 * the value at 25 °C.
 *
 * @param family - the acid
 * @param temperatureC - [°C, 0 … 60]
 * @source crc-handbook, section 5 (data/chemistry/acids.json)
 */
export const pKaAt = ({ pKa, enthalpyKJ }: AcidFamily, temperatureC: number): readonly number[] =>
  pKa.map((value, i) => {
    const enthalpy = enthalpyKJ[i] ?? 0;
    const shift = (enthalpy / (gasConstant * Math.LN10)) * (1 / kelvin(temperatureC) - 1 / standard);
    return value + shift;
  });

/**
 * pKw of water.
 *
 * @param temperatureC - [°C, 0 … 60]
 * @source bandura-lvov-2006, table of pKw (data/chemistry/water.json)
 */
export const ionProductPkw = monotoneCurve(
  waterTable.rows.map(([temperatureC = 0, pkw = 14]) => [temperatureC, pkw] as const),
);

/** Carbonic acid in water open to air [mol/L]. @source stumm-morgan-1996 (data/chemistry/water.json) */
export const carbonicInAirMolPerL =
  10 ** waterTable.carbonDioxide.henryLog10MolPerLAtm * (waterTable.carbonDioxide.pressurePa / 101_325);

/** Equivalents of alkalinity in 1 mg/L of CaCO₃ [mol/L]. */
export const equivalentsPerMgCaCO3 =
  waterTable.calciumCarbonate.equivalentsPerMol / (waterTable.calciumCarbonate.molarMassGPerMol * 1000);
