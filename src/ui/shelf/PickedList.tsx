import { Button, Picker } from '../kit/index.ts';

interface PickedOption<Value extends string> {
  readonly value: Value;
  readonly words: string;
}

/** Any of many, added one by one from the device’s own list: tiles for all of them would fill the screen. */
export function PickedList<Value extends string>(props: {
  readonly label: string;
  /** Of the list, while nothing more is added. */
  readonly add: string;
  readonly none: string;
  readonly options: readonly PickedOption<Value>[];
  readonly value: readonly Value[];
  readonly onChange: (value: readonly Value[]) => void;
}) {
  const { label, add, none, options, value, onChange } = props;
  const wordsOf = (one: Value) => options.find((option) => option.value === one)?.words ?? one;
  return (
    <>
      <Picker
        label={label}
        any={add}
        options={options.filter((option) => !value.includes(option.value))}
        value=""
        onChange={(chosen) => {
          const option = options.find((one) => one.value === chosen);
          if (option !== undefined) onChange([...value, option.value]);
        }}
      />
      {value.length === 0 ? (
        <p className="why">{none}</p>
      ) : (
        <ul className="picked" aria-label={label}>
          {value.map((one) => (
            <li key={one}>
              <span>{wordsOf(one)}</span>
              <Button
                tone="ghost"
                label={`Take away: ${wordsOf(one)}`}
                onPress={() => onChange(value.filter((other) => other !== one))}
              >
                ✕
              </Button>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
