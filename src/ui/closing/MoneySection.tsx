import { useState } from 'react';
import type { VisitStanding } from '../../dossier/index.ts';
import { Part } from '../dossier/Part.tsx';
import { Button, FactList, type FactRow, moneyText, Notice } from '../kit/index.ts';
import { sumMinor } from './LinesField.tsx';
import { type Asking, MoneySheet } from './MoneySheet.tsx';
import { useClosing } from './useClosing.ts';
import './closing.css';

/** What is owed: invoices less deposits and payments [minor units]; null before anything was invoiced. */
export const owedMinor = ({ invoices, deposits, payments }: VisitStanding): number | null =>
  invoices.length === 0
    ? null
    : invoices.reduce((sum, { lines }) => sum + sumMinor(lines), 0) - sumMinor(deposits) - sumMinor(payments);

/** The quote with its ceiling, deposit, invoice and payments of this visit. */
export function MoneySection({ rug }: { readonly rug: string }) {
  const { visit, isOpen, settings } = useClosing(rug);
  const [asking, setAsking] = useState<Asking | null>(null);
  if (visit === null) return null;
  const { currency } = settings;
  const owed = owedMinor(visit);
  const { quote } = visit;
  const rows: readonly FactRow[] = [
    ...(quote === null
      ? []
      : [
          {
            name: 'Quoted',
            value: moneyText(sumMinor(quote.lines), quote.notToExceed.currency),
            why: quote.lines
              .map(({ words, amount }) => `${words} ${moneyText(amount.amountMinor, amount.currency)}`)
              .join(' · '),
          },
          {
            name: 'Not to exceed',
            value: moneyText(quote.notToExceed.amountMinor, quote.notToExceed.currency),
          },
        ]),
    ...visit.deposits.map(({ amount, means }) => ({
      name: 'Deposit',
      value: moneyText(amount.amountMinor, amount.currency),
      why: means,
    })),
    ...visit.invoices.map(({ number, lines }) => ({
      name: `Invoice ${number}`,
      value: moneyText(sumMinor(lines), lines[0]?.amount.currency ?? currency),
      why: lines.map(({ words }) => words).join(' · '),
    })),
    ...visit.payments.map(({ amount, means }) => ({
      name: 'Paid',
      value: moneyText(amount.amountMinor, amount.currency),
      why: means,
    })),
  ];
  const billed = visit.invoices.reduce((sum, { lines }) => sum + sumMinor(lines), 0);
  const isAbove = quote !== null && billed > quote.notToExceed.amountMinor;
  return (
    <Part id="money" title="Price and payment">
      {rows.length === 0 ? (
        <p className="why">No price yet. The client agrees to a price with the plan.</p>
      ) : (
        <KeyedFacts rows={rows} />
      )}
      {owed === null ? null : (
        <p className="owed">
          {owed > 0 ? (
            <>
              Still owed: <b>{moneyText(owed, currency)}</b>
            </>
          ) : owed < 0 ? (
            <>
              Paid too much: <b>{moneyText(-owed, currency)}</b>
            </>
          ) : (
            <b>✓ Paid</b>
          )}
        </p>
      )}
      {isAbove ? (
        <Notice tone="stop" title="The invoice is above what was agreed">
          <p>The client agreed to at most {moneyText(quote.notToExceed.amountMinor, currency)}.</p>
        </Notice>
      ) : null}
      <div className="actions">
        {isOpen ? (
          <>
            <Button tone={quote === null ? 'act' : 'ghost'} onPress={() => setAsking('quote')}>
              {quote === null ? 'Quote a price' : 'Quote anew'}
            </Button>
            <Button tone="ghost" onPress={() => setAsking('deposit')}>
              Take a deposit
            </Button>
            <Button tone="ghost" onPress={() => setAsking('invoice')}>
              Issue the invoice
            </Button>
          </>
        ) : null}
        <Button tone={owed !== null && owed > 0 ? 'act' : 'ghost'} onPress={() => setAsking('payment')}>
          Take a payment
        </Button>
      </div>
      {asking === null ? null : (
        <MoneySheet key={asking} rug={rug} asking={asking} owed={owed} onClose={() => setAsking(null)} />
      )}
    </Part>
  );
}

/** Payments of one kind may repeat, so each row is told apart by its place. */
const KeyedFacts = ({ rows }: { readonly rows: readonly FactRow[] }) => (
  <FactList rows={rows.map((row, index) => ({ ...row, name: numbered(rows, row, index) }))} />
);

const numbered = (rows: readonly FactRow[], row: FactRow, index: number): string => {
  const alike = rows.filter(({ name }) => name === row.name);
  const at = rows.slice(0, index).filter(({ name }) => name === row.name).length;
  return alike.length < 2 ? row.name : `${row.name} ${at + 1}`;
};
