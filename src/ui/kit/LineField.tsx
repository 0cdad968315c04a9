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
  readonly inputMode?: 'none' | 'text' | 'numeric' | 'decimal' | 'search';
  readonly focusFirst?: boolean;
  readonly mostCharacters?: number;
}

/** The record takes no longer line, and no longer passage; see src/dossier/facts/shape.ts. */
const mostInLine = 300;
const mostInPassage = 20_000;

const tooLong = (text: string, most: number) =>
  `This is ${text.trim().length} characters long. At most ${most} are kept: shorten it.`;

/**
 * One line of text. The problem stands under the field, and what was typed stays in it; text that is too
 * long is reported, never cut. `mostCharacters` is for what cannot be longer: a tag, a PIN.
 */
export function LineField(props: LineProps) {
  const { isRequired = false, isDisabled = false, type = 'text', autoComplete = 'off' } = props;
  const most = props.mostCharacters ?? mostInLine;
  const isTooLong = props.mostCharacters === undefined && props.value.trim().length > most;
  const sentence = fieldSentence(props.problem) ?? (isTooLong ? tooLong(props.value, most) : null);
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
      type={type}
      autoComplete={autoComplete}
      {...(props.mostCharacters === undefined ? {} : { maxLength: props.mostCharacters })}
      autoFocus={props.focusFirst ?? false}
      {...(props.inputMode === undefined ? {} : { inputMode: props.inputMode })}
    >
      <FieldName label={props.label} isRequired={isRequired} />
      <Input className="box" />
      <FieldFoot hint={props.hint} sentence={sentence} />
    </TextField>
  );
}

/** Several lines of text. Text that is too long stays and is reported, never cut. */
export function PassageField(props: TextProps & { readonly rows?: number }) {
  const { isRequired = false, isDisabled = false } = props;
  const isTooLong = props.value.trim().length > mostInPassage;
  const sentence = fieldSentence(props.problem) ?? (isTooLong ? tooLong(props.value, mostInPassage) : null);
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
