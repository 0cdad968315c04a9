/** Says what is being waited for; give `done` (0 … 1) where it is known. */
export function Busy({ words, done }: { readonly words: string; readonly done?: number | undefined }) {
  return (
    <div className="busy" role="status">
      <span>{words}</span>
      <progress aria-label={words} {...(done === undefined ? {} : { value: done, max: 1 })} />
    </div>
  );
}
