import { done, type Result } from '../../units/index.ts';
import { strengthShare } from './agentName.ts';
import type { BathRecipe } from './bathRecipe.ts';
import { type DoseProblem, type DoseUncertainty, usualDoseUncertainty } from './dose.ts';
import { phOfBath } from './neutralise.ts';

/** What a computed pH itself may be off, by the activity law and the constants. */
const modelPh = 0.05;

interface Span {
  readonly least: number;
  readonly most: number;
}

/**
 * pH of a bath with the range that uncertain strengths and water give it. Each agent and the water is taken
 * at either end by itself, and what they do is added up, as if all erred the same way.
 *
 * @param bath - as it is meant to be
 * @param uncertainty - shares by which strength and alkalinity may be off
 * @param alkalinity - the range of the water where it is known otherwise [mg/L CaCO₃]
 * @refuses as phOfBath
 * @source jcgm-100, limits of error added linearly; 0.05 for the law itself as checked against iupac-ph-2002
 */
export function phRange(
  bath: BathRecipe,
  uncertainty: DoseUncertainty = usualDoseUncertainty,
  alkalinity: Span | null = null,
): Result<{ readonly pH: number } & Span, DoseProblem> {
  const middle = phOfBath(bath);
  if (!middle.ok) return middle;
  const pH = middle.value;
  const water = alkalinity ?? {
    least: bath.alkalinityMgPerLCaCO3 * (1 - uncertainty.alkalinity),
    most: bath.alkalinityMgPerLCaCO3 * (1 + uncertainty.alkalinity),
  };
  const scaled = (at: number, share: number): BathRecipe => ({
    ...bath,
    add: bath.add.map((one, i) => {
      if (i !== at) return one;
      const { grams, millilitres } = one;
      return {
        ...one,
        grams: grams === undefined ? undefined : grams * share,
        millilitres: millilitres === undefined ? undefined : millilitres * share,
      };
    }),
  });
  const inputs: readonly (readonly BathRecipe[])[] = [
    [water.least, water.most].map((alkalinityMgPerLCaCO3) => ({ ...bath, alkalinityMgPerLCaCO3 })),
    ...bath.add.map(({ agent, strength }, at) => {
      const share = strengthShare(agent, strength, uncertainty.strength);
      return [-1, 1].map((way) => scaled(at, 1 + way * share));
    }),
  ];
  let [down, up] = [modelPh, modelPh];
  for (const ends of inputs) {
    const moves = ends.flatMap((end) => {
      const moved = phOfBath(end);
      return moved.ok ? [moved.value - pH] : [];
    });
    down += Math.max(0, ...moves.map((move) => -move));
    up += Math.max(0, ...moves);
  }
  return done({ pH, least: pH - down, most: pH + up });
}
