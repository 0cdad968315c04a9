import { useState } from 'react';
import { type Agent, type Grade, grades, type RequiredDyeTest } from '../../../core/wash/index.ts';
import { hoursBetween, type Noted, type RugFactOf } from '../../../dossier/index.ts';
import {
  Button,
  Check,
  Notice,
  NumberField,
  PassageField,
  PhotoTaker,
  ProblemNotice,
} from '../../kit/index.ts';
import type { BlotPlace } from '../ask.ts';
import { useDossier } from '../dossierView.ts';
import { figure } from '../figures.ts';
import { noItems, useField, useForm } from '../useForm.ts';
import { conditionWords } from './conditionWords.ts';
import { GradeScale } from './GradeScale.tsx';

const worse = (grade: Grade, than: Grade) => grades.indexOf(grade) < grades.indexOf(than);

/** Grading by eye against the printed grey scale; the conditions are those the blot was made under. */
export function ReadBlot(props: {
  readonly place: BlotPlace;
  readonly required: RequiredDyeTest | undefined;
  readonly lying: Noted<'DyeTestStarted'> | undefined;
  readonly onClose: () => void;
}) {
  const { place, required, lying, onClose } = props;
  const { now } = useDossier();
  const lain = lying === undefined ? null : Math.round(hoursBetween(lying.when, now) * 60);
  const { form, act, isBusy, problem } = useForm(
    `read/${place.colour}/${place.liquid}/${place.side}/${place.atUrinePlace}`,
    onClose,
  );
  const [staining, setStaining] = useField<Grade | null>(form, 'staining', null);
  const [control, setControl] = useField<Grade | null>(form, 'control', null);
  const [change, setChange] = useField<Grade | null>(form, 'change', null);
  const [why, setWhy] = useField(form, 'why', '');
  const [unclear, setUnclear] = useField(form, 'unclear', false);
  const [otherwise, setOtherwise] = useState(false);
  const [strength, setStrength] = useField<number | null>(form, 'strength', required?.strengthGPerL ?? null);
  const [ph, setPh] = useField<number | null>(form, 'ph', required?.pH ?? null);
  const [temperature, setTemperature] = useField<number | null>(
    form,
    'temperature',
    required?.temperatureC ?? null,
  );
  const [minutes, setMinutes] = useField<number | null>(form, 'minutes', lain);
  const [pretreated, setPretreated] = useField(form, 'pretreated', false);
  const [photos, setPhotos] = useField<readonly string[]>(form, 'photos', noItems);
  const [note, setNote] = useField(form, 'note', '');
  const changes =
    place.liquid === 'acid rinse' || place.liquid === 'spotter' || place.liquid === 'alkali challenge';
  const isBath = place.liquid !== 'dry crock' && place.liquid !== 'damp crock';
  const dirtyControl = control !== null && worse(control, '4-5');
  const untimed = isBath && lying === undefined && required?.minutes !== undefined;
  const ready = unclear
    ? why.trim() !== ''
    : staining !== null &&
      control !== null &&
      (!changes || change !== null) &&
      (!untimed || minutes !== null);
  const agents: readonly Agent[] | undefined = required?.agents;
  const record = () => {
    const reading: RugFactOf<'DyeTested'>['reading'] | null = unclear
      ? { kind: 'unclear', why: why.trim() }
      : staining === null || control === null
        ? null
        : {
            kind: 'graded',
            by: 'eye',
            staining,
            control,
            ...(change === null ? {} : { colourChange: change }),
          };
    if (reading === null) return;
    act({
      type: 'DyeTested',
      colour: place.colour,
      side: place.side,
      liquid: place.liquid,
      ...(agents === undefined || agents.length === 0 ? {} : { agents }),
      ...(strength === null ? {} : { strengthGPerL: strength }),
      ...(ph === null ? {} : { ph }),
      ...(temperature === null ? {} : { temperatureC: temperature }),
      ...(minutes === null ? {} : { minutes }),
      reading,
      ...(place.atUrinePlace ? { atUrinePlace: true } : {}),
      ...(pretreated ? { afterPretreatment: true } : {}),
      photos,
      ...(note.trim() === '' ? {} : { note: note.trim() }),
    });
  };
  return (
    <>
      <Notice tone="caution" title="Judge on the printed grey scale.">
        <p>
          By daylight, blot and scale side by side. The pairs drawn here only show how the steps run: screens
          are not calibrated. In doubt take the worse grade.
        </p>
      </Notice>
      {unclear ? (
        <PassageField label="Why it cannot be read" value={why} onChange={setWhy} isRequired />
      ) : (
        <>
          <GradeScale
            label="Staining of the white cotton"
            scale="staining"
            value={staining}
            onChange={setStaining}
          />
          {changes && (
            <GradeScale
              label="Change of the colour itself"
              scale="change"
              hint="compare the tested place with the colour beside it, dry"
              value={change}
              onChange={setChange}
            />
          )}
          <GradeScale
            label="The control blotter"
            scale="staining"
            hint="it touched no rug and should be 5"
            value={control}
            onChange={setControl}
          />
          {dirtyControl && (
            <Notice tone="caution" title="The control is stained too.">
              <p>
                Then the cotton or the liquid was not clean. Make the blot again, or record it as unclear.
              </p>
            </Notice>
          )}
        </>
      )}
      <Check
        label="It cannot be read"
        hint="unclear counts as untested"
        isSelected={unclear}
        onChange={setUnclear}
      />
      {isBath && (
        <>
          <p>
            Made with{' '}
            {conditionWords({
              agents,
              strengthGPerL: strength ?? undefined,
              pH: ph ?? undefined,
              temperatureC: temperature ?? undefined,
              minutes: minutes ?? undefined,
            }) || 'conditions not noted'}
            .
          </p>
          <Check
            label="It was made otherwise"
            hint="a test covers a bath of the same agents, no stronger, warmer or longer, and within 0.5 pH"
            isSelected={otherwise}
            onChange={setOtherwise}
          />
        </>
      )}
      {untimed && !otherwise && (
        <NumberField
          label="How long it lay"
          unit="min"
          least={0}
          most={20000}
          value={minutes}
          onChange={setMinutes}
          hint="no timer ran for it; it covers no longer bath than this"
          isRequired
        />
      )}
      {otherwise && (
        <div className="pair">
          <NumberField
            label="Strength"
            unit="g/L"
            least={0}
            most={500}
            value={strength}
            onChange={setStrength}
          />
          <NumberField label="pH" unit="" least={0} most={14} value={ph} onChange={setPh} />
          <NumberField
            label="Warmth"
            unit="°C"
            least={0}
            most={60}
            value={temperature}
            onChange={setTemperature}
          />
          <NumberField
            label="Lay for"
            unit="min"
            least={0}
            most={20000}
            value={minutes}
            onChange={setMinutes}
          />
        </div>
      )}
      {lying !== undefined && required?.minutes !== undefined && (lain ?? 0) < required.minutes && (
        <p className="open-fact">
          It lay {figure(lain ?? 0)} of {figure(required.minutes)} min: it covers no longer bath than that.
        </p>
      )}
      {isBath && (
        <Check
          label="After the acid pre-treatment"
          hint="the re-test of a colour that bled a little"
          isSelected={pretreated}
          onChange={setPretreated}
        />
      )}
      <PhotoTaker label="Photograph the blot" onTaken={({ photo }) => setPhotos([...photos, photo])} />
      {photos.length > 0 && <p className="why">{photos.length} photographed</p>}
      <PassageField label="Note" value={note} onChange={setNote} />
      {problem && <ProblemNotice problem={problem} />}
      <Button wide isDisabled={!ready || isBusy} onPress={record}>
        Record
      </Button>
    </>
  );
}
