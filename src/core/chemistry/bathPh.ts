import { done, type Problem, type Result, refused } from '../../units/index.ts';
import { acidFamilies, carbonicInAirMolPerL, ionProductPkw, pKaAt } from './acidTable.ts';

/** A bath as the balance sees it: totals of each acid family and the charge of everything strong [mol/L]. */
export interface Solution {
  readonly acidsMolPerL: Readonly<Record<string, number>>;
  readonly strongChargeMolPerL: number;
  readonly inertIonicStrengthMolPerL: number;
  readonly temperatureC: number;
  readonly activity: 'ideal' | 'davies';
  readonly openToAir: boolean;
}

export interface Speciation {
  readonly pH: number;
  readonly ionicStrengthMolPerL: number;
  /** Remaining charge of the balance [mol/L]; 0 within rounding. */
  readonly residualMolPerL: number;
  /** Share of each family by protons lost, fully protonated first. */
  readonly shares: Readonly<Record<string, readonly number[]>>;
}

export type IonicStrengthTooHigh = Problem<
  'ionic-strength-too-high',
  { readonly ionicStrengthMolPerL: number; readonly most: number }
>;

/** Above this the Davies equation is no longer trusted. @source davies-1962 */
export const daviesMostMolPerL = 0.5;

/** log10 of the activity coefficient of an ion of charge z. @source davies-1962, A = 0.509 at 25 °C */
const daviesLog = (charge: number, strength: number): number => {
  const root = Math.sqrt(strength);
  return -0.509 * charge * charge * (root / (1 + root) - 0.3 * strength);
};

interface Constants {
  readonly families: readonly {
    readonly acid: string;
    readonly topCharge: number;
    readonly totalMolPerL: number;
    /** Concentration constants, pK with [H⁺] as a concentration. */
    readonly pK: readonly number[];
  }[];
  readonly pKw: number;
  readonly logGammaH: number;
}

function constantsAt(solution: Solution, strength: number): Constants {
  const log = (charge: number) => (solution.activity === 'ideal' ? 0 : daviesLog(charge, strength));
  const families = acidFamilies
    .filter(
      ({ acid }) => (solution.acidsMolPerL[acid] ?? 0) > 0 || (acid === 'carbonic' && solution.openToAir),
    )
    .map((family) => ({
      acid: family.acid,
      topCharge: family.topCharge,
      totalMolPerL: solution.acidsMolPerL[family.acid] ?? 0,
      pK: pKaAt(family, solution.temperatureC).map((pKa, i) => {
        const charge = family.topCharge - i;
        return pKa + log(charge - 1) + log(1) - log(charge);
      }),
    }));
  return { families, pKw: ionProductPkw(solution.temperatureC) + 2 * log(1), logGammaH: log(1) };
}

/** Shares of a family by protons lost, at a proton concentration 10^−p; scaled so that nothing overflows. */
function sharesAt(pK: readonly number[], p: number): readonly number[] {
  const logs = [0];
  for (const k of pK) logs.push((logs.at(-1) ?? 0) + p - k);
  const most = Math.max(...logs);
  const weights = logs.map((value) => 10 ** (value - most));
  const sum = weights.reduce((a, b) => a + b, 0);
  return weights.map((weight) => weight / sum);
}

interface Balance {
  readonly chargeMolPerL: number;
  readonly strengthMolPerL: number;
}

function balanceAt(solution: Solution, constants: Constants, p: number): Balance {
  const [proton, hydroxide] = [10 ** -p, 10 ** (p - constants.pKw)];
  let charge = proton - hydroxide + solution.strongChargeMolPerL;
  let strength = proton + hydroxide + Math.abs(solution.strongChargeMolPerL);
  for (const { acid, topCharge, totalMolPerL, pK } of constants.families) {
    const shares = sharesAt(pK, p);
    // Open to air the neutral form is held by the gas; the total follows from it.
    const total =
      acid === 'carbonic' && solution.openToAir ? carbonicInAirMolPerL / (shares[0] ?? 1) : totalMolPerL;
    shares.forEach((share, lost) => {
      const z = topCharge - lost;
      charge += z * share * total;
      strength += z * z * share * total;
    });
  }
  return { chargeMolPerL: charge, strengthMolPerL: strength / 2 + solution.inertIonicStrengthMolPerL };
}

/** The balance falls as p rises, so halving the span always closes in on its zero. */
function rootOf(solution: Solution, constants: Constants): number {
  let [low, high] = [-3, 17];
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (balanceAt(solution, constants, middle).chargeMolPerL > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * pH of a bath by charge balance over all its acids, bases and strong ions.
 *
 * @param solution - totals [mol/L, ≥ 0], temperature [°C, 0 … 60]
 * @returns pH as a meter would read it, ionic strength, and how far each acid has lost its protons
 * @refuses ionic-strength-too-high - above 0.5 mol/L the Davies equation has no ground
 * @source davies-1962 for activities; crc-handbook for constants; charge balance as in stumm-morgan-1996
 * @accuracy within 0.05 of the IUPAC standard buffers, checked in bathPh.test.ts
 */
export function bathPh(solution: Solution): Result<Speciation, IonicStrengthTooHigh> {
  let strength = 0;
  let constants = constantsAt(solution, strength);
  let p = rootOf(solution, constants);
  for (let i = 0; i < 60 && solution.activity === 'davies'; i++) {
    const next = balanceAt(solution, constants, p).strengthMolPerL;
    if (next > daviesMostMolPerL) {
      return refused('ionic-strength-too-high', { ionicStrengthMolPerL: next, most: daviesMostMolPerL });
    }
    if (Math.abs(next - strength) < 1e-13) break;
    strength = next;
    constants = constantsAt(solution, strength);
    p = rootOf(solution, constants);
  }
  const { chargeMolPerL, strengthMolPerL } = balanceAt(solution, constants, p);
  const shares = Object.fromEntries(constants.families.map(({ acid, pK }) => [acid, sharesAt(pK, p)]));
  return done({
    pH: p - constants.logGammaH,
    ionicStrengthMolPerL: strengthMolPerL,
    residualMolPerL: chargeMolPerL,
    shares,
  });
}
