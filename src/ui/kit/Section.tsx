import { Fragment, type ReactNode, useId } from 'react';

/** A card with a heading; a landmark a screen reader can jump to. */
export function Section(props: {
  readonly title: string;
  readonly aside?: ReactNode;
  readonly children: ReactNode;
}) {
  const id = useId();
  return (
    <section className="sect" aria-labelledby={id}>
      <div className="sectTop">
        <h2 id={id}>{props.title}</h2>
        {props.aside}
      </div>
      {props.children}
    </section>
  );
}

export interface FactRow {
  readonly name: string;
  readonly value: ReactNode;
  readonly why?: ReactNode;
}

/** Names and values; a reason stands under its value. */
export function FactList({ rows }: { readonly rows: readonly FactRow[] }) {
  return (
    <dl>
      {rows.map(({ name, value, why }) => (
        <Fragment key={name}>
          <dt>{name}</dt>
          <dd>
            {value}
            {why === undefined ? null : <div className="why">{why}</div>}
          </dd>
        </Fragment>
      ))}
    </dl>
  );
}
