import { useState } from 'react';
import { Input, TextField } from 'react-aria-components';
import { type FieldProblem, fieldSentence } from './fieldProblem.tsx';
import { slipMark } from './goToSlip.ts';
import { FieldFoot, FieldName } from './LineField.tsx';
import { readNumber } from './readNumber.ts';

export interface NumberProps {
  readonly label: string;
  readonly unit: string;
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
  readonly least?: number;
  readonly most?: number;
  /** Shows − and + buttons that go by this much; 1 also refuses decimals. */
  readonly step?: number;
  readonly hint?: string | undefined;
  readonly problem?: FieldProblem;
  readonly isRequired?: boolean;
  readonly isDisabled?: boolean;
}

const rounded = (value: number) => Number(value.toPrecision(12));

/** Why the typed text is no value for this field, or null. */
const slip = (
  text: string,
  value: number | null,
  { label, unit, least, most }: NumberProps,
): string | null => {
  if (text.trim() === '') return null;
  const allowed =
    least !== undefined && most !== undefined
      ? `between ${least} and ${most} ${unit}`
      : least !== undefined
        ? `${least} ${unit} or more`
        : most !== undefined
          ? `at most ${most} ${unit}`
          : `such as 12.5 ${unit}`;
  const range = allowed.trim();
  if (value === null) return `“${text}” is not a number. Write ${label} as one number ${range}.`;
  const out = (least !== undefined && value < least) || (most !== undefined && value > most);
  return out ? `${label} is ${value} ${unit}. It must be ${range}.` : null;
};

/** A number with its unit; a value outside the allowed range stays visible and is reported, not changed. */
export function NumberField(props: NumberProps) {
  const { value, onChange, step, isRequired = false, isDisabled = false } = props;
  const [typed, setTyped] = useState<string | null>(null);
  const text = typed ?? (value === null ? '' : String(value));
  const read = readNumber(text);
  const fault = slip(text, read, props);
  const sentence =
    fieldSentence(props.problem) ??
    (fault !== null && (read !== null || typed === null || typed.length > 1) ? fault : null);
  const change = (next: string) => {
    setTyped(next);
    const number = readNumber(next);
    onChange(number !== null && slip(next, number, props) === null ? number : null);
  };
  const stepBy = (by: number) => change(String(rounded((read ?? 0) + by)));
  return (
    <TextField
      {...slipMark(fault !== null)}
      className="field number"
      value={text}
      onChange={change}
      onBlur={() => {
        if (fault === null) setTyped(null);
      }}
      isRequired={isRequired}
      isDisabled={isDisabled}
      isInvalid={sentence !== null}
      validationBehavior="aria"
      autoComplete="off"
      maxLength={20}
      inputMode={props.least !== undefined && props.least >= 0 ? 'decimal' : 'text'}
    >
      <FieldName label={props.label} isRequired={isRequired} />
      <div className="measure">
        {step === undefined ? null : (
          <StepButton
            words={`${props.label}: less`}
            sign="−"
            isDisabled={isDisabled}
            onPress={() => stepBy(-step)}
          />
        )}
        <div className="box withUnit">
          <Input className="bare" />
          <span className="unit">{props.unit}</span>
        </div>
        {step === undefined ? null : (
          <StepButton
            words={`${props.label}: more`}
            sign="+"
            isDisabled={isDisabled}
            onPress={() => stepBy(step)}
          />
        )}
      </div>
      <FieldFoot hint={props.hint} sentence={sentence} />
    </TextField>
  );
}

function StepButton(props: {
  readonly words: string;
  readonly sign: string;
  readonly isDisabled: boolean;
  readonly onPress: () => void;
}) {
  return (
    <button
      type="button"
      className="btn ghost square"
      aria-label={props.words}
      disabled={props.isDisabled}
      onClick={props.onPress}
    >
      {props.sign}
    </button>
  );
}
