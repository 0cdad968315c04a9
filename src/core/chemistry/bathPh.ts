import { done, type Problem, type Result, refused } from '../../units/index.ts';
import { balanceAt, type Constants, constantsAt, type Solution, sharesAt } from './chargeBalance.ts';

export interface Speciation {
  readonly pH: number;
  readonly ionicStrengthMolPerL: number;
  /** Remaining charge of the balance [mol/L]; 0 within rounding. */
  readonly residualMolPerL: number;
  /** Strong base a litre takes up per unit of pH [mol/L per pH, > 0]; small means that a pinch moves the pH. */
  readonly bufferCapacityMolPerLPerPh: number;
  /** Share of each family by protons lost, fully protonated first. */
  readonly shares: Readonly<Record<string, readonly number[]>>;
}

export type IonicStrengthTooHigh = Problem<
  'ionic-strength-too-high',
  { readonly ionicStrengthMolPerL: number; readonly most: number }
>;

/** Above this the Davies equation is no longer trusted. @source davies-1962 */
export const daviesMostMolPerL = 0.5;

/** What the rounding of a sum of charges leaves, as a share of all ions. */
const roundingShare = 1e-14;

/**
 * The zero of the balance, which falls as p rises: a span about the guess is widened until it holds the
 * zero, then closed by chords, and by halves wherever a chord gains too little.
 *
 * @source none: regula falsi with the Illinois rule, and bisection
 */
function rootOf(solution: Solution, constants: Constants, guess: number): number {
  const charge = (p: number) => balanceAt(solution, constants, p).chargeMolPerL;
  let [low, high] = [guess - 0.25, guess + 0.25];
  let [above, below] = [charge(low), charge(high)];
  for (let width = 0.5; above < 0 && low > -40; width *= 2) {
    [high, below, low] = [low, above, low - width];
    above = charge(low);
  }
  for (let width = 0.5; below > 0 && high < 60; width *= 2) {
    [low, above, high] = [high, below, high + width];
    below = charge(high);
  }
  let kept = 0;
  for (let i = 0; i < 200; i++) {
    const chord = low + ((high - low) * above) / (above - below);
    const isHalved = i % 3 === 2 || !(chord > low && chord < high);
    const middle = isHalved ? (low + high) / 2 : chord;
    if (middle <= low || middle >= high) break;
    const { chargeMolPerL: found, strengthMolPerL } = balanceAt(solution, constants, middle);
    if (Math.abs(found) <= roundingShare * strengthMolPerL) return middle;
    if (found > 0) {
      [low, above] = [middle, found];
      if (kept > 0) below /= 2;
      kept = 1;
    } else {
      [high, below] = [middle, found];
      if (kept < 0) above /= 2;
      kept = -1;
    }
  }
  return (low + high) / 2;
}

/**
 * Ionic strength and what follows from it, each from the other until they agree.
 *
 * @param solve - what holds at the constants of an ionic strength, with the strength it gives
 * @refuses ionic-strength-too-high - where they agree only above the strength Davies bears
 * @source davies-1962, range of validity
 */
export function atOwnStrength<Solved extends { readonly strengthMolPerL: number }>(
  activity: Solution['activity'],
  solve: (strengthMolPerL: number) => Solved,
): Result<Solved, IonicStrengthTooHigh> {
  let strength = 0;
  let solved = solve(strength);
  for (let i = 0; i < 60 && activity === 'davies'; i++) {
    // On the way the strength may overshoot; only where it comes to rest counts.
    const next = Math.min(daviesMostMolPerL, Math.max(0, solved.strengthMolPerL));
    if (Math.abs(next - strength) < 1e-13) break;
    strength = next;
    solved = solve(strength);
  }
  if (activity === 'davies' && solved.strengthMolPerL > daviesMostMolPerL) {
    const facts = { ionicStrengthMolPerL: solved.strengthMolPerL, most: daviesMostMolPerL };
    return refused('ionic-strength-too-high', facts);
  }
  return done(solved);
}

/** Small against any buffer’s width in pH, large against rounding. */
const stepPh = 1e-4;

/**
 * pH of a bath by charge balance over all its acids, bases and strong ions.
 *
 * @param solution - totals [mol/L, ≥ 0], temperature [°C, 0 … 60]
 * @returns pH as a meter would read it, ionic strength, buffer capacity, and how far each acid has lost its protons
 * @refuses ionic-strength-too-high - above 0.5 mol/L the Davies equation has no ground
 * @source davies-1962 for activities; crc-handbook for constants; charge balance as in stumm-morgan-1996
 * @accuracy within 0.05 of the IUPAC standard buffers, checked in bathPh.test.ts
 */
export function bathPh(solution: Solution): Result<Speciation, IonicStrengthTooHigh> {
  let guess = 7;
  const solved = atOwnStrength(solution.activity, (strength) => {
    const constants = constantsAt(solution, strength);
    const p = rootOf(solution, constants, guess);
    guess = p;
    return { p, constants, ...balanceAt(solution, constants, p) };
  });
  if (!solved.ok) return solved;
  const { p, constants, chargeMolPerL, strengthMolPerL } = solved.value;
  const [before, after] = [p - stepPh, p + stepPh].map(
    (at) => balanceAt(solution, constants, at).chargeMolPerL,
  );
  return done({
    pH: p - constants.logGammaH,
    ionicStrengthMolPerL: strengthMolPerL,
    residualMolPerL: chargeMolPerL,
    bufferCapacityMolPerLPerPh: ((before ?? 0) - (after ?? 0)) / (2 * stepPh),
    shares: Object.fromEntries(constants.families.map(({ acid, pK }) => [acid, sharesAt(pK, p)])),
  });
}
