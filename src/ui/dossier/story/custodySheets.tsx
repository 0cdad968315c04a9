import type { ReactNode } from 'react';
import type { RugFact, RugFactOf } from '../../../dossier/index.ts';
import {
  Button,
  Check,
  Choice,
  DayField,
  LineField,
  type Money,
  MoneyField,
  PassageField,
  PhotoTaker,
  ProblemNotice,
  Sheet,
} from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { noItems, useField, useForm } from '../useForm.ts';

interface SheetProps {
  readonly onClose: () => void;
}

/** A sheet that records one fact once it is complete; `fact` is null until then. */
function FactSheet(props: {
  readonly title: string;
  readonly fact: RugFact | null;
  readonly onClose: () => void;
  readonly recording: Omit<ReturnType<typeof useForm>, 'form'>;
  readonly button?: string;
  readonly tone?: 'act' | 'stop';
  readonly children: ReactNode;
}) {
  const { act, isBusy, problem } = props.recording;
  const { fact } = props;
  return (
    <Sheet title={props.title} isOpen onClose={props.onClose}>
      {props.children}
      {problem && <ProblemNotice problem={problem} />}
      <Button
        wide
        tone={props.tone ?? 'act'}
        isDisabled={fact === null || isBusy}
        onPress={() => fact && act(fact)}
      >
        {props.button ?? 'Record'}
      </Button>
    </Sheet>
  );
}

const filled = (text: string) => text.trim() !== '';
const optional = <Key extends string>(key: Key, text: string): { readonly [K in Key]?: string } =>
  filled(text) ? ({ [key]: text.trim() } as { readonly [K in Key]?: string }) : {};

export function NoteSheet({ onClose }: SheetProps) {
  const recording = useForm('note', onClose);
  const { form } = recording;
  const [note, setNote] = useField(form, 'note', '');
  return (
    <FactSheet
      title="Write a note"
      onClose={onClose}
      recording={recording}
      fact={filled(note) ? { type: 'NoteAdded', note: note.trim() } : null}
    >
      <PassageField label="Note" value={note} onChange={setNote} isRequired rows={6} />
    </FactSheet>
  );
}

export function MoveSheet({ onClose }: SheetProps) {
  const { standing } = useDossier();
  const recording = useForm('move', onClose);
  const { form } = recording;
  const [place, setPlace] = useField(form, 'place', '');
  return (
    <FactSheet
      title="Move it"
      onClose={onClose}
      recording={recording}
      fact={filled(place) ? { type: 'RugMoved', place: place.trim() } : null}
    >
      <p className="why">Now: {standing.place ?? 'not noted'}</p>
      <LineField label="To" value={place} onChange={setPlace} isRequired hint="shelf B2, pole 3, bench …" />
    </FactSheet>
  );
}

const reasons = ['moth or beetle', 'mould', 'contaminated water', 'insecticide', 'other'] as const;

export function QuarantineSheet({ onClose }: SheetProps) {
  const recording = useForm('quarantine', onClose);
  const { form } = recording;
  const [why, setWhy] = useField<(typeof reasons)[number] | null>(form, 'why', null);
  const [note, setNote] = useField(form, 'note', '');
  return (
    <FactSheet
      title="Put it in quarantine"
      onClose={onClose}
      recording={recording}
      tone="stop"
      fact={why === null ? null : { type: 'Quarantined', why, ...optional('note', note) }}
    >
      <Choice
        label="Why"
        options={reasons.map((value) => ({ value, words: value }))}
        value={why}
        onChange={setWhy}
      />
      <p className="why">
        Bag it dry and away from all others; a wet rug is never frozen. Gloves; a respirator for mould and old
        insecticide. No wet step while it is in quarantine, and nobody can override that.
      </p>
      <PassageField label="Note" value={note} onChange={setNote} />
    </FactSheet>
  );
}

export function ReleaseSheet({ onClose }: SheetProps) {
  const { standing } = useDossier();
  const recording = useForm('release', onClose);
  const { form } = recording;
  const [treatment, setTreatment] = useField(form, 'treatment', '');
  const [inspected, setInspected] = useField(form, 'inspected', '');
  return (
    <FactSheet
      title="Release from quarantine"
      onClose={onClose}
      recording={recording}
      fact={
        filled(treatment) && filled(inspected)
          ? { type: 'QuarantineReleased', treatment: treatment.trim(), inspected: inspected.trim() }
          : null
      }
    >
      {standing.quarantine?.why === 'moth or beetle' && (
        <p className="why">
          −20 °C for two weeks or −30 °C for one (CCI Notes 3/3), dry and bagged; look again after three to
          four weeks.
        </p>
      )}
      <PassageField
        label="Treatment"
        value={treatment}
        onChange={setTreatment}
        isRequired
        hint="what, how cold, how long"
      />
      <PassageField label="What the inspection found" value={inspected} onChange={setInspected} isRequired />
    </FactSheet>
  );
}

