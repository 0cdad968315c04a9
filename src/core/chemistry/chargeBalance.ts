import { acidFamilies, carbonicInAirMolPerL, daviesSlopeAt, ionProductPkw, pKaAt } from './acidTable.ts';

/** A bath as the balance sees it: totals of each acid family and of the spectator ions [mol/L]. */
export interface Solution {
  readonly acidsMolPerL: Readonly<Record<string, number>>;
  readonly strongChargeMolPerL: number;
  /** Ionic strength of the ions that take no part in any balance, both signs together. */
  readonly spectatorStrengthMolPerL: number;
  readonly temperatureC: number;
  readonly activity: 'ideal' | 'davies';
  readonly openToAir: boolean;
}

/** log10 of the activity coefficient of an ion of charge z. @source davies-1962, A by temperature */
const daviesLog = (slope: number, charge: number, strength: number): number => {
  const root = Math.sqrt(strength);
  return -slope * charge * charge * (root / (1 + root) - 0.3 * strength);
};

interface Family {
  readonly acid: string;
  readonly topCharge: number;
  readonly totalMolPerL: number;
  /** The neutral form is held by the gas, and the total follows from it. */
  readonly heldMolPerL: number | null;
  /** Concentration constants, pK with [H⁺] as a concentration. */
  readonly pK: readonly number[];
}

export interface Constants {
  readonly families: readonly Family[];
  readonly pKw: number;
  readonly logGammaH: number;
}

/** The constants of a bath at an ionic strength, for each acid in it or in `besides`. */
export function constantsAt(
  { acidsMolPerL, temperatureC, activity, openToAir }: Solution,
  strength: number,
  besides: Readonly<Record<string, number>> = {},
): Constants {
  const slope = activity === 'ideal' ? 0 : daviesSlopeAt(temperatureC);
  const log = (charge: number) => daviesLog(slope, charge, strength);
  const families = acidFamilies.flatMap((family): readonly Family[] => {
    const { acid, topCharge } = family;
    const totalMolPerL = acidsMolPerL[acid] ?? 0;
    const isHeld = acid === 'carbonic' && openToAir;
    if (totalMolPerL <= 0 && !isHeld && (besides[acid] ?? 0) <= 0) return [];
    const pK = pKaAt(family, temperatureC).map(
      (pKa, i) => pKa + log(topCharge - i - 1) + log(1) - log(topCharge - i),
    );
    return [
      { acid, topCharge, totalMolPerL, heldMolPerL: isHeld ? carbonicInAirMolPerL(temperatureC) : null, pK },
    ];
  });
  return { families, pKw: ionProductPkw(temperatureC) + 2 * log(1), logGammaH: log(1) };
}

/** Shares of a family by protons lost, at a proton concentration 10^−p; scaled so that nothing overflows. */
export function sharesAt(pK: readonly number[], p: number): readonly number[] {
  const logs = [0];
  for (const k of pK) logs.push((logs.at(-1) ?? 0) + p - k);
  const most = Math.max(...logs);
  const weights = logs.map((value) => 10 ** (value - most));
  const sum = weights.reduce((a, b) => a + b, 0);
  return weights.map((weight) => weight / sum);
}

export interface Balance {
  /** What is left over of the charges [mol/L]; 0 at the pH of the bath. */
  readonly chargeMolPerL: number;
  readonly strengthMolPerL: number;
}

/** Charge and ionic strength that one mole of a family carries at 10^−p, and its share with every proton on. */
export function carriedAt(
  { topCharge, pK }: Pick<Family, 'topCharge' | 'pK'>,
  p: number,
): Balance & { readonly topShare: number } {
  // Scaled by the largest form so far, so that nothing overflows.
  let [log, most, sum, charge, squares] = [0, 0, 1, topCharge, topCharge * topCharge];
  pK.forEach((k, i) => {
    const z = topCharge - i - 1;
    log += p - k;
    const scale = log > most ? 10 ** (most - log) : 1;
    most = Math.max(most, log);
    const weight = 10 ** (log - most);
    sum = sum * scale + weight;
    charge = charge * scale + z * weight;
    squares = squares * scale + z * z * weight;
  });
  return { chargeMolPerL: charge / sum, strengthMolPerL: squares / (2 * sum), topShare: 10 ** -most / sum };
}

/**
 * The charges of a bath at a proton concentration of 10^−p.
 *
 * @source stumm-morgan-1996, charge balance
 */
export function balanceAt(solution: Solution, constants: Constants, p: number): Balance {
  const [proton, hydroxide] = [10 ** -p, 10 ** (p - constants.pKw)];
  let charge = proton - hydroxide + solution.strongChargeMolPerL;
  let strength = (proton + hydroxide) / 2 + solution.spectatorStrengthMolPerL;
  for (const family of constants.families) {
    const carried = carriedAt(family, p);
    const total = family.heldMolPerL === null ? family.totalMolPerL : family.heldMolPerL / carried.topShare;
    charge += carried.chargeMolPerL * total;
    strength += carried.strengthMolPerL * total;
  }
  return { chargeMolPerL: charge, strengthMolPerL: strength };
}
