/** The number on the wash-proof tag of this visit. */
export function Tag({ tag }: { readonly tag: string }) {
  return (
    <span className="tag">
      <span className="unseen">tag </span>
      {tag}
    </span>
  );
}
