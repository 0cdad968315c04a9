import { type Amount, isMixedAnew, type MixLine, type PlanStep, stepMix } from '../core/wash/index.ts';
import { mixingPlaceOf } from '../dossier/index.ts';
import { figure } from './measureWords.ts';
import type { PaperContext } from './paperContext.ts';

const lineWords = (
  { product, agent, lot, amount, targetPh, problems }: MixLine,
  bath: string,
  { words }: PaperContext,
): readonly string[] => [
  ...(amount === null
    ? []
    : [
        `${figure(amount.least, 1)} to ${figure(amount.most, 1)} ${amount.unit} ${product?.name ?? `pure ${agent}`}${lot === null ? '' : `, lot ${lot}`}, ${bath}${targetPh === null ? '' : `, to pH ${figure(targetPh)}; begin with the least`}`,
      ]),
  ...problems.map((problem) => {
    const { happened, now } = words.problem(problem);
    return `${happened} ${now}`;
  }),
];

/** What a step's bath takes from this shelf with this water; nothing where the shelf is not known. */
export function mixWords(step: PlanStep, context: PaperContext): readonly string[] {
  if (context.shelf === undefined) return [];
  const { lines, litres, perLitre, water } = stepMix(step, mixingPlaceOf(context.shelf, context.issuedAt));
  const bath = perLitre ? 'for each litre' : `in ${figure(litres)} L`;
  const isAssumed = water.alkalinity.assumed && lines.some(({ targetPh }) => targetPh !== null);
  return [
    ...lines.flatMap((line) => lineWords(line, bath, context)),
    ...(isAssumed ? ['The water’s alkalinity is not known: the worst is assumed.'] : []),
  ];
}

/** Usual amounts that the shelf and the water decide instead. */
export const mixedAmounts =
  (step: PlanStep, { shelf }: PaperContext) =>
  (amount: Amount): boolean =>
    shelf !== undefined && isMixedAnew(step, amount);
