/** Names above their values, for names too long to stand beside them on a phone. */
export function NamedLines(props: {
  readonly lines: readonly { readonly name: string; readonly value: string; readonly why?: string }[];
}) {
  return (
    <dl className="named-lines">
      {props.lines.map(({ name, value, why }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <b>{value}</b>
            {why !== undefined && <span className="why">{why}</span>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
