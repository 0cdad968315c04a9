import { useId } from 'react';

interface PickerProps {
  readonly label: string;
  /** Words for choosing none of them. */
  readonly any?: string;
  readonly options: readonly string[] | readonly { readonly value: string; readonly words: string }[];
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string;
}

/** One of many, as the device's own list; for a few use Choice. */
export function Picker({ label, any, options, value, onChange, hint }: PickerProps) {
  const id = useId();
  const listed = options.map((option) =>
    typeof option === 'string' ? { value: option, words: option } : option,
  );
  return (
    <div className="field">
      <label className="name" htmlFor={id}>
        {label}
      </label>
      <select
        id={id}
        className="box"
        value={value}
        onChange={({ target }) => onChange(target.value)}
        aria-describedby={hint === undefined ? undefined : `${id}-hint`}
      >
        {any === undefined ? null : <option value="">{any}</option>}
        {listed.map((option) => (
          <option key={option.value} value={option.value}>
            {option.words}
          </option>
        ))}
      </select>
      {hint === undefined ? null : (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
    </div>
  );
}
