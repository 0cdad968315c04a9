import { allowedWords, type OwnMixture, type RuleEntry } from '../../core/wash/index.ts';
import { Check, LineField, ManyChoice, NumberField, Picker } from '../kit/index.ts';
import { ruleName } from './ruleWords.ts';

interface FieldProps {
  readonly entry: RuleEntry;
  readonly value: unknown;
  readonly onChange: (value: unknown) => void;
}

interface Ends {
  readonly least: number | null;
  readonly most: number | null;
}

const options = (words: readonly string[]) => words.map((word) => ({ value: word, words: word }));

/** The field a value is typed or chosen in, by its form. */
export function RuleField({ entry, value, onChange }: FieldProps) {
  const { form } = entry;
  const label = ruleName(entry);
  switch (form.kind) {
    case 'words':
      return (
        <Picker
          label={label}
          options={form.options}
          value={typeof value === 'string' ? value : (form.options[0] ?? '')}
          onChange={onChange}
        />
      );
    case 'number':
      return (
        <NumberField
          label={label}
          unit={form.unit}
          least={form.least}
          most={form.most}
          hint={`Allowed: ${allowedWords(form)}.`}
          value={typeof value === 'number' ? value : null}
          onChange={onChange}
        />
      );
    case 'band':
      return <BandField label={label} form={form} value={value} onChange={onChange} />;
    case 'list':
      return (
        <ManyChoice
          label={label}
          options={options(form.options)}
          value={(value as readonly string[] | null) ?? []}
          onChange={onChange}
        />
      );
    case 'mixture': {
      const mixture = (value as OwnMixture | null) ?? { a: [], b: [], hazard: '' };
      const change = (changed: Partial<OwnMixture>) => onChange({ ...mixture, ...changed });
      return (
        <>
          <LineField
            label="What happens"
            hint="The hazard, as the washer reads it."
            value={mixture.hazard}
            onChange={(hazard) => change({ hazard })}
            isRequired
          />
          <ManyChoice
            label="These"
            options={options(form.options)}
            value={mixture.a}
            onChange={(a) => change({ a })}
          />
          <ManyChoice
            label="never with these"
            hint="None: the first alone is forbidden."
            options={options(form.options)}
            value={mixture.b}
            onChange={(b) => change({ b })}
          />
        </>
      );
    }
    case 'fixed':
      return null;
  }
}

function BandField(props: {
  readonly label: string;
  readonly form: { readonly least: number; readonly most: number; readonly unit: string };
  readonly value: unknown;
  readonly onChange: (value: unknown) => void;
}) {
  const { label, form, value, onChange } = props;
  const isDry = value === 'no liquid';
  const ends: Ends = isDry || value === null ? { least: null, most: null } : (value as Ends);
  const bounds = {
    ...{ unit: form.unit, least: form.least, most: form.most },
    hint: `Allowed: ${form.least} to ${form.most} ${form.unit}.`,
  };
  return (
    <>
      {isDry ? null : (
        <>
          <NumberField
            label={`${label}, from`}
            {...bounds}
            value={ends.least}
            onChange={(least) => onChange({ ...ends, least })}
          />
          <NumberField
            label={`${label}, to`}
            {...bounds}
            value={ends.most}
            onChange={(most) => onChange({ ...ends, most })}
          />
        </>
      )}
      {form.unit === 'pH' ? (
        <Check
          label="No liquid at all"
          isSelected={isDry}
          onChange={(dry) => onChange(dry ? 'no liquid' : { least: null, most: null })}
        />
      ) : null}
    </>
  );
}
