import { type AgentKind, agentKinds, chemicalAgents, strengthUnits } from '../../core/chemistry/index.ts';
import type { ShelfFactOf } from '../../dossier/index.ts';
import { Button, Check, NumberField, Picker } from '../kit/index.ts';

export type Part = ShelfFactOf<'AgentShelved'>['parts'][number];

/** Largest figure a strength may have in its unit. */
const mostIn = { '% w/w': 100, 'g/L': 3000 } as const;

/** One constituent as the data sheet states it; what it does not state counts as the strongest. */
export function PartFields(props: {
  readonly at: number;
  readonly part: Part;
  readonly onChange: (part: Part) => void;
  readonly onRemove: (() => void) | null;
}) {
  const { at, part, onChange, onRemove } = props;
  const { chemical: _chemical, ...unnamed } = part;
  const { value: _value, ...unstated } = part;
  const isStated = 'value' in part;
  const named = chemicalAgents.filter(({ kind }) => kind === part.kind).map(({ agent }) => agent);
  return (
    <div className="constituent">
      <div className="sectTop">
        <h4>Constituent {at}</h4>
        {onRemove === null ? null : (
          <Button tone="ghost" label={`Take away constituent ${at}`} onPress={onRemove}>
            ✕
          </Button>
        )}
      </div>
      <Picker
        label={`Kind ${at}`}
        options={agentKinds}
        value={part.kind}
        onChange={(kind) => onChange({ ...unnamed, kind: kind as AgentKind })}
      />
      {named.length === 0 ? null : (
        <Picker
          label={`Chemical ${at}, with its hydrate`}
          any="Another, or not known"
          options={named}
          value={part.chemical ?? ''}
          onChange={(chemical) => onChange(chemical === '' ? unnamed : { ...part, chemical })}
        />
      )}
      {isStated ? (
        <>
          <NumberField
            label={`Strength ${at}`}
            unit={part.unit}
            least={0}
            most={mostIn[part.unit]}
            value={part.value ?? null}
            onChange={(value) => onChange({ ...part, value: value ?? undefined })}
            isRequired
          />
          <Picker
            label={`Unit of strength ${at}`}
            options={strengthUnits}
            value={part.unit}
            onChange={(unit) => onChange({ ...part, unit } as Part)}
          />
        </>
      ) : null}
      <Check
        label="Its strength is not known"
        hint="It then counts as the strongest it can be."
        isSelected={!isStated}
        onChange={(unknown) => onChange(unknown ? unstated : { ...part, value: undefined })}
      />
    </div>
  );
}
