import { hazardWords } from '../../core/chemistry/index.ts';
import { asksOf, packOf, type ShelvedAgent, stockOf } from '../../dossier/index.ts';
import { amountText } from '../../text/amountText.ts';
import { shelfAskWords } from '../../text/shelfWords.ts';
import { dayWords, FactList, moneyText } from '../kit/index.ts';

/** What is left of a product, what is in it, what it can do, and what nobody knows of it yet. */
export function Described({ agent, today }: { readonly agent: ShelvedAgent; readonly today: string }) {
  const { parts, serves, signal, hazards, lots, unit, densityGPerMl, ph, safetySheet, supplier } = agent;
  const { price, reorderBelow } = agent;
  const pack = packOf(agent);
  const optional = (name: string, value: string | null) => (value === null ? [] : [{ name, value }]);
  return (
    <>
      <p className="amt">
        {amountText(stockOf(agent, today), unit)} <small>left in date</small>
      </p>
      <Lots lots={lots} unit={unit} today={today} />
      <FactList
        rows={[
          { name: 'Serves as', value: serves.length === 0 ? 'nothing in the plans' : serves.join(', ') },
          {
            name: 'Holds',
            value: parts
              .map(({ kind, chemical, value, unit: of }) =>
                [chemical ?? kind, value === undefined ? '(strength not known)' : `${value} ${of}`].join(' '),
              )
              .join('; '),
          },
          ...optional('Density', densityGPerMl === undefined ? null : `${densityGPerMl} g/mL`),
          ...optional('pH', ph === undefined ? null : `${ph.value} at ${ph.gramsPerLitre} g/L`),
          {
            name: 'Hazards',
            value: signal === undefined ? 'not known' : signal === 'none' ? 'no signal word' : signal,
            why: hazards.map((code) => `${hazardWords(code)} (${code})`).join('. '),
          },
          ...optional('Supplier', supplier ?? null),
          ...optional(
            'Price',
            price === undefined || pack === null
              ? null
              : `${moneyText(price.amountMinor, price.currency)} for ${amountText(pack, unit)}`,
          ),
          ...optional('Order below', reorderBelow === undefined ? null : amountText(reorderBelow, unit)),
        ]}
      />
      {safetySheet === undefined ? null : (
        <p>
          <a href={safetySheet} rel="noreferrer" className="crumb">
            Safety data sheet of {agent.name}
          </a>
        </p>
      )}
      <Asks agent={agent} />
    </>
  );
}

function Lots({ lots, unit, today }: Pick<ShelvedAgent, 'lots' | 'unit'> & { readonly today: string }) {
  return (
    <ul className="plain-list">
      {lots
        .filter(({ amount }) => amount > 0)
        .map(({ lot, amount, expires, receivedOn }) => (
          <li key={lot}>
            Lot {lot}: {amountText(amount, unit)}
            {expires === undefined ? '' : `, until ${dayWords(expires)}`}
            {expires !== undefined && expires < today ? <strong> ▲ expired, not to be used</strong> : null}
            {receivedOn === undefined ? null : <span className="why">received {dayWords(receivedOn)}</span>}
          </li>
        ))}
    </ul>
  );
}

function Asks({ agent }: { readonly agent: ShelvedAgent }) {
  const asks = asksOf(agent);
  if (asks.length === 0) return null;
  return (
    <details className="asks">
      <summary>
        Ask the supplier: {asks.length === 1 ? 'one thing is' : `${asks.length} things are`} not known
      </summary>
      <ul>
        {asks.map((ask) => (
          <li key={ask}>
            {shelfAskWords[ask].ask}.<span className="why">Until then: {shelfAskWords[ask].until}.</span>
          </li>
        ))}
      </ul>
    </details>
  );
}
