import type { RugFactOf } from '../../../dossier/index.ts';
import {
  Button,
  Choice,
  LineField,
  Notice,
  PassageField,
  PhotoTaker,
  ProblemNotice,
  Sheet,
  When,
} from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { Part } from '../Part.tsx';
import { noItems, useField, useForm } from '../useForm.ts';

type Tested = RugFactOf<'FoundationTested'>;

const methods: readonly {
  readonly value: Tested['method'];
  readonly words: string;
  readonly hint: string;
}[] = [
  { value: 'folded by ear', words: 'Folded by the ear', hint: 'listen for soft cracking, face in, gently' },
  { value: 'needle', words: 'Needle', hint: 'a sound warp resists' },
  { value: 'yarn pull', words: 'Yarn pull', hint: 'a loose end, pulled lightly' },
  { value: 'seen', words: 'Seen', hint: 'magnifier on the back' },
];

/** How a place of the foundation took the test. */
export function FoundationSheet({ onClose }: { readonly onClose: () => void }) {
  const { form, act, isBusy, problem } = useForm('foundation', onClose);
  const [method, setMethod] = useField<Tested['method'] | null>(form, 'method', null);
  const [result, setResult] = useField<Tested['result'] | null>(form, 'result', null);
  const [where, setWhere] = useField(form, 'where', '');
  const [note, setNote] = useField(form, 'note', '');
  const [photos, setPhotos] = useField<readonly string[]>(form, 'photos', noItems);
  const ready = method !== null && result !== null && where.trim() !== '';
  const record = () => {
    if (method === null || result === null) return;
    act({
      type: 'FoundationTested',
      method,
      result,
      where: where.trim(),
      photos,
      ...(note.trim() === '' ? {} : { note: note.trim() }),
    });
  };
  return (
    <Sheet title="Test the foundation" isOpen onClose={onClose}>
      <Choice label="How" columns={2} options={methods} value={method} onChange={setMethod} />
      <LineField
        label="Where"
        value={where}
        onChange={setWhere}
        isRequired
        hint="start end, 20 cm from the left …"
      />
      <Choice
        label="What it did"
        columns={3}
        options={[
          { value: 'sound', words: 'Sound' },
          { value: 'weak', words: 'Weak', hint: 'gives' },
          { value: 'dry rot', words: 'Dry rot', hint: 'cracks, breaks' },
        ]}
        value={result}
        onChange={setResult}
      />
      <PhotoTaker label="Photograph the place" onTaken={({ photo }) => setPhotos([...photos, photo])} />
      <PassageField label="Note" value={note} onChange={setNote} />
      {problem && <ProblemNotice problem={problem} />}
      <Button wide isDisabled={!ready || isBusy} onPress={record}>
        Record
      </Button>
    </Sheet>
  );
}

/** Whether the foundation bears its own wet weight, place by place. */
export function FoundationPart() {
  const { standing, open, nameOf, ask } = useDossier();
  const { foundationTests } = standing;
  return (
    <Part title="Foundation test" id="foundation">
      {foundationTests.length === 0 && (
        <p className="why">Not tested. Test at the ends, along folds, and wherever it was damp.</p>
      )}
      <ul className="plain-list">
        {foundationTests.map((tested) => (
          <li key={tested.entry}>
            <b>{tested.result}</b>, {tested.where}
            <div className="why">
              {tested.method} · {nameOf(tested.by)} <When at={tested.when} />
              {tested.note === undefined ? '' : ` · ${tested.note}`}
            </div>
          </li>
        ))}
      </ul>
      {foundationTests.some(({ result }) => result === 'dry rot') && (
        <Notice tone="stop" title="Dry rot.">
          Do not hang, fold or roll it. A rotten foundation splits under its own weight of water.
        </Notice>
      )}
      {open && (
        <Button tone="ghost" wide onPress={() => ask({ kind: 'foundation' })}>
          Test a place
        </Button>
      )}
    </Part>
  );
}
