import { useMemo } from 'react';
import { type Amount, type PlanStep, usualAmounts, type WashPlan } from '../../../core/wash/index.ts';
import { agentCost, type WorkshopSettings } from '../../../dossier/index.ts';
import { rangeText } from '../../../text/amountText.ts';
import { useShelf } from '../../call/index.ts';
import { moneyText } from '../../kit/index.ts';
import { MixPart, useMix } from '../../wash/MixPart.tsx';
import { useDossier } from '../dossierView.ts';
import { figure, stainWords, temperatureWords } from '../figures.ts';
import { sourceWords } from '../limitWords.ts';

/** `120 g`, or `60 – 120 g` where it is a range. */
export const amountWords = ({ least, most, unit }: Amount): string =>
  unit === 'g' || unit === 'mL'
    ? rangeText(least, most, unit)
    : least === most
      ? `${figure(least)} ${unit}`
      : `${figure(least)} – ${figure(most)} ${unit}`;

/** `pH 5 – 6.5`, or one figure where nothing is left between the limits. */
export const phWords = ({ least, most }: { readonly least: number; readonly most: number }): string =>
  figure(least, 2) === figure(most, 2)
    ? `pH ${figure(least, 2)}`
    : `pH ${figure(least, 2)} – ${figure(most, 2)}`;

/** pH, warmth and dwell of a step in a line. */
export const aimWords = (
  { targetPh, temperatureC, dwellMinutes }: PlanStep,
  units: WorkshopSettings['units'],
): string =>
  [
    targetPh && phWords(targetPh),
    temperatureC &&
      `${temperatureWords(temperatureC.least, units)} – ${temperatureWords(temperatureC.most, units)}`,
    dwellMinutes === undefined ? undefined : `dwell ${figure(dwellMinutes)} min`,
  ]
    .filter((part) => part !== undefined)
    .join(', ');

/** What a step states beside what the shelf works out; no line where that is nothing. */
function UsualLine({ step }: { readonly step: PlanStep }) {
  const mix = useMix(step);
  const amounts = mix === null ? step.amounts : usualAmounts(step, mix);
  if (amounts.length === 0) return null;
  return <div>{amounts.map((amount) => `${amount.agent} ${amountWords(amount)}`).join(' · ')}</div>;
}

/** What the agents of the steps cost by the shelf's prices; nothing while no product has one. */
function CostLine({ steps }: Pick<WashPlan, 'steps'>) {
  const { now } = useDossier();
  const { standing } = useShelf();
  const today = now.slice(0, 10);
  const cost = useMemo(
    () => (standing === null ? null : agentCost(steps, standing, today)),
    [steps, standing, today],
  );
  if (cost === null || cost.costs.length === 0) return null;
  const spans = cost.costs.map(
    ({ leastMinor, mostMinor, currency }) =>
      `${moneyText(leastMinor, currency)} – ${moneyText(mostMinor, currency)}`,
  );
  return (
    <p>
      Agents by the shelf’s prices: <b>{spans.join(' and ')}</b>
      {cost.unknown.length === 0 ? '' : `, without ${cost.unknown.join(', ')}`}
    </p>
  );
}

/** The steps in order, with what to mix for this rug. */
export function StepList({ plan }: { readonly plan: WashPlan }) {
  const { standing, settings } = useDossier();
  return (
    <details className="steps">
      <summary>
        <h3>The steps ({plan.steps.length})</h3>
      </summary>
      <ol className="step-list">
        {plan.steps.map((step) => (
          <li key={step.order}>
            <b>{step.kind}</b>
            {step.wet ? '' : ' (dry)'}
            {step.stain === undefined ? '' : `, ${stainWords(standing.marks, step.stain)}`}
            <div>{step.what}</div>
            <UsualLine step={step} />
            <MixPart step={step} />
            <div className="why">
              {[
                aimWords(step, settings.units),
                step.people > 1 ? `${step.people} people` : '',
                step.protection.length > 0 ? `wear ${step.protection.join(', ')}` : '',
                step.amounts[0] === undefined ? '' : `amounts: ${sourceWords(step.amounts[0].source)}`,
              ]
                .filter((part) => part !== '')
                .join(' · ')}
            </div>
          </li>
        ))}
      </ol>
      <CostLine steps={plan.steps} />
    </details>
  );
}
