import { Button, Check, PassageField, ProblemNotice, Sheet } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { useField, useForm } from '../useForm.ts';

/** The client will not have a colour tested. */
export function TestRefusedSheet({
  colour,
  onClose,
}: {
  readonly colour: string;
  readonly onClose: () => void;
}) {
  const { colourName } = useDossier();
  const { form, act, isBusy, problem } = useForm(`test refused/${colour}`, onClose);
  const [words, setWords] = useField(form, 'words', '');
  const [signed, setSigned] = useField(form, 'signed', false);
  return (
    <Sheet title={`Client refuses the test of ${colourName(colour)}`} isOpen onClose={onClose}>
      <p>
        Without the test no water is used. A refusal in writing leaves dry methods or the return of the rug;
        without a signature nothing is done.
      </p>
      <PassageField label="What the client said" value={words} onChange={setWords} isRequired />
      <Check label="The client signed the refusal" isSelected={signed} onChange={setSigned} />
      {problem && <ProblemNotice problem={problem} />}
      <Button
        wide
        tone="stop"
        isDisabled={words.trim() === '' || isBusy}
        onPress={() => act({ type: 'DyeTestRefused', colour, words: words.trim(), signed })}
      >
        Record the refusal
      </Button>
    </Sheet>
  );
}
