import { Button, PassageField, ProblemNotice, Sheet } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { useField, useForm } from '../useForm.ts';
import { entryWords } from './entryWords.ts';

/** Takes an entry out of account, with the reason; both stay in the history. */
export function WithdrawSheet({
  entry: id,
  onClose,
}: {
  readonly entry: string;
  readonly onClose: () => void;
}) {
  const { entries, nameOf, colourName } = useDossier();
  const { form, act, isBusy, problem } = useForm(`withdraw/${id}`, onClose);
  const [reason, setReason] = useField(form, 'reason', '');
  const entry = entries.find((one) => one.id === id);
  if (entry === undefined) return null;
  const { did, words } = entryWords(entry.fact, {
    colour: colourName,
    step: (step) => step,
    mark: (mark) => mark,
  });
  return (
    <Sheet title="Withdraw an entry" isOpen onClose={onClose}>
      <p>
        {nameOf(entry.by)} {did}
      </p>
      {words !== undefined && <p className="why">{words}</p>}
      <p className="why">
        It no longer counts, and whatever rested on it is worked out again: a plan may tighten and a consent
        may have to be asked for anew. It stays readable in the history with your reason beside it.
      </p>
      <PassageField label="Why it is wrong" value={reason} onChange={setReason} isRequired />
      {problem && <ProblemNotice problem={problem} />}
      <Button
        wide
        tone="stop"
        isDisabled={reason.trim() === '' || isBusy}
        onPress={() => act({ type: 'EntryWithdrawn', entry: id, reason: reason.trim() })}
      >
        Withdraw it
      </Button>
    </Sheet>
  );
}
