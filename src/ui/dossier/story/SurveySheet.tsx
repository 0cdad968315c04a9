import type { RugFactOf } from '../../../dossier/index.ts';
import { Button, Choice, LineField, PassageField, ProblemNotice, Sheet } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { useField, useForm } from '../useForm.ts';

/** Says that the rug was looked over; only then does an empty list of marks mean anything. */
export function SurveySheet({ onClose }: { readonly onClose: () => void }) {
  const { standing, visit } = useDossier();
  const { form, act, isBusy, problem } = useForm('survey', onClose);
  const [sides, setSides] = useField<RugFactOf<'ConditionSurveyed'>['sides'] | null>(form, 'sides', null);
  const [light, setLight] = useField(form, 'light', '');
  const [limits, setLimits] = useField(form, 'limits', '');
  const worked = visit !== null && (visit.steps.length > 0 || visit.finishings.length > 0);
  const record = () => {
    if (sides === null) return;
    act({
      type: 'ConditionSurveyed',
      occasion: worked ? 'after work' : 'intake',
      sides,
      light: light.trim(),
      ...(limits.trim() === '' ? {} : { limits: limits.trim() }),
    });
  };
  return (
    <Sheet title="Looked it over" isOpen onClose={onClose}>
      <p>
        {standing.marks.length} marks are on record. What nobody looked for is not ruled out: say which sides
        were seen, so that the rest is known to be free of marks.
      </p>
      <Choice
        label="Seen"
        columns={3}
        options={[
          { value: 'face and back', words: 'Face and back' },
          { value: 'face', words: 'Face only', hint: 'counts as not looked over' },
          { value: 'back', words: 'Back only', hint: 'counts as not looked over' },
        ]}
        value={sides}
        onChange={setSides}
      />
      <LineField
        label="Light"
        value={light}
        onChange={setLight}
        isRequired
        hint="daylight, raking lamp, ultraviolet lamp …"
      />
      <PassageField label="What could not be seen" value={limits} onChange={setLimits} />
      {problem && <ProblemNotice problem={problem} />}
      <Button wide isDisabled={sides === null || light.trim() === '' || isBusy} onPress={record}>
        Record
      </Button>
    </Sheet>
  );
}
