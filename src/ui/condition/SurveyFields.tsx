import type { RugFactOf } from '../../dossier/index.ts';
import { Choice, LineField, PassageField } from '../kit/index.ts';

/** Whether and how a rug was looked over, while it is typed. */
export interface SurveyDraft {
  readonly sides: RugFactOf<'ConditionSurveyed'>['sides'] | 'not yet' | null;
  readonly light: string;
  readonly limits: string;
}

export const blankSurvey: SurveyDraft = { sides: null, light: 'daylight', limits: '' };

const sides = [
  { value: 'face and back', words: 'Face and back' },
  { value: 'face', words: 'Face only', hint: 'the back counts as not seen' },
  { value: 'back', words: 'Back only', hint: 'the face counts as not seen' },
  { value: 'not yet', words: 'Not yet', hint: 'no wet work until it is' },
] as const;

/** The fact, once it is known which sides were seen in which light; null before, and for “not yet”. */
export const surveyFact = (
  { sides, light, limits }: SurveyDraft,
  occasion: 'intake' | 'after work',
): RugFactOf<'ConditionSurveyed'> | null =>
  sides === null || sides === 'not yet' || light.trim() === ''
    ? null
    : {
        type: 'ConditionSurveyed',
        occasion,
        sides,
        light: light.trim(),
        ...(limits.trim() === '' ? {} : { limits: limits.trim() }),
      };

/** An empty list of marks means something only when somebody says that they looked. */
export function SurveyFields(props: {
  readonly value: SurveyDraft;
  readonly onChange: (value: SurveyDraft) => void;
  readonly problem?: string | null;
  /** False where it cannot be left for later. */
  readonly mayWait?: boolean;
}) {
  const { value, onChange, mayWait = true } = props;
  return (
    <div className="form">
      <Choice
        label="Which sides were looked over?"
        options={mayWait ? sides : sides.slice(0, 3)}
        value={value.sides}
        onChange={(seen) => onChange({ ...value, sides: seen })}
        problem={props.problem ?? null}
        isRequired
      />
      {value.sides === null || value.sides === 'not yet' ? null : (
        <>
          <LineField
            label="In what light?"
            value={value.light}
            onChange={(light) => onChange({ ...value, light })}
            hint="For instance: daylight, raking lamp, ultraviolet lamp"
            problem={
              value.light.trim() === ''
                ? 'The light is missing. What is seen depends on it. Write for instance daylight.'
                : null
            }
            isRequired
          />
          <PassageField
            label="What could not be seen, and why"
            rows={2}
            value={value.limits}
            onChange={(limits) => onChange({ ...value, limits })}
          />
        </>
      )}
    </div>
  );
}
