import { type Order, ordersBySupplier, type ShelfStanding } from '../../dossier/index.ts';
import { amountText } from '../../text/amountText.ts';
import { moneyText, Section } from '../kit/index.ts';

/** The reorder list: by supplier, in whole packs, with what they cost. */
export function OrderPart({ standing, today }: { readonly standing: ShelfStanding; readonly today: string }) {
  const suppliers = ordersBySupplier(standing, today);
  if (suppliers.length === 0) return null;
  return (
    <Section title="To be ordered">
      {suppliers.map(({ supplier, orders, totals }) => (
        <div key={supplier ?? ''} className="supplier">
          <h3>{supplier ?? 'Supplier not written down'}</h3>
          <ul className="plain-list">
            {orders.map((order) => (
              <li key={order.product.agent}>
                <Ordered order={order} />
              </li>
            ))}
          </ul>
          {orders.length > 1 && totals.length > 0 ? (
            <p>
              Together <b>{totals.map((sum) => moneyText(sum.amountMinor, sum.currency)).join(' and ')}</b>
              {orders.some(({ cost }) => cost === null) ? ', without those that have no price' : ''}
            </p>
          ) : null}
        </div>
      ))}
    </Section>
  );
}

function Ordered({ order: { product, left, missing, packs, cost } }: { readonly order: Order }) {
  const { name, unit, reorderBelow = 0 } = product;
  return (
    <>
      <b>{name}</b>:{' '}
      {packs === null ? `${amountText(missing, unit)} or more` : packs === 1 ? '1 pack' : `${packs} packs`}
      {cost === null ? '' : `, ${moneyText(cost.amountMinor, cost.currency)}`}
      <span className="why">
        {amountText(left, unit)} left in date, ordered below {amountText(reorderBelow, unit)}
        {cost === null ? '. Its price is not written down.' : ''}
      </span>
    </>
  );
}
