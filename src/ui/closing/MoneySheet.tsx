import { useState } from 'react';
import type { RugFact } from '../../dossier/index.ts';
import {
  Button,
  LineField,
  type Money,
  MoneyField,
  moneyText,
  PassageField,
  ProblemNotice,
  Sheet,
  useKept,
} from '../kit/index.ts';
import { blankLine, finishedLines, isHalf, LinesField, sumMinor, type TypedLine } from './LinesField.tsx';
import { useClosing } from './useClosing.ts';

export type Asking = 'quote' | 'deposit' | 'invoice' | 'payment';

const titles = {
  quote: 'Quote a price',
  deposit: 'Take a deposit',
  invoice: 'Issue the invoice',
  payment: 'Take a payment',
} as const;

interface MoneyDraft {
  readonly lines: readonly TypedLine[];
  readonly most: Money | null;
  readonly note: string;
  readonly number: string;
  readonly amount: Money | null;
  readonly by: string;
}

/** One thing about money at a time, kept while it is typed. */
export function MoneySheet(props: {
  readonly rug: string;
  readonly asking: Asking;
  readonly owed: number | null;
  readonly onClose: () => void;
}) {
  const { rug, asking } = props;
  const { standing, visit, settings, act, isBusy, problem } = useClosing(rug);
  const { currency } = settings;
  const [blank] = useState<MoneyDraft>(() => ({
    lines:
      asking === 'invoice' && visit?.quote
        ? visit.quote.lines.map(({ words, amount }) => ({ ...blankLine(), words, amount }))
        : [blankLine()],
    most: null,
    note: '',
    number: `${standing.opened?.number ?? ''}-${standing.visits.length}-${(visit?.invoices.length ?? 0) + 1}`,
    amount:
      asking === 'payment' && props.owed !== null && props.owed > 0
        ? { amountMinor: props.owed, currency }
        : null,
    by: '',
  }));
  const [draft, setDraft, forget] = useKept<MoneyDraft>(`closing/${rug}/${asking}`, blank);
  const lines = finishedLines(draft.lines);
  const sum = sumMinor(lines);
  const isBelow = draft.most !== null && draft.most.amountMinor < sum;
  const fact = factOf(asking, draft);
  const record = async () => {
    if (fact === null || isBelow || !(await act(fact))) return;
    forget();
    props.onClose();
  };
  const hasLines = asking === 'quote' || asking === 'invoice';
  return (
    <Sheet title={titles[asking]} isOpen onClose={props.onClose}>
      <div className="form">
        {asking === 'invoice' ? (
          <LineField
            label="Invoice number"
            value={draft.number}
            onChange={(number) => setDraft({ ...draft, number })}
            isRequired
          />
        ) : null}
        {hasLines ? (
          <LinesField
            label="What for"
            currency={currency}
            lines={draft.lines}
            onChange={(next) => setDraft({ ...draft, lines: next })}
          />
        ) : (
          <>
            <MoneyField
              label="Amount"
              currency={currency}
              value={draft.amount}
              onChange={(amount) => setDraft({ ...draft, amount })}
              isRequired
            />
            <LineField
              label="How was it paid?"
              value={draft.by}
              onChange={(by) => setDraft({ ...draft, by })}
              hint="For instance: cash, card, transfer"
              isRequired
            />
          </>
        )}
        {asking === 'quote' ? (
          <>
            <MoneyField
              label="Not to exceed"
              currency={currency}
              value={draft.most}
              onChange={(most) => setDraft({ ...draft, most })}
              hint="The client agrees to this; going above it needs a new consent"
              problem={
                isBelow
                  ? `The lines add up to ${moneyText(sum, currency)}, above the ceiling. The ceiling is what the client agrees to. Raise it or lower the lines.`
                  : null
              }
              isRequired
            />
            <PassageField
              label="Note"
              rows={2}
              value={draft.note}
              onChange={(note) => setDraft({ ...draft, note })}
            />
          </>
        ) : null}
        <ProblemNotice problem={problem} />
        <Button wide isDisabled={fact === null || isBelow || isBusy} onPress={record}>
          Record
        </Button>
      </div>
    </Sheet>
  );
}

/** What will be recorded; null while something is missing or half typed. */
function factOf(asking: Asking, draft: MoneyDraft): RugFact | null {
  const lines = finishedLines(draft.lines);
  const { most, amount } = draft;
  const [note, number, by] = [draft.note.trim(), draft.number.trim(), draft.by.trim()];
  const isWhole = lines.length > 0 && !draft.lines.some(isHalf);
  switch (asking) {
    case 'quote':
      return isWhole && most !== null
        ? { type: 'PriceQuoted', lines, notToExceed: most, ...(note === '' ? {} : { note }) }
        : null;
    case 'invoice':
      return isWhole && number !== '' ? { type: 'InvoiceIssued', number, lines } : null;
    case 'deposit':
      return amount !== null && by !== '' ? { type: 'DepositTaken', amount, means: by } : null;
    case 'payment':
      return amount !== null && by !== '' ? { type: 'PaymentTaken', amount, means: by } : null;
  }
}
