import type { RugStanding, VisitStanding, WorkshopSettings } from '../../dossier/index.ts';
import { massWords, sizeWords } from '../dossier/figures.ts';
import { Check, Choice, NumberField, Picture } from '../kit/index.ts';
import { MassField } from '../receive/measureFields.tsx';
import type { ReturnDraft } from './ReturnSection.tsx';

const outcomes = [
  { value: 'agrees', words: 'Agrees' },
  { value: 'differs', words: 'Differs' },
  { value: 'not weighed', words: 'Not weighed' },
] as const;

/** Whether this is the rug that came in: tag, size, mass and picture beside those at the door. */
export function IdentityFields(props: {
  readonly standing: RugStanding;
  readonly visit: VisitStanding;
  readonly draft: ReturnDraft;
  readonly settings: WorkshopSettings;
  readonly onChange: (draft: ReturnDraft) => void;
}) {
  const { standing, visit, draft, settings, onChange } = props;
  const measured = standing.measurements.findLast(({ occasion }) => occasion === 'intake');
  const weighed = standing.weighings.findLast(({ occasion }) => occasion === 'intake');
  const face = standing.photographs.find(({ shows, occasion }) => shows === 'face' && occasion === 'intake');
  const change =
    weighed === undefined || draft.massKg === null ? null : (draft.massKg / weighed.massKg - 1) * 100;
  return (
    <>
      <h3>Is it the rug that came in?</h3>
      <div className="identity">
        {face === undefined ? null : <Picture photo={face.photo} form="thumbnail" alt="The face at intake" />}
        <div className="form">
          <Check
            label={`The tag reads ${visit.received.tag}`}
            isSelected={draft.tag}
            onChange={(tag) => onChange({ ...draft, tag })}
          />
          <Check
            label={
              measured === undefined
                ? 'The size agrees (it was not measured at intake)'
                : `It measures ${sizeWords(measured, settings.units)}`
            }
            isSelected={draft.size}
            onChange={(size) => onChange({ ...draft, size })}
          />
          <Check
            label={face === undefined ? 'It looks as described' : 'It is the rug in the picture'}
            isSelected={draft.picture}
            onChange={(picture) => onChange({ ...draft, picture })}
          />
        </div>
      </div>
      <MassField
        label="Mass now, if weighed"
        units={settings.units}
        value={draft.massKg}
        onChange={(massKg) => onChange({ ...draft, massKg })}
        hint={
          weighed === undefined
            ? 'It was not weighed at intake'
            : `${massWords(weighed.massKg, settings.units)} at intake${
                change === null ? '' : `; now ${change > 0 ? '+' : ''}${change.toFixed(1)} %`
              }. Soil washed out and drier or damper air both change it.`
        }
      />
      {draft.massKg === null ? null : (
        <NumberField
          label="Humidity of the air"
          unit="%"
          least={0}
          most={100}
          value={draft.airRhPercent}
          onChange={(airRhPercent) => onChange({ ...draft, airRhPercent })}
        />
      )}
      <Choice
        label="The mass"
        columns={3}
        options={outcomes}
        value={draft.mass}
        onChange={(mass) => onChange({ ...draft, mass })}
        isRequired
      />
    </>
  );
}
