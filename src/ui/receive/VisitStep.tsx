import { routes } from '../../core/wash/index.ts';
import { scopes } from '../../dossier/index.ts';
import { Choice, ManyChoice } from '../kit/index.ts';
import type { StepProps } from './stepProps.ts';

const scopeWords = {
  wash: 'Wash',
  'dusting only': 'Dusting only',
  repair: 'Repair',
  appraisal: 'Appraisal',
  storage: 'Storage',
  'stain removal': 'Stain removal',
} as const;

const routeOptions = [
  { value: routes[0], words: 'Rug in use', hint: 'lies on a floor and will again' },
  { value: routes[1], words: 'Heritage piece', hint: 'no wet step without a conservator’s signature' },
] as const;

const authorityOptions = [
  { value: 'owner', words: 'Owner' },
  { value: 'for the owner', words: 'For the owner' },
  { value: 'dealer', words: 'Dealer' },
  { value: 'insurer', words: 'Insurer' },
  { value: 'museum', words: 'Museum' },
] as const;

/** What the rugs came for, by which route, and who may speak for them. */
export function VisitStep({ intake, change, faults }: StepProps) {
  return (
    <div className="form">
      <ManyChoice
        label="What is wanted?"
        options={scopes.map((value) => ({ value, words: scopeWords[value] }))}
        value={intake.scope}
        onChange={(scope) => change({ scope })}
        problem={faults['scope'] ?? null}
        isRequired
      />
      <Choice
        label="Which route?"
        options={routeOptions}
        value={intake.route}
        onChange={(route) => change({ route })}
      />
      <Choice
        label="The person who hands it over is"
        columns={3}
        options={authorityOptions}
        value={intake.authority}
        onChange={(authority) => change({ authority })}
      />
    </div>
  );
}
