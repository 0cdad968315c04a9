import type { RugFactOf } from '../../../dossier/index.ts';
import { Button, Check, Choice, PassageField, ProblemNotice, Sheet } from '../../kit/index.ts';
import { useField, useForm } from '../useForm.ts';

type What = RugFactOf<'ConsentRefused'>['what'];

const whats: readonly { readonly value: What; readonly words: string; readonly hint: string }[] = [
  { value: 'the plan', words: 'The plan', hint: 'another scope may suit, or the return' },
  { value: 'dye test', words: 'The dye tests', hint: 'then no water is used' },
  { value: 'disclosure', words: 'To hear the risks', hint: 'then nothing is done' },
];

/** The client says no: to what, in which words, signed or not. */
export function ConsentRefusedSheet({ onClose }: { readonly onClose: () => void }) {
  const { form, act, isBusy, problem } = useForm('consent refused', onClose);
  const [what, setWhat] = useField<What | null>(form, 'what', null);
  const [words, setWords] = useField(form, 'words', '');
  const [signed, setSigned] = useField(form, 'signed', false);
  return (
    <Sheet title="The client refuses" isOpen onClose={onClose}>
      <Choice label="What is refused" columns={1} options={whats} value={what} onChange={setWhat} />
      <PassageField label="In the client’s words" value={words} onChange={setWords} isRequired />
      <Check label="Signed by the client" isSelected={signed} onChange={setSigned} />
      <ProblemNotice problem={problem} />
      <Button
        wide
        tone="stop"
        isDisabled={what === null || words.trim() === '' || isBusy}
        onPress={() => what && act({ type: 'ConsentRefused', what, words: words.trim(), signed })}
      >
        Record the refusal
      </Button>
    </Sheet>
  );
}

/** A consent that was given is taken back; work stops. */
export function ConsentWithdrawnSheet({ onClose }: { readonly onClose: () => void }) {
  const { form, act, isBusy, problem } = useForm('consent withdrawn', onClose);
  const [words, setWords] = useField(form, 'words', '');
  return (
    <Sheet title="The client takes the consent back" isOpen onClose={onClose}>
      <p>
        No further step starts. A rug that is wet is still rinsed out and dried: leaving it wet would harm it.
      </p>
      <PassageField label="In the client’s words" value={words} onChange={setWords} isRequired />
      <ProblemNotice problem={problem} />
      <Button
        wide
        tone="stop"
        isDisabled={words.trim() === '' || isBusy}
        onPress={() => act({ type: 'ConsentWithdrawn', words: words.trim() })}
      >
        Record it
      </Button>
    </Sheet>
  );
}
