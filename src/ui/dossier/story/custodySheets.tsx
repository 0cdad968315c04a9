import type { ReactNode } from 'react';
import { useState } from 'react';
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
import { useForm } from '../useForm.ts';

interface SheetProps {
  readonly onClose: () => void;
}

/** A sheet that records one fact once it is complete; `fact` is null until then. */
function FactSheet(props: {
  readonly title: string;
  readonly fact: RugFact | null;
  readonly onClose: () => void;
  readonly button?: string;
  readonly tone?: 'act' | 'stop';
  readonly children: ReactNode;
}) {
  const { act, isBusy, problem } = useForm('fact', props.onClose);
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
  const [note, setNote] = useState('');
  return (
    <FactSheet
      title="Write a note"
      onClose={onClose}
      fact={filled(note) ? { type: 'NoteAdded', note: note.trim() } : null}
    >
      <PassageField label="Note" value={note} onChange={setNote} isRequired rows={6} />
    </FactSheet>
  );
}

export function MoveSheet({ onClose }: SheetProps) {
  const { standing } = useDossier();
  const [place, setPlace] = useState('');
  return (
    <FactSheet
      title="Move it"
      onClose={onClose}
      fact={filled(place) ? { type: 'RugMoved', place: place.trim() } : null}
    >
      <p className="why">Now: {standing.place ?? 'not noted'}</p>
      <LineField label="To" value={place} onChange={setPlace} isRequired hint="shelf B2, pole 3, bench …" />
    </FactSheet>
  );
}

const reasons = ['moth or beetle', 'mould', 'contaminated water', 'insecticide', 'other'] as const;

export function QuarantineSheet({ onClose }: SheetProps) {
  const [why, setWhy] = useState<(typeof reasons)[number] | null>(null);
  const [note, setNote] = useState('');
  return (
    <FactSheet
      title="Put it in quarantine"
      onClose={onClose}
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
  const [treatment, setTreatment] = useState('');
  const [inspected, setInspected] = useState('');
  return (
    <FactSheet
      title="Release from quarantine"
      onClose={onClose}
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
  const [what, setWhat] = useState('');
  const [cause, setCause] = useState('');
  const [action, setAction] = useState('');
  const [clientTold, setTold] = useState(false);
  const [photos, setPhotos] = useState<readonly string[]>([]);
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
    <FactSheet title="Report an incident" onClose={onClose} tone="stop" fact={fact}>
      <PassageField label="What happened" value={what} onChange={setWhat} isRequired />
      <PassageField label="Why, as far as known" value={cause} onChange={setCause} />
      <PassageField label="What was done" value={action} onChange={setAction} isRequired />
      <PhotoTaker label="Photograph it" onTaken={({ photo }) => setPhotos([...photos, photo])} />
      {photos.length > 0 && <p className="why">{photos.length} photographs</p>}
      <Check label="The client has been told" isSelected={clientTold} onChange={setTold} />
    </FactSheet>
  );
}

export function SendOutSheet({ onClose }: SheetProps) {
  const [to, setTo] = useState('');
  const [purpose, setPurpose] = useState('');
  const [backBy, setBackBy] = useState<string | null>(null);
  return (
    <FactSheet
      title="Send it out"
      onClose={onClose}
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
  const [condition, setCondition] = useState('');
  return (
    <FactSheet
      title="It came back"
      onClose={onClose}
      fact={filled(condition) ? { type: 'CameBack', condition: condition.trim() } : null}
    >
      <PassageField label="Its condition" value={condition} onChange={setCondition} isRequired />
    </FactSheet>
  );
}

export function StorageSheet({ onClose }: SheetProps) {
  const { settings } = useDossier();
  const [from, setFrom] = useState<string | null>(null);
  const [charge, setCharge] = useState<Money | null>(null);
  return (
    <FactSheet
      title="Storage is due"
      onClose={onClose}
      fact={from === null ? null : { type: 'StorageDue', from, ...(charge === null ? {} : { charge }) }}
    >
      <DayField label="From" value={from} onChange={setFrom} isRequired />
      <MoneyField label="Charge" currency={settings.currency} value={charge} onChange={setCharge} />
    </FactSheet>
  );
}

export function UnclaimedSheet({ onClose }: SheetProps) {
  const [since, setSince] = useState<string | null>(null);
  const [note, setNote] = useState('');
  return (
    <FactSheet
      title="Unclaimed"
      onClose={onClose}
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
