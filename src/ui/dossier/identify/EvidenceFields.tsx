import { Choice } from '../../kit/index.ts';
import type { Claim } from './claimWords.ts';

export type Evidence = Claim['evidence'];
export type Confidence = Claim['confidence'];

const evidences: readonly { readonly value: Evidence; readonly words: string; readonly hint?: string }[] = [
  { value: 'seen', words: 'Seen' },
  { value: 'felt', words: 'Felt' },
  { value: 'burn test', words: 'Burn test' },
  { value: 'solubility test', words: 'Solubility test' },
  { value: 'microscope', words: 'Microscope' },
  { value: 'laboratory', words: 'Laboratory' },
  { value: 'comparison', words: 'Comparison' },
  { value: 'label', words: 'Label' },
  { value: 'papers', words: 'Papers' },
  { value: 'client says', words: 'Client says', hint: 'alone it counts as unknown' },
];

export function EvidenceField(props: {
  readonly value: Evidence | null;
  readonly onChange: (value: Evidence) => void;
}) {
  return <Choice label="What shows it" options={evidences} columns={2} {...props} />;
}

export function ConfidenceField(props: {
  readonly value: Confidence | null;
  readonly onChange: (value: Confidence) => void;
}) {
  return (
    <Choice
      label="How sure"
      columns={3}
      options={[
        { value: 'certain', words: 'Certain' },
        { value: 'probable', words: 'Probable' },
        { value: 'possible', words: 'Possible', hint: 'counts as unknown' },
      ]}
      {...props}
    />
  );
}
