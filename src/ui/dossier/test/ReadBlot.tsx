import { useState } from 'react';
import type { Grade, RequiredDyeTest } from '../../../core/wash/index.ts';
import { hoursBetween, measuredReading, type Noted, type RugFactOf } from '../../../dossier/index.ts';
import type { BlotMade } from '../../colour/BlotReader.tsx';
import { Button, Check, Choice, PassageField, PhotoTaker, ProblemNotice } from '../../kit/index.ts';
import type { BlotPlace } from '../ask.ts';
import { useDossier } from '../dossierView.ts';
import { noItems, useField, useForm } from '../useForm.ts';
import { BlotConditions, type MadeWith } from './BlotConditions.tsx';
import { EyeReading } from './EyeReading.tsx';
import { GradeScale } from './GradeScale.tsx';
import { IfRecorded } from './IfRecorded.tsx';
import { PhotoReading } from './PhotoReading.tsx';

type Reading = RugFactOf<'DyeTested'>['reading'];
type How = 'eye' | 'photograph' | 'unclear';

/** Reads a blot by eye or from a photograph; the conditions are those it was made under. */
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
    `read/${place.colour}/${place.liquid}/${required?.agents.join() ?? ''}/${place.side}/${place.atUrinePlace}`,
    onClose,
  );
  const [how, setHow] = useField<How>(form, 'how', 'eye');
  const [staining, setStaining] = useField<Grade | null>(form, 'staining', null);
  const [control, setControl] = useField<Grade | null>(form, 'control', null);
  const [change, setChange] = useField<Grade | null>(form, 'change', null);
  const [why, setWhy] = useField(form, 'why', '');
  const [made, setMade] = useField<MadeWith | null>(form, 'made', null);
  const [pretreated, setPretreated] = useField(form, 'pretreated', false);
  const [before, setBefore] = useField<string | null>(form, 'before', null);
  const [after, setAfter] = useField<string | null>(form, 'after', null);
  const [measured, setMeasured] = useState<BlotMade | null>(null);
  const [photos, setPhotos] = useField<readonly string[]>(form, 'photos', noItems);
  const [note, setNote] = useField(form, 'note', '');
  const madeWith: MadeWith = made ?? {
    strengthGPerL: required?.strengthGPerL ?? null,
    ph: required?.pH ?? null,
    temperatureC: required?.temperatureC ?? null,
    minutes: lain,
  };
  const isChanging =
    place.liquid === 'acid rinse' || place.liquid === 'spotter' || place.liquid === 'alkali challenge';
  const isBath = place.liquid !== 'dry crock' && place.liquid !== 'damp crock';
  const colourChange = change === null ? {} : { colourChange: change };
  const reading = ((): Reading | null => {
    if (how === 'unclear') return why.trim() === '' ? null : { kind: 'unclear', why: why.trim() };
    if (isChanging && change === null) return null;
    if (isBath && madeWith.minutes === null) return null;
    if (how === 'photograph')
      return measured === null ? null : { ...measuredReading(measured.reading, measured), ...colourChange };
    return staining === null || control === null
      ? null
      : { kind: 'graded', by: 'eye', staining, control, ...colourChange };
  })();
  const pictures = how === 'photograph' ? [before, after].filter((photo) => photo !== null) : photos;
  const { agents } = required ?? {};
  const { strengthGPerL, ph, temperatureC, minutes } = madeWith;
  const fact: RugFactOf<'DyeTested'> | null =
    reading === null
      ? null
      : {
          type: 'DyeTested',
          colour: place.colour,
          side: place.side,
          liquid: place.liquid,
          ...(agents === undefined || agents.length === 0 ? {} : { agents }),
          ...(strengthGPerL === null ? {} : { strengthGPerL }),
          ...(ph === null ? {} : { ph }),
          ...(temperatureC === null ? {} : { temperatureC }),
          ...(minutes === null ? {} : { minutes }),
          reading,
          ...(place.atUrinePlace ? { atUrinePlace: true } : {}),
          ...(pretreated ? { afterPretreatment: true } : {}),
          photos: pictures,
          ...(note.trim() === '' ? {} : { note: note.trim() }),
        };
  return (
    <>
      <Choice
        label="How it is read"
        columns={3}
        options={[
          { value: 'eye', words: 'By eye', hint: 'on the printed grey scale' },
          { value: 'photograph', words: 'By photograph', hint: 'under the weave card' },
          { value: 'unclear', words: 'It cannot be read', hint: 'counts as untested' },
        ]}
        value={how}
        onChange={setHow}
      />
      {how === 'unclear' && (
        <PassageField label="Why it cannot be read" value={why} onChange={setWhy} isRequired />
      )}
      {how === 'eye' && (
        <EyeReading staining={staining} onStaining={setStaining} control={control} onControl={setControl} />
      )}
      {how === 'photograph' && (
        <PhotoReading
          before={before}
          onBefore={setBefore}
          after={after}
          onAfter={setAfter}
          onMade={setMeasured}
        />
      )}
      {isChanging && how !== 'unclear' && (
        <GradeScale
          label="Change of the colour itself"
          scale="change"
          hint="by eye: compare the tested place with the colour beside it, dry"
          value={change}
          onChange={setChange}
        />
      )}
      {isBath && (
        <BlotConditions
          agents={agents}
          value={madeWith}
          onChange={setMade}
          asked={required?.minutes}
          lain={lain}
        />
      )}
      {isBath && (
        <Check
          label="After the acid pre-treatment"
          hint="the re-test of a colour that bled a little"
          isSelected={pretreated}
          onChange={setPretreated}
        />
      )}
      {how !== 'photograph' && (
        <>
          <PhotoTaker label="Photograph the blot" onTaken={({ photo }) => setPhotos([...photos, photo])} />
          {photos.length > 0 && <p className="why">{photos.length} photographed</p>}
        </>
      )}
      <PassageField label="Note" value={note} onChange={setNote} />
      {fact !== null && fact.reading.kind === 'graded' && <IfRecorded fact={fact} />}
      {problem && <ProblemNotice problem={problem} />}
      <Button
        wide
        isDisabled={fact === null || isBusy}
        onPress={() => {
          if (fact !== null) act(fact);
        }}
      >
        Record
      </Button>
    </>
  );
}
