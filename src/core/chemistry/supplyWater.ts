import unitTable from '../../../data/chemistry/hardnessUnits.json' with { type: 'json' };
import assumed from '../../../data/chemistry/supplyWater.json' with { type: 'json' };

export const hardnessUnits = ['mg/L CaCO₃', '°dH', '°fH', '°e', 'mmol/L', 'gpg', 'mmol/L acid'] as const;
export type HardnessUnit = (typeof hardnessUnits)[number];

/** Each unit of hardness or alkalinity in words. */
export const hardnessUnitWords = Object.fromEntries(
  unitTable.rows.map(({ unit, words }) => [unit, words]),
) as Readonly<Record<HardnessUnit, string>>;

/**
 * Hardness or alkalinity as mg/L of CaCO₃.
 *
 * @param value - in the unit named
 * @param unit - as the supplier states it; alkalinity as acid capacity counts one charge per mole
 * @source none: definitions (data/chemistry/hardnessUnits.json)
 * @example asCalciumCarbonate(14, '°dH') // 249.9 mg/L
 */
export const asCalciumCarbonate = (value: number, unit: HardnessUnit): number =>
  value * (unitTable.rows.find((row) => row.unit === unit)?.mgPerLCaCO3 ?? Number.NaN);

/** The supply as it was last read. */
export interface SupplyWater {
  /** Day of the reading. */
  readonly on: string;
  readonly alkalinityMgPerLCaCO3?: number | undefined;
  readonly hardnessMgPerLCaCO3?: number | undefined;
  readonly pH?: number | undefined;
  readonly conductivityUsPerCm?: number | undefined;
  readonly ironMgPerL?: number | undefined;
  readonly temperatureC?: number | undefined;
}

/** A property of the water with the range it may truly have. */
export interface Reckoned {
  readonly value: number;
  readonly least: number;
  readonly most: number;
  /** Nobody read it, or too long ago. */
  readonly assumed: boolean;
}

export interface ReckonedWater {
  readonly alkalinity: Reckoned;
  readonly hardness: Reckoned;
  /** Why it is asked for; null when the reading is in date. */
  readonly asks: 'absent' | 'old' | 'no alkalinity' | 'no hardness' | null;
  readonly on: string | null;
}

/** A reading of the supply holds so long. @source workshop-setting (data/chemistry/supplyWater.json) */
export const waterValidDays = assumed.validDays;
export const mostIronMgPerL = assumed.mostIronMgPerL;
/** No tap gives harder or more alkaline water: a figure above it was read in another unit. @source workshop-setting */
export const mostBelievedMgPerLCaCO3 = assumed.mostBelievedMgPerLCaCO3;
/** Acid capacity tells of alkalinity only; the others state either. */
export const hardnessOnlyUnits: readonly HardnessUnit[] = hardnessUnits.filter(
  (unit) => unit !== 'mmol/L acid',
);

const daysBetween = (from: string, until: string): number =>
  (Date.parse(until.slice(0, 10)) - Date.parse(from.slice(0, 10))) / 86_400_000;

const measured = (value: number): Reckoned => ({
  value,
  least: value * (1 - assumed.measuredShare),
  most: value * (1 + assumed.measuredShare),
  assumed: false,
});

const worst = ({ least, most }: { readonly least: number; readonly most: number }): Reckoned => ({
  value: (least + most) / 2,
  least,
  most,
  assumed: true,
});

/**
 * The water to reckon with: what was read, or the stated worst where nobody did or it is too old. The worst
 * is a range: acid is dosed from its lower end and measured, hardness is taken at its upper end.
 *
 * @param water - the latest reading; null when there is none
 * @param today - day, `2026-11-25`
 * @source workshop-setting (data/chemistry/supplyWater.json)
 */
export function waterToReckonWith(water: SupplyWater | null, today: string): ReckonedWater {
  const old = water !== null && daysBetween(water.on, today) > assumed.validDays;
  const alkalinity = old ? undefined : water?.alkalinityMgPerLCaCO3;
  const hardness = old ? undefined : water?.hardnessMgPerLCaCO3;
  const asks =
    water === null
      ? 'absent'
      : old
        ? 'old'
        : alkalinity === undefined
          ? 'no alkalinity'
          : hardness === undefined
            ? 'no hardness'
            : null;
  return {
    alkalinity: alkalinity === undefined ? worst(assumed.alkalinityMgPerLCaCO3) : measured(alkalinity),
    hardness: hardness === undefined ? worst(assumed.hardnessMgPerLCaCO3) : measured(hardness),
    asks,
    on: water?.on ?? null,
  };
}
