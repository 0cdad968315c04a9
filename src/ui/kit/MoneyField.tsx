import { useState } from 'react';
import { Input, TextField } from 'react-aria-components';
import { type FieldProblem, fieldSentence } from './fieldProblem.tsx';
import { slipMark } from './goToSlip.ts';
import { FieldFoot, FieldName } from './LineField.tsx';
import { moneyDecimals } from './moneyText.ts';
import { readNumber } from './readNumber.ts';

/** Integer minor units (cents) of a currency. */
export interface Money {
  readonly amountMinor: number;
  readonly currency: string;
}

interface MoneyProps {
  readonly label: string;
  readonly currency: string;
  readonly value: Money | null;
  readonly onChange: (value: Money | null) => void;
  readonly hint?: string | undefined;
  readonly problem?: FieldProblem;
  readonly isRequired?: boolean;
}

/** An amount of money. More decimals than the currency has are refused, never rounded away. */
export function MoneyField(props: MoneyProps) {
  const { currency, value, onChange, isRequired = false } = props;
  const decimals = moneyDecimals(currency);
  const [typed, setTyped] = useState<string | null>(null);
  const text = typed ?? (value === null ? '' : (value.amountMinor / 10 ** decimals).toFixed(decimals));
  const minorOf = (written: string): number | null => {
    const read = readNumber(written);
    if (read === null || read < 0) return null;
    const minor = Math.round(read * 10 ** decimals);
    const isWhole = Math.abs(minor - read * 10 ** decimals) < 1e-6;
    return isWhole && minor <= 1_000_000_000 ? minor : null;
  };
  const own =
    text.trim() !== '' && minorOf(text) === null
      ? `“${text}” is not an amount in ${currency}. Write it such as ${(120).toFixed(decimals)}.`
      : null;
  const sentence = fieldSentence(props.problem) ?? own;
  const change = (next: string) => {
    setTyped(next);
    const minor = minorOf(next);
    onChange(minor === null ? null : { amountMinor: minor, currency });
  };
  return (
    <TextField
      {...slipMark(own !== null)}
      className="field number"
      value={text}
      onChange={change}
      onBlur={() => {
        if (own === null) setTyped(null);
      }}
      isRequired={isRequired}
      isInvalid={sentence !== null}
      validationBehavior="aria"
      autoComplete="off"
      inputMode="decimal"
      maxLength={16}
    >
      <FieldName label={props.label} isRequired={isRequired} />
      <div className="box withUnit">
        <Input className="bare" />
        <span className="unit">{currency}</span>
      </div>
      <FieldFoot hint={props.hint} sentence={sentence} />
    </TextField>
  );
}
