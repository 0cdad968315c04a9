import type { PlanStep, StepMix } from '../../core/wash/index.ts';
import { type RugFactOf, stepId } from '../../dossier/index.ts';
import { amountText } from '../../text/amountText.ts';

/** What one press records as taken from the shelf. */
export interface Taken {
  /** Id of the product. */
  readonly agent: string;
  readonly name: string;
  readonly lot: string;
  readonly amount: number;
  readonly unit: 'g' | 'mL';
}

/**
 * What a step took from the shelf if it was mixed as computed: said on the button that ends it, so that whoever
 * presses affirms it.
 *
 * @param mix - the step's mix; null before the shelf is known
 * @returns nothing where any amount is not known, or is known only for each litre
 * @source none: rule of this project
 */
export function takenAsMixed(mix: StepMix | null): readonly Taken[] {
  if (mix === null || mix.volume === 'each litre') return [];
  const taken = mix.lines.flatMap(({ product, lot, amount, problems }): readonly Taken[] =>
    product === null || lot === null || amount === null || problems.length > 0
      ? []
      : [
          {
            ...{ agent: product.id, name: product.name, lot },
            ...{ amount: Number(amount.computed.toPrecision(3)), unit: amount.unit },
          },
        ],
  );
  return taken.length === mix.lines.length ? taken : [];
}

/** Goes on from "Done": ", took 7.5 g Hearth crystals"; nothing where nothing was taken. */
export const takenWords = (taken: readonly Taken[]): string =>
  taken.length === 0
    ? ''
    : `, took ${taken.map(({ amount, unit, name }) => `${amountText(amount, unit)} ${name}`).join(' and ')}`;

/** The end of a step, with what it took from the shelf. */
export const doneAsMixed = (step: PlanStep, taken: readonly Taken[]): RugFactOf<'StepDone'> => ({
  ...{ type: 'StepDone', step: stepId(step) },
  ...(taken.length === 0 ? {} : { used: taken.map(({ agent, lot, amount }) => ({ agent, lot, amount })) }),
});
