import {
  asCalciumCarbonate,
  type BathRecipe,
  type DoseUncertainty,
  type HardnessUnit,
  usualCorrectors,
  usualDoseUncertainty,
  usualRinse,
  waterToReckonWith,
} from '../../core/chemistry/index.ts';

/** What is typed at the mixing bench; every part of the page reads from it, so nothing is asked twice. */
export interface Mixing {
  readonly litres: number | null;
  readonly temperatureC: number | null;
  /** In its own unit. */
  readonly alkalinity: number | null;
  readonly alkalinityUnit: HardnessUnit;
  readonly agent: string;
  readonly targetPh: number | null;
  readonly massKg: number | null;
  readonly areaM2: number | null;
  readonly detergentBy: 'area' | 'bath';
  readonly activeGPerL: number | null;
  readonly activePercent: number | null;
  /** In its own unit. */
  readonly hardness: number | null;
  readonly hardnessUnit: HardnessUnit;
  readonly soap: string;
  readonly peroxideGPerL: number | null;
  readonly retainedLPerKg: number | null;
  readonly heldPh: number | null;
  readonly rinseWaterL: number | null;
  /** Null: what the workshop keeps to. */
  readonly sewerMostPh: number | null;
  readonly sewerMostC: number | null;
}

export const nothingTyped: Mixing = {
  ...{ litres: null, temperatureC: 20, alkalinity: null, alkalinityUnit: 'mg/L CaCO₃' },
  ...{ agent: usualCorrectors.acid, targetPh: 5, massKg: null, areaM2: null },
  ...{ detergentBy: 'area', activeGPerL: 0.5, activePercent: null },
  ...{ hardness: null, hardnessUnit: '°dH', soap: 'soap, as sodium oleate', peroxideGPerL: null },
  ...{ retainedLPerKg: usualRinse.extractedLPerKg, heldPh: 5.5, rinseWaterL: 0 },
  ...{ sewerMostPh: null, sewerMostC: null },
};

export interface MixingProps {
  readonly mixing: Mixing;
  readonly set: (changed: Partial<Mixing>) => void;
}

export const unknownWater = waterToReckonWith(null, '');

/** The bath before anything is put in, or null while litres or temperature are missing. */
export function bareBath(mixing: Mixing): BathRecipe | null {
  const { litres, temperatureC, alkalinity, alkalinityUnit } = mixing;
  if (litres === null || temperatureC === null) return null;
  return {
    ...{ litres, temperatureC, activity: 'davies', openToAir: false, add: [] },
    alkalinityMgPerLCaCO3:
      alkalinity === null ? unknownWater.alkalinity.value : asCalciumCarbonate(alkalinity, alkalinityUnit),
  };
}

/** How sure strength and water are; water nobody stated is anything the workshop reckons with. */
export const uncertaintyOf = ({ alkalinity }: Mixing): DoseUncertainty => ({
  ...usualDoseUncertainty,
  ...(alkalinity === null ? { alkalinity: 1 } : {}),
});

const significant = (value: number): string => String(Number(value.toPrecision(3)));

/** Grams as they are weighed. */
export const massText = (grams: number): string =>
  grams >= 1000
    ? `${significant(grams / 1000)} kg`
    : grams > 0 && grams < 0.1
      ? `${significant(grams * 1000)} mg`
      : `${significant(grams)} g`;
