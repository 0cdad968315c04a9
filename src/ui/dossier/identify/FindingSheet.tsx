import type { Certainty, FindingCode } from '../../../core/wash/index.ts';
import { Button, Choice, LineField, PassageField, ProblemNotice, Sheet } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { useField, useForm } from '../useForm.ts';
import { type Evidence, EvidenceField } from './EvidenceFields.tsx';
import { findingWords } from './findingWords.ts';

export const certaintyOptions: readonly {
  readonly value: Certainty;
  readonly words: string;
  readonly hint?: string;
}[] = [
  { value: 'seen', words: '▲ Seen' },
  { value: 'suspected', words: '△ Suspected', hint: 'counts as seen' },
  { value: 'ruled out', words: '○ Ruled out' },
];

/** One finding: how sure, where, and what shows it. */
export function FindingSheet({
  finding,
  onClose,
}: {
  readonly finding: FindingCode;
  readonly onClose: () => void;
}) {
  const { standing } = useDossier();
  const before = standing.findings.find((noted) => noted.finding === finding);
  const { form, act, isBusy, problem } = useForm(`finding/${finding}`, onClose);
  const [certainty, setCertainty] = useField<Certainty | null>(form, 'certainty', before?.certainty ?? null);
  const [evidence, setEvidence] = useField<Evidence | null>(form, 'evidence', before?.evidence ?? null);
  const [at, setAt] = useField(form, 'at', before?.at ?? '');
  const [note, setNote] = useField(form, 'note', '');
  const words = findingWords(finding);
  const record = () => {
    if (certainty === null || evidence === null) return;
    act({
      type: 'FindingNoted',
      finding,
      certainty,
      evidence,
      ...(at.trim() === '' ? {} : { at: at.trim() }),
      ...(note.trim() === '' ? {} : { note: note.trim() }),
    });
  };
  return (
    <Sheet title={words.name} isOpen onClose={onClose}>
      <p className="why">{words.look}</p>
      <Choice
        label="How sure"
        columns={3}
        options={certaintyOptions}
        value={certainty}
        onChange={setCertainty}
      />
      <LineField label="Where" value={at} onChange={setAt} hint="lower left corner, start end, all over …" />
      <EvidenceField value={evidence} onChange={setEvidence} />
      <PassageField label="Note" value={note} onChange={setNote} />
      {problem && <ProblemNotice problem={problem} />}
      <Button wide isDisabled={certainty === null || evidence === null || isBusy} onPress={record}>
        Record
      </Button>
    </Sheet>
  );
}
