import {
  asCalciumCarbonate,
  type HardnessUnit,
  hardnessUnits,
  hardnessUnitWords,
} from '../../core/chemistry/index.ts';
import { NumberField, Picker } from '../kit/index.ts';

/** The most any supply holds, in mg/L CaCO₃. */
const most = 2000;

/** Hardness or alkalinity in whatever unit the supplier states it; a change of unit keeps the water, not the figure. */
export function WaterField(props: {
  readonly label: string;
  readonly hint: string;
  readonly value: number | null;
  readonly unit: HardnessUnit;
  readonly onChange: (value: number | null, unit: HardnessUnit) => void;
  /** Alkalinity may also be stated as the acid it takes up. */
  readonly isAlkalinity?: boolean;
}) {
  const { label, hint, value, unit, onChange, isAlkalinity = false } = props;
  const known = hardnessUnits.filter((one) => isAlkalinity || one !== 'mmol/L acid');
  const changeUnit = (chosen: string) => {
    const next = known.find((one) => one === chosen) ?? unit;
    const kept =
      value === null
        ? null
        : Number((asCalciumCarbonate(value, unit) / asCalciumCarbonate(1, next)).toPrecision(4));
    onChange(kept, next);
  };
  return (
    <div className="pad">
      <NumberField
        key={unit}
        label={label}
        unit={unit}
        hint={hint}
        least={0}
        most={Number((most / asCalciumCarbonate(1, unit)).toPrecision(3))}
        value={value}
        onChange={(next) => onChange(next, unit)}
      />
      <Picker
        label={`Unit of the ${isAlkalinity ? 'alkalinity' : 'hardness'}`}
        options={known.map((one) => ({ value: one, words: hardnessUnitWords[one] }))}
        value={unit}
        onChange={changeUnit}
      />
    </div>
  );
}
