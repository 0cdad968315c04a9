import { Label, Radio, RadioGroup } from 'react-aria-components';
import type { Noted } from '../../dossier/index.ts';
import { Picture, When } from '../kit/index.ts';

/** One of a rug's photographs, chosen by its picture. */
export function PhotoChoice(props: {
  readonly label: string;
  readonly photographs: readonly Noted<'PhotographTaken'>[];
  readonly value: string | null;
  readonly onChange: (photo: string) => void;
}) {
  return (
    <RadioGroup className="field" value={props.value} onChange={props.onChange} orientation="horizontal">
      <Label className="name">{props.label}</Label>
      {props.photographs.length === 0 && <p className="why">There is none yet.</p>}
      <div className="photoChoice">
        {props.photographs.map(({ photo, when, caption }, index) => (
          <Radio key={photo} value={photo} className="photoTile">
            <Picture photo={photo} form="thumbnail" alt="" />
            <span>
              {caption ?? `Face ${index + 1}`}, <When at={when} />
            </span>
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}
