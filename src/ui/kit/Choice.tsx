import { Checkbox, CheckboxGroup, Radio, RadioGroup } from 'react-aria-components';
import { type FieldProblem, fieldSentence } from './fieldProblem.tsx';
import { FieldFoot, FieldName } from './LineField.tsx';

export interface Option<Value extends string> {
  readonly value: Value;
  readonly words: string;
  readonly hint?: string | undefined;
}

interface TileProps<Value extends string> {
  readonly label: string;
  readonly options: readonly Option<Value>[];
  /** At most so many beside each other; fewer on a narrow screen. */
  readonly columns?: 1 | 2 | 3 | 4;
  readonly hint?: string | undefined;
  readonly problem?: FieldProblem;
  readonly isRequired?: boolean;
  readonly isDisabled?: boolean;
}

/** One of a few, as large tiles. */
export function Choice<Value extends string>(
  props: TileProps<Value> & {
    readonly value: Value | null;
    readonly onChange: (value: Value) => void;
  },
) {
  const { columns = 2, isRequired = false, isDisabled = false } = props;
  const sentence = fieldSentence(props.problem);
  return (
    <RadioGroup
      className="field"
      value={props.value}
      onChange={(value) => props.onChange(value as Value)}
      isRequired={isRequired}
      isDisabled={isDisabled}
      isInvalid={sentence !== null}
      validationBehavior="aria"
    >
      <FieldName label={props.label} isRequired={isRequired} />
      <div className={`tiles of${columns}`}>
        {props.options.map((option) => (
          <Radio key={option.value} value={option.value} className="tile one">
            <TileWords option={option} />
          </Radio>
        ))}
      </div>
      <FieldFoot hint={props.hint} sentence={sentence} />
    </RadioGroup>
  );
}

/** Any number of a few, as large tiles. */
export function ManyChoice<Value extends string>(
  props: TileProps<Value> & {
    readonly value: readonly Value[];
    readonly onChange: (value: readonly Value[]) => void;
  },
) {
  const { columns = 2, isRequired = false, isDisabled = false } = props;
  const sentence = fieldSentence(props.problem);
  return (
    <CheckboxGroup
      className="field"
      value={[...props.value]}
      onChange={(value) => props.onChange(value as Value[])}
      isRequired={isRequired}
      isDisabled={isDisabled}
      isInvalid={sentence !== null}
      validationBehavior="aria"
    >
      <FieldName label={props.label} isRequired={isRequired} />
      <div className={`tiles of${columns}`}>
        {props.options.map((option) => (
          <Checkbox key={option.value} value={option.value} className="tile many">
            <TileWords option={option} />
          </Checkbox>
        ))}
      </div>
      <FieldFoot hint={props.hint} sentence={sentence} />
    </CheckboxGroup>
  );
}

function TileWords<Value extends string>({ option }: { readonly option: Option<Value> }) {
  return (
    <>
      <span className="mark" aria-hidden="true" />
      <span>
        {option.words}
        {option.hint === undefined ? null : <span className="why">{option.hint}</span>}
      </span>
    </>
  );
}

/** Yes or no, as one large line. */
export function Check(props: {
  readonly label: string;
  readonly isSelected: boolean;
  readonly onChange: (isSelected: boolean) => void;
  readonly hint?: string | undefined;
  readonly isDisabled?: boolean;
}) {
  return (
    <Checkbox
      className="tile many"
      isSelected={props.isSelected}
      onChange={props.onChange}
      isDisabled={props.isDisabled ?? false}
    >
      <TileWords option={{ value: 'yes', words: props.label, hint: props.hint }} />
    </Checkbox>
  );
}
