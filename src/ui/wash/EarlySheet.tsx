import type { PlanStep } from '../../core/wash/index.ts';
import { stepId } from '../../dossier/index.ts';
import { useField, useForm } from '../dossier/useForm.ts';
import { Button, Choice, LineField, ProblemNotice, Sheet } from '../kit/index.ts';
import { doneAsMixed, type Taken, takenWords } from './takenAsMixed.ts';

/** Why a dwell is mostly cut short, for hands that do not type. */
const reasons: readonly string[] = [
  'A colour moves',
  'The place is clean already',
  'The pile or foundation looks weak',
  'The wet minutes run out',
  'It was started late on the screen',
];

interface EarlySheetProps {
  readonly step: PlanStep;
  /** What it took if it was mixed as computed; nothing where that is not known. */
  readonly taken: readonly Taken[];
  readonly onClose: () => void;
}

/** Ends a step before its dwell is over, with the reason. */
export function EarlySheet({ step, taken, onClose }: EarlySheetProps) {
  const { form, act, isBusy, problem } = useForm(`early/${stepId(step)}`, onClose);
  const [why, setWhy] = useField(form, 'why', '');
  return (
    <Sheet title="Before the dwell is over" isOpen onClose={onClose}>
      <p>Cut short it does half its work, and the next liquid meets what is left of it.</p>
      <Choice
        label="Why it ends now"
        columns={1}
        options={reasons.map((value) => ({ value, words: value }))}
        value={reasons.includes(why) ? why : null}
        onChange={setWhy}
      />
      <LineField label="In your own words" value={why} onChange={setWhy} />
      <ProblemNotice problem={problem} />
      <Button
        wide
        tone="stop"
        isDisabled={why.trim() === '' || isBusy}
        onPress={() => act({ ...doneAsMixed(step, taken), early: why.trim() })}
      >
        End it now{takenWords(taken)}
      </Button>
    </Sheet>
  );
}
