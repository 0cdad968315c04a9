import { boundsIn, keptFrom, type Measure, shownIn, type UnitSystem, unitOf } from '../../units/index.ts';
import type { FieldProblem } from './fieldProblem.tsx';
import { NumberField } from './NumberField.tsx';

/** A number typed in the workshop's units and kept in the measure's own; bounds are given as kept. */
export function MeasureField(props: {
  readonly label: string;
  readonly measure: Measure;
  readonly units: UnitSystem;
  readonly value: number | null;
  readonly onChange: (kept: number | null) => void;
  readonly least: number;
  readonly most: number;
  readonly hint?: string | undefined;
  readonly problem?: FieldProblem;
  readonly isRequired?: boolean;
  readonly isDisabled?: boolean;
}) {
  const { measure, units, value, onChange, least, most, ...field } = props;
  return (
    <NumberField
      {...field}
      {...boundsIn(measure, least, most, units)}
      unit={unitOf(measure, units)}
      value={value === null ? null : shownIn(measure, value, units)}
      onChange={(typed) => onChange(typed === null ? null : keptFrom(measure, typed, units))}
    />
  );
}