export function IncidentSheet({ onClose }: SheetProps) {
  const recording = useForm('incident', onClose);
  const { form } = recording;
  const [what, setWhat] = useField(form, 'what', '');
  const [cause, setCause] = useField(form, 'cause', '');
  const [action, setAction] = useField(form, 'action', '');
  const [clientTold, setTold] = useField(form, 'clientTold', false);
  const [photos, setPhotos] = useField<readonly string[]>(form, 'photos', noItems);
  const fact: RugFactOf<'IncidentReported'> | null =
    filled(what) && filled(action)
      ? {
          type: 'IncidentReported',
          what: what.trim(),
          action: action.trim(),
          clientTold,
          photos,
          ...optional('cause', cause),
        }
      : null;
  return (
    <FactSheet title="Report an incident" onClose={onClose} recording={recording} tone="stop" fact={fact}>
      <PassageField label="What happened" value={what} onChange={setWhat} isRequired />
      <PassageField label="Why, as far as known" value={cause} onChange={setCause} />
      <PassageField label="What was done" value={action} onChange={setAction} isRequired />
      <PhotoTaker label="Photograph it" onTaken={({ photo }) => setPhotos([...photos, photo])} />
      {photos.length > 0 && <p className="why">{photos.length} photographs</p>}
      <Check label="The client has been told" isSelected={clientTold} onChange={setTold} />
    </FactSheet>
  );
}

export function IncidentToldSheet({ incident, onClose }: SheetProps & { readonly incident: string }) {
  const recording = useForm(`incident told/${incident}`, onClose);
  const [how, setHow] = useField(recording.form, 'how', '');
  return (
    <FactSheet
      title="The client has been told"
      onClose={onClose}
      recording={recording}
      fact={filled(how) ? { type: 'IncidentTold', incident, how: how.trim() } : null}
    >
      <LineField
        label="How, and what they said"
        value={how}
        onChange={setHow}
        isRequired
        hint="by telephone; agrees that the work goes on"
      />
    </FactSheet>
  );
}

export function SendOutSheet({ onClose }: SheetProps) {
  const recording = useForm('send out', onClose);
  const { form } = recording;
  const [to, setTo] = useField(form, 'to', '');
  const [purpose, setPurpose] = useField(form, 'purpose', '');
  const [backBy, setBackBy] = useField<string | null>(form, 'backBy', null);
  return (
    <FactSheet
      title="Send it out"
      onClose={onClose}
      recording={recording}
      fact={
        filled(to) && filled(purpose)
          ? {
              type: 'SentOut',
              to: to.trim(),
              purpose: purpose.trim(),
              ...(backBy === null ? {} : { backBy }),
            }
          : null
      }
    >
      <LineField label="To whom" value={to} onChange={setTo} isRequired />
      <LineField label="For what" value={purpose} onChange={setPurpose} isRequired />
      <DayField label="Back by" value={backBy} onChange={setBackBy} />
    </FactSheet>
  );
}

export function CameBackSheet({ onClose }: SheetProps) {
  const recording = useForm('came back', onClose);
  const { form } = recording;
  const [condition, setCondition] = useField(form, 'condition', '');
  return (
    <FactSheet
      title="It came back"
      onClose={onClose}
      recording={recording}
      fact={filled(condition) ? { type: 'CameBack', condition: condition.trim() } : null}
    >
      <PassageField label="Its condition" value={condition} onChange={setCondition} isRequired />
    </FactSheet>
  );
}

export function StorageSheet({ onClose }: SheetProps) {
  const { settings } = useDossier();
  const recording = useForm('storage', onClose);
  const { form } = recording;
  const [from, setFrom] = useField<string | null>(form, 'from', null);
  const [charge, setCharge] = useField<Money | null>(form, 'charge', null);
  return (
    <FactSheet
      title="Storage is due"
      onClose={onClose}
      recording={recording}
      fact={from === null ? null : { type: 'StorageDue', from, ...(charge === null ? {} : { charge }) }}
    >
      <DayField label="From" value={from} onChange={setFrom} isRequired />
      <MoneyField label="Charge" currency={settings.currency} value={charge} onChange={setCharge} />
    </FactSheet>
  );
}

export function UnclaimedSheet({ onClose }: SheetProps) {
  const recording = useForm('unclaimed', onClose);
  const { form } = recording;
  const [since, setSince] = useField<string | null>(form, 'since', null);
  const [note, setNote] = useField(form, 'note', '');
  return (
    <FactSheet
      title="Unclaimed"
      onClose={onClose}
      recording={recording}
      fact={since === null ? null : { type: 'Unclaimed', since, ...optional('note', note) }}
    >
      <p className="why">
        What may be done with an unclaimed rug is a matter of local law: ask before anything is sold.
      </p>
      <DayField label="Since" value={since} onChange={setSince} isRequired />
      <PassageField label="Note" value={note} onChange={setNote} hint="letters sent, calls made" />
    </FactSheet>
  );
}
