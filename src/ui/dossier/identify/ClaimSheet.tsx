import { Button, PassageField, ProblemNotice, Sheet } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { useField, useForm } from '../useForm.ts';
import { ClaimFields } from './ClaimFields.tsx';
import { blankDraft, type ClaimDraft, claimOf } from './claimDraft.ts';
import { type About, abouts } from './claimWords.ts';
import { type Confidence, ConfidenceField, type Evidence, EvidenceField } from './EvidenceFields.tsx';

/** Says one thing about the rug, with its evidence and confidence. */
export function ClaimSheet({ about, onClose }: { readonly about: About; readonly onClose: () => void }) {
  const { standing } = useDossier();
  const before = standing.claims.findLast((claim) => claim.about === about);
  const { form, act, isBusy, problem } = useForm(`claim/${about}`, onClose);
  const [typed, setTyped] = useField<ClaimDraft>(
    form,
    'typed',
    before !== undefined && 'words' in before ? { ...blankDraft, words: before.words } : blankDraft,
  );
  const [evidence, setEvidence] = useField<Evidence | null>(form, 'evidence', null);
  const [confidence, setConfidence] = useField<Confidence | null>(form, 'confidence', null);
  const [note, setNote] = useField(form, 'note', '');
  const claim =
    evidence === null || confidence === null
      ? null
      : claimOf(about, typed, { evidence, confidence, ...(note.trim() === '' ? {} : { note: note.trim() }) });
  return (
    <Sheet title={abouts[about].name} isOpen onClose={onClose}>
      <p className="why">{abouts[about].why}</p>
      <ClaimFields about={about} typed={typed} onChange={setTyped} />
      <EvidenceField value={evidence} onChange={setEvidence} />
      <ConfidenceField value={confidence} onChange={setConfidence} />
      <PassageField label="Note" value={note} onChange={setNote} />
      {problem && <ProblemNotice problem={problem} />}
      <Button
        wide
        isDisabled={claim === null || isBusy}
        onPress={() => claim && act({ type: 'RugIdentified', claims: [claim] })}
      >
        Record
      </Button>
      {claim === null && <p className="why">To record it: the fact, what shows it, and how sure you are.</p>}
    </Sheet>
  );
}
