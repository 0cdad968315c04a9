import { Label, Radio, RadioGroup } from 'react-aria-components';
import { type Grade, grades } from '../../../core/wash/index.ts';
import { type GreyScale, greyPair } from './greyPair.ts';

/** Grades from the best to the worst, each with its pair of greys drawn; one is chosen. */
export function GradeScale(props: {
  readonly label: string;
  readonly scale: GreyScale;
  readonly hint?: string;
  readonly value: Grade | null;
  readonly onChange: (grade: Grade) => void;
}) {
  return (
    <RadioGroup
      className="field"
      value={props.value}
      onChange={(grade) => props.onChange(grade as Grade)}
      orientation="horizontal"
    >
      <Label className="name">{props.label}</Label>
      {props.hint !== undefined && <p className="why">{props.hint}</p>}
      <div className="grades">
        {[...grades].reverse().map((grade) => {
          const [from, to] = greyPair(props.scale, grade);
          return (
            <Radio key={grade} value={grade} className="grade">
              <span className="grey-pair" aria-hidden="true">
                <span style={{ background: from }} />
                <span style={{ background: to }} />
              </span>
              <span>{grade}</span>
            </Radio>
          );
        })}
      </div>
    </RadioGroup>
  );
}
