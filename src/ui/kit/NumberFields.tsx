import { NumberField, type NumberProps } from './NumberField.tsx';

/** A number of something that is typed, under its name in it. */
export interface NumberOf<Name extends string> extends Omit<NumberProps, 'value' | 'onChange'> {
  readonly name: Name;
}

/** Several numbers of one thing that is typed; `fields` is a constant table of them. */
export function NumberFields<Name extends string>(props: {
  readonly fields: readonly NumberOf<Name>[];
  readonly typed: { readonly [N in Name]: number | null };
  readonly onChange: (name: Name, value: number | null) => void;
}) {
  const { fields, typed, onChange } = props;
  return fields.map(({ name, ...field }) => (
    <NumberField key={name} {...field} value={typed[name]} onChange={(value) => onChange(name, value)} />
  ));
}
