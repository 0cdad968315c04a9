import type { ReckonedWater } from '../core/chemistry/index.ts';
import { type BathAcid, type MixLine, type StepMix, statedName } from '../core/wash/index.ts';
import { amountText, rangeText } from './amountText.ts';

const figure = (value: number): string => String(Number(value.toFixed(1)));

const bathWords = ({ litres, volume }: StepMix, { isNeat }: MixLine): string => {
  if (isNeat) return 'as it is, no water';
  if (volume === 'each litre') return 'for each litre';
  return volume === 'bath'
    ? `in ${figure(litres)} L`
    : `made up with water to ${amountText(litres * 1000, 'mL')}`;
};

/** What to measure out, and of what for which bath; null where nothing could be worked out. */
export function mixLineWords(
  mix: StepMix,
  line: MixLine,
): { readonly amount: string; readonly of: string } | null {
  const { amount, product, lot, agent, targetPh, standsAtPh } = line;
  if (amount === null) return null;
  const aim =
    targetPh === null
      ? ''
      : `, to pH ${figure(targetPh)} (computed ${amountText(amount.computed, amount.unit, amount.most)}; begin with the least)`;
  const stands =
    standsAtPh === null
      ? ''
      : `, stands at pH ${figure(standsAtPh.least)} to ${figure(standsAtPh.most)} by itself (computed)`;
  return {
    amount: rangeText(amount.least, amount.most, amount.unit),
    of: `${product?.name ?? statedName(agent)}${lot === null ? '' : `, lot ${lot}`}, ${bathWords(mix, line)}${aim}${stands}`,
  };
}

const why = {
  absent: 'The supply water was never read',
  old: 'The reading of the water is more than a year old',
  'no alkalinity': 'The water’s alkalinity is not known',
  'no hardness': null,
} as const;

/**
 * What is assumed of water whose alkalinity nobody knows, and what to measure; null where an acid's or an
 * alkali's amount stands on a reading in date.
 */
export function assumedWaterWords({
  asks,
  alkalinity,
}: ReckonedWater): { readonly what: string; readonly now: string } | null {
  const reason = asks === null ? null : why[asks];
  if (reason === null) return null;
  return {
    what: `${reason}: reckoned from ${figure(alkalinity.least)} to ${figure(alkalinity.most)} mg/L CaCO₃ of alkalinity, soft to hard.`,
    now: 'Begin with the least amount and measure the pH. To narrow it, read the alkalinity (drop test, or the supplier’s sheet) and write it on the page Shelf.',
  };
}

/** Why a neutral bath takes acid with this water, how much, and what comes before it is poured. */
export function bathAcidWords({ waterPh, band, mix, line }: BathAcid): {
  readonly what: string;
  readonly now: string;
} {
  const said = mixLineWords(mix, line);
  const water =
    waterPh === null ? 'The pH of the water is not known' : `The water stands at pH ${figure(waterPh)}`;
  const pour = said === null ? `${statedName(line.agent)}, a little at a time` : `${said.amount} ${said.of}`;
  return {
    what: `${water}; this rug bears ${figure(band.least)} to ${figure(band.most)} in this bath, and the detergent does not bring it there.`,
    now: `Measure the bath before it touches the rug. Where it stands above, bring it down with ${pour}. Only with an acid the dyes were tested with in this bath: else test it first. Never where chlorine or a sulfite may still be in the rug.`,
  };
}
