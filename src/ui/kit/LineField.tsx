import type { ReactNode } from 'react';
import { FieldError, Input, Label, Text, TextArea, TextField } from 'react-aria-components';
import { type FieldProblem, fieldSentence } from './fieldProblem.tsx';
import { slipMark } from './goToSlip.ts';

interface TextProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly problem?: FieldProblem;
  readonly hint?: string | undefined;
  readonly isRequired?: boolean;
  readonly isDisabled?: boolean;
}

interface LineProps extends TextProps {
  readonly type?: 'text' | 'password' | 'email' | 'tel' | 'search' | 'date';
  /** What the browser may fill in; `off` unless told. */
  readonly autoComplete?: string;
  readonly inputMode?: 'text' | 'numeric' | 'decimal' | 'search';
  readonly focusFirst?: boolean;
  readonly mostCharacters?: number;
}

/** One line of text. The problem stands under the field, and what was typed stays in it. */
export function LineField(props: LineProps) {
  const { isRequired = false, isDisabled = false, type = 'text', autoComplete = 'off' } = props;
  const sentence = fieldSentence(props.problem);
  return (
    <TextField
      className="field"
      value={props.value}
      onChange={props.onChange}
      isRequired={isRequired}
      isDisabled={isDisabled}
      isInvalid={sentence !== null}
      validationBehavior="aria"
      type={type}
      autoComplete={autoComplete}
      maxLength={props.mostCharacters ?? 300}
      autoFocus={props.focusFirst ?? false}
      {...(props.inputMode === undefined ? {} : { inputMode: props.inputMode })}
    >
      <FieldName label={props.label} isRequired={isRequired} />
      <Input className="box" />
      <FieldFoot hint={props.hint} sentence={sentence} />
    </TextField>
  );
}

/** The record takes no longer passage; see `passage` in src/dossier/facts/shape.ts. */
const mostInPassage = 20_000;

/** Several lines of text. Text that is too long stays and is reported, never cut. */
export function PassageField(props: TextProps & { readonly rows?: number }) {
  const { isRequired = false, isDisabled = false } = props;
  const { length } = props.value;
  const isTooLong = length > mostInPassage;
  const tooLong = `This is ${length} characters long. At most ${mostInPassage} are kept: shorten it.`;
  const sentence = fieldSentence(props.problem) ?? (isTooLong ? tooLong : null);
  return (
    <TextField
      {...slipMark(isTooLong)}
      className="field"
      value={props.value}
      onChange={props.onChange}
      isRequired={isRequired}
      isDisabled={isDisabled}
      isInvalid={sentence !== null}
      validationBehavior="aria"
    >
      <FieldName label={props.label} isRequired={isRequired} />
      <TextArea className="box passage" rows={props.rows ?? 3} />
      <FieldFoot hint={props.hint} sentence={sentence} />
    </TextField>
  );
}

/** A day, as `2026-11-25`, or null while none is given. */
export function DayField(
  props: Omit<TextProps, 'value' | 'onChange'> & {
    readonly value: string | null;
    readonly onChange: (value: string | null) => void;
  },
) {
  const { value, onChange, ...rest } = props;
  return (
    <LineField
      {...rest}
      type="date"
      value={value ?? ''}
      onChange={(day) => onChange(day === '' ? null : day)}
    />
  );
}

export function FieldName({ label, isRequired }: { readonly label: string; readonly isRequired: boolean }) {
  return (
    <Label className="name">
      {label}
      {isRequired ? (
        <span className="needed" aria-hidden="true">
          {' needed'}
        </span>
      ) : null}
    </Label>
  );
}

export function FieldFoot(props: { readonly hint: string | undefined; readonly sentence: ReactNode }) {
  return (
    <>
      {props.hint === undefined ? null : (
        <Text slot="description" className="hint">
          {props.hint}
        </Text>
      )}
      <FieldError className="fault">{props.sentence}</FieldError>
    </>
  );
}
