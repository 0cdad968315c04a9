const digits = ['7', '8', '9', '4', '5', '6', '1', '2', '3'] as const;
type Key = (typeof digits)[number] | '0' | '.' | '⌫';

const mostKeys = 8;

const pressed = (text: string, key: Key): string => {
  if (key === '⌫') return text.slice(0, -1);
  if (key === '.') return text.includes('.') ? text : `${text === '' ? '0' : text}.`;
  return text.length >= mostKeys ? text : `${text}${key}`;
};

/** The figure with its sign turned. */
const turned = (text: string): string => (text.startsWith('-') ? text.slice(1) : `-${text}`);

/** Large keys that write into a field, for a knuckle; a PIN has no point. */
export function NumberKeys(props: {
  readonly label: string;
  readonly text: string;
  readonly onChange: (text: string) => void;
  readonly isWhole?: boolean;
  /** Whether it may be below zero. */
  readonly isSigned?: boolean;
}) {
  const { label, text, onChange, isWhole = false, isSigned = false } = props;
  const keys: readonly Key[] = isWhole ? [...digits, '0', '⌫'] : [...digits, '.', '0', '⌫'];
  return (
    <fieldset className="keys">
      <legend className="unseen">{label}</legend>
      {keys.map((key) => (
        <button
          key={key}
          type="button"
          className={isWhole && key === '0' ? 'wide-key' : ''}
          aria-label={key === '⌫' ? 'Delete' : key === '.' ? 'Point' : key}
          onClick={() => onChange(pressed(text, key))}
        >
          {key}
        </button>
      ))}
      {isSigned && (
        <button type="button" className="minus" onClick={() => onChange(turned(text))}>
          − below zero
        </button>
      )}
    </fieldset>
  );
}
