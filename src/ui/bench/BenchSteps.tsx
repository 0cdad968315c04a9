import type { PlanStep, WashPlan } from '../../core/wash/index.ts';
import type { WorkshopSettings } from '../../dossier/workshopFacts.ts';
import { useSettings } from '../call/index.ts';
import { sourceWords } from '../dossier/limitWords.ts';
import { aimWords, amountWords } from '../dossier/plan/StepList.tsx';

/** The steps in order, with what to mix. */
export function BenchSteps({ plan }: { readonly plan: WashPlan }) {
  const { units } = useSettings();
  return (
    <details className="more">
      <summary>{plan.steps.length === 1 ? 'The one step' : `The ${plan.steps.length} steps`}</summary>
      <ol>
        {plan.steps.map((step) => (
          <li key={step.order}>
            <b>{step.kind}</b>
            {step.wet ? '' : ' (dry)'}
            <div>{step.what}</div>
            {step.amounts.length === 0 ? null : (
              <div>{step.amounts.map((amount) => `${amount.agent} ${amountWords(amount)}`).join(' · ')}</div>
            )}
            <span className="why">{besides(step, units)}</span>
          </li>
        ))}
      </ol>
    </details>
  );
}

const besides = (step: PlanStep, units: WorkshopSettings['units']): string =>
  [
    aimWords(step, units),
    step.people > 1 ? `${step.people} people` : '',
    step.protection.length > 0 ? `wear ${step.protection.join(', ')}` : '',
    step.amounts[0] === undefined ? '' : `amounts: ${sourceWords(step.amounts[0].source)}`,
  ]
    .filter((part) => part !== '')
    .join(' · ');
