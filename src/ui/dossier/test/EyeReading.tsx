import type { Grade } from '../../../core/wash/index.ts';
import { grades } from '../../../core/wash/index.ts';
import { Notice } from '../../kit/index.ts';
import { GradeScale } from './GradeScale.tsx';

/** Grading by eye against the printed grey scale. */
export function EyeReading(props: {
  readonly staining: Grade | null;
  readonly onStaining: (grade: Grade) => void;
  readonly control: Grade | null;
  readonly onControl: (grade: Grade) => void;
}) {
  const { staining, control } = props;
  const isDirty = control !== null && grades.indexOf(control) < grades.indexOf('4-5');
  return (
    <>
      <Notice tone="caution" title="Judge on the printed grey scale.">
        <p>
          By daylight, blot and scale side by side. The pairs drawn here only show how the steps run: screens
          are not calibrated. In doubt take the worse grade.
        </p>
      </Notice>
      <GradeScale
        label="Staining of the white cotton"
        scale="staining"
        value={staining}
        onChange={props.onStaining}
      />
      <GradeScale
        label="The control blotter"
        scale="staining"
        hint="it touched no rug and should be 5"
        value={control}
        onChange={props.onControl}
      />
      {isDirty && (
        <Notice tone="caution" title="The control is stained too.">
          <p>Then the cotton or the liquid was not clean. Make the blot again, or record it as unclear.</p>
        </Notice>
      )}
    </>
  );
}
