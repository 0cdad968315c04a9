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
  readonly heatCapacityJ: readonly (number | null)[];
}

/** What one mole of an agent puts into a bath. */
export interface ChemicalAgent {
  readonly agent: string;
  /** Empirical, with its water of crystallisation. */
  readonly formula: string;
  readonly molarMassGPerMol: number;
  readonly acids: Readonly<Record<string, number>>;
  /** Net charge of spectator ions, which take no part in any balance. */
  readonly strongCharge: number;
  /** What spectator ions add to the ionic strength beyond half their net charge. */
  readonly inertIonicStrengthPerMol?: number;
  /** Of the neat liquid [g/mL]. */
  readonly densityGPerMl?: number;
  readonly kind: string;
}

export const acidFamilies: readonly AcidFamily[] = acidTable.rows;
export const chemicalAgents = agentTable.rows as unknown as readonly ChemicalAgent[];

const gasConstant = 8.314462618e-3;
const kelvin = (temperatureC: number) => temperatureC + 273.15;
const standard = kelvin(25);

/**
 * pKa of each dissociation at a temperature, by its enthalpy and heat capacity; where none is known, the
 * value at 25 °C.
 *
 * @param family - the acid
 * @param temperatureC - [°C, 0 … 60]
 * @source goldberg-2002, equation for pK by temperature (data/chemistry/acids.json)
 * @accuracy within 0.02 of pK measured from 0 to 60 °C, checked in acidTable.test.ts
 */
export const pKaAt = (
  { pKa, enthalpyKJ, heatCapacityJ }: AcidFamily,
  temperatureC: number,
): readonly number[] => {
  const kelvins = kelvin(temperatureC);
  const byEnthalpy = 1 / kelvins - 1 / standard;
  const byHeatCapacity = standard / kelvins - 1 + Math.log(kelvins / standard);
  return pKa.map((value, i) => {
    const [enthalpy, heatCapacity] = [enthalpyKJ[i] ?? 0, (heatCapacityJ[i] ?? 0) / 1000];
    return value + (enthalpy * byEnthalpy - heatCapacity * byHeatCapacity) / (gasConstant * Math.LN10);
  });
};

type Rows = readonly (readonly number[])[];
const byTemperature = (rows: Rows) =>
  monotoneCurve(rows.map(([temperatureC = 0, value = 0]) => [temperatureC, value] as const));

/**
 * pKw of water.
 *
 * @param temperatureC - [°C, 0 … 60]
 * @source bandura-lvov-2006, table of pKw (data/chemistry/water.json)
 */
export const ionProductPkw = byTemperature(waterTable.rows);

const henryShift = byTemperature(waterTable.carbonDioxideByTemperature.rows);

/**
 * Carbonic acid in water open to air [mol/L].
 *
 * @param temperatureC - [°C, 0 … 60]
 * @source stumm-morgan-1996 at 25 °C; plummer-busenberg-1982 for the change with temperature
 */
export const carbonicInAirMolPerL = (temperatureC: number): number =>
  10 ** (waterTable.carbonDioxide.henryLog10MolPerLAtm + henryShift(temperatureC)) *
  (waterTable.carbonDioxide.pressurePa / 101_325);

const debyeHueckel = byTemperature(waterTable.debyeHueckel.rows);

/**
 * Slope A of the Debye–Hückel law, as the Davies equation has it at 25 °C.
 *
 * @param temperatureC - [°C, 0 … 60]
 * @source davies-1962 at 25 °C; robinson-stokes-1959 for the change with temperature
 */
export const daviesSlopeAt = (temperatureC: number): number =>
  (waterTable.debyeHueckel.daviesAt25 * debyeHueckel(temperatureC)) / debyeHueckel(25);

/** Equivalents of alkalinity in 1 mg/L of CaCO₃ [mol/L]. */
export const equivalentsPerMgCaCO3 =
  waterTable.calciumCarbonate.equivalentsPerMol / (waterTable.calciumCarbonate.molarMassGPerMol * 1000);
