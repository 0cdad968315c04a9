import { type Amount, bathAcid, type Mixed, stepMix, usualAmounts } from '../core/wash/index.ts';
import { agreedPlan, mixingPlaceOf } from '../dossier/index.ts';
import { figure } from './measureWords.ts';
import type { PaperContext } from './paperContext.ts';
import { row } from './parts.ts';
import { sourceWords } from './sourceWords.ts';

const amountWords = ({ agent, least, most, unit, source }: Amount, { words }: PaperContext): string => {
  const range =
    unit === 'g' || unit === 'mL'
      ? words.measuredOut(least, most, unit)
      : `${least === most ? figure(least, 1) : `${figure(least, 1)} to ${figure(most, 1)}`} ${unit}`;
  return `${range} ${agent} (${sourceWords(source)})`;
};

/**
 * Rows of what to take for a step's bath or a spotter: what it states, and what this shelf and this water
 * make of it; no row where that is nothing.
 */
export function takeRows(step: Mixed, context: PaperContext) {
  const { rug, shelf, issuedAt, words } = context;
  const bounds = agreedPlan(rug)?.bounds ?? { forbiddenAgents: [] };
  const place = shelf === undefined ? null : mixingPlaceOf(shelf, issuedAt);
  const mix = place === null ? null : stepMix(step, place);
  const acid = place === null ? null : bathAcid(step, place, bounds);
  const toBand = acid === null ? null : words.bathAcid(acid);
  const stated = mix === null ? step.amounts : usualAmounts(step, mix);
  const lines = mix?.lines ?? [];
  const isDosed = acid !== null || lines.some(({ targetPh, amount }) => targetPh !== null && amount !== null);
  const assumed = mix === null || !isDosed ? null : words.assumedWater(mix.water);
  const mixed = [
    ...lines.flatMap((line) => {
      const said = mix === null ? null : words.mixLine(mix, line);
      const { product, lot, agent, problems } = line;
      // A step that states no amount of its own takes its agent from the bath that was mixed and proved.
      const unmeasured = `${product?.name ?? agent}${lot === null ? '' : `, lot ${lot}`}: from the wash bath, no stronger`;
      const isUnmeasured =
        said === null && problems.length === 0 && stated.every((one) => one.agent !== agent);
      return [
        ...(said === null ? [] : [`${said.amount} ${said.of}`]),
        ...(isUnmeasured ? [unmeasured] : []),
        ...problems.map((problem) => {
          const { happened, now } = words.problem(problem);
          return `${happened} ${now}`;
        }),
      ];
    }),
    ...(toBand === null ? [] : [`${toBand.what} ${toBand.now}`]),
    ...(assumed === null ? [] : [`${assumed.what} ${assumed.now}`]),
  ];
  return [
    ...(stated.length === 0 ? [] : [row('Take', stated.map((one) => amountWords(one, context)).join('\n'))]),
    ...(mixed.length === 0 ? [] : [row('From the shelf', mixed.join('\n'), 'computed; measure before use')]),
  ];
}
