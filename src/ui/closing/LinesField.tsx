import { Button, LineField, type Money, MoneyField, moneyText, newId } from '../kit/index.ts';

/** A line of a quote or an invoice while it is typed. */
export interface TypedLine {
  readonly key: string;
  readonly words: string;
  readonly amount: Money | null;
}

export const blankLine = (): TypedLine => ({ key: newId(), words: '', amount: null });

/** The lines that are complete. */
export const finishedLines = (lines: readonly TypedLine[]) =>
  lines.flatMap(({ words, amount }) =>
    words.trim() === '' || amount === null ? [] : [{ words: words.trim(), amount }],
  );

/** A line that was begun and is not complete. */
export const isHalf = ({ words, amount }: TypedLine): boolean => (words.trim() === '') !== (amount === null);

export const sumMinor = (lines: readonly { readonly amount: Money }[]): number =>
  lines.reduce((sum, { amount }) => sum + amount.amountMinor, 0);

/** Lines with their amounts and the sum. */
export function LinesField(props: {
  readonly label: string;
  readonly currency: string;
  readonly lines: readonly TypedLine[];
  readonly onChange: (lines: readonly TypedLine[]) => void;
}) {
  const { lines, onChange, currency } = props;
  const put = (line: TypedLine, part: Partial<TypedLine>) =>
    onChange(lines.map((other) => (other.key === line.key ? { ...other, ...part } : other)));
  return (
    <fieldset className="moneyLines">
      <legend>{props.label}</legend>
      {lines.map((line, index) => (
        <div key={line.key} className="moneyLine">
          <LineField
            label={`Line ${index + 1}`}
            value={line.words}
            onChange={(words) => put(line, { words })}
            problem={
              isHalf(line) && line.words.trim() === ''
                ? 'The amount has no words. The client must see what it is for. Say what is done for it.'
                : null
            }
          />
          <MoneyField
            label={`Amount ${index + 1}`}
            currency={currency}
            value={line.amount}
            onChange={(amount) => put(line, { amount })}
          />
          {lines.length > 1 ? (
            <Button
              tone="ghost"
              label={`Take line ${index + 1} away`}
              onPress={() => onChange(lines.filter((other) => other.key !== line.key))}
            >
              ✕
            </Button>
          ) : null}
        </div>
      ))}
      <div className="moneySum">
        <Button tone="ghost" onPress={() => onChange([...lines, blankLine()])}>
          One more line
        </Button>
        <b>{moneyText(sumMinor(finishedLines(lines)), currency)}</b>
      </div>
    </fieldset>
  );
}
