import type { WorkshopSettings } from '../../dossier/index.ts';
import { type FieldProblem, NumberField } from '../kit/index.ts';

type Units = WorkshopSettings['units'];

interface MeasureProps {
  readonly label: string;
  readonly units: Units;
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
  readonly hint?: string | undefined;
  readonly problem?: FieldProblem;
  readonly isRequired?: boolean;
}

const mmPerInch = 25.4;
const kgPerPound = 0.45359237;
const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

/** A quantity kept in its recorded unit and typed in the one the workshop thinks in. */
interface Typing {
  readonly unit: string;
  readonly toTyped: (value: number) => number;
  readonly toKept: (value: number) => number;
  readonly least: number;
  readonly most: number;
}

function TypedField({ typing, ...props }: MeasureProps & { readonly typing: Typing }) {
  const { value, onChange } = props;
  return (
    <NumberField
      label={props.label}
      unit={typing.unit}
      least={typing.least}
      most={typing.most}
      value={value === null ? null : typing.toTyped(value)}
      onChange={(typed) => onChange(typed === null ? null : typing.toKept(typed))}
      hint={props.hint}
      problem={props.problem ?? null}
      isRequired={props.isRequired ?? false}
    />
  );
}

const centimetres = (least: number, most: number): Typing => ({
  unit: 'cm',
  toTyped: (mm) => rounded(mm / 10, 2),
  toKept: (cm) => rounded(cm * 10, 1),
  least,
  most,
});
const inches = (least: number, most: number): Typing => ({
  unit: 'in',
  toTyped: (mm) => rounded(mm / mmPerInch, 2),
  toKept: (inch) => rounded(inch * mmPerInch, 2),
  least,
  most,
});

/** A length of the rug [mm], typed in centimetres or inches. */
export function LengthField(props: MeasureProps) {
  const isMetric = props.units === 'metric';
  const other = props.value === null || isMetric ? props.hint : `${rounded(props.value / 10, 1)} cm`;
  return <TypedField {...props} hint={other} typing={isMetric ? centimetres(5, 2500) : inches(2, 980)} />;
}

/** The length of a fringe [mm]; 0 where there is none. */
export function FringeField(props: MeasureProps) {
  return <TypedField {...props} typing={props.units === 'metric' ? centimetres(0, 100) : inches(0, 39)} />;
}

/** A mass [kg], typed in kilograms or pounds. */
export function MassField(props: MeasureProps) {
  const pounds: Typing = {
    unit: 'lb',
    toTyped: (kg) => rounded(kg / kgPerPound, 2),
    toKept: (lb) => rounded(lb * kgPerPound, 3),
    least: 0.1,
    most: 1100,
  };
  const kilograms: Typing = {
    unit: 'kg',
    toTyped: (kg) => kg,
    toKept: (kg) => kg,
    least: 0.05,
    most: 500,
  };
  return <TypedField {...props} typing={props.units === 'metric' ? kilograms : pounds} />;
}

/** A temperature of the air [°C], typed in the workshop's own degrees. */
export function AirTemperatureField(props: MeasureProps) {
  const fahrenheit: Typing = {
    unit: '°F',
    toTyped: (celsius) => rounded(celsius * 1.8 + 32, 1),
    toKept: (degrees) => rounded((degrees - 32) / 1.8, 2),
    least: -4,
    most: 122,
  };
  const celsius: Typing = { unit: '°C', toTyped: (c) => c, toKept: (c) => c, least: -20, most: 50 };
  return <TypedField {...props} typing={props.units === 'metric' ? celsius : fahrenheit} />;
}
