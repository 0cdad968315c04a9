import { done, type Result } from '../../units/index.ts';
import { bathPh, type IonicStrengthTooHigh, type Solution } from './bathPh.ts';

/** Small against any bath, large against the rounding of the balance [mol/L]. */
const step = 1e-7;

/**
 * How much strong base (or acid) a litre of a bath takes up for each unit of pH.
 *
 * @param solution - the bath as the balance sees it
 * @returns buffer capacity dC/dpH [mol/L per pH, > 0]; a small one means that a pinch moves the pH
 * @refuses ionic-strength-too-high - as for the pH itself
 * @source none: definition (Van Slyke), by difference over the charge balance
 */
export function bufferCapacity(solution: Solution): Result<number, IonicStrengthTooHigh> {
  const { strongChargeMolPerL } = solution;
  const less = bathPh({ ...solution, strongChargeMolPerL: strongChargeMolPerL - step });
  if (!less.ok) return less;
  const more = bathPh({ ...solution, strongChargeMolPerL: strongChargeMolPerL + step });
  if (!more.ok) return more;
  return done((2 * step) / (more.value.pH - less.value.pH));
}
