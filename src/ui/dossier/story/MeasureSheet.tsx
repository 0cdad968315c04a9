import { type RugFactOf, rugShapes } from '../../../dossier/index.ts';
import { Button, Choice, NumberField, ProblemNotice, Sheet } from '../../kit/index.ts';
import { FringeField, LengthField } from '../../receive/measureFields.tsx';
import { useDossier } from '../dossierView.ts';
import { useField, useForm } from '../useForm.ts';

type Triple = readonly [number | null, number | null, number | null];
const none: Triple = [null, null, null];
const whole = (values: Triple): readonly number[] | null =>
  values.some((value) => value === null) ? null : values.map((value) => value ?? 0);

function Three(props: {
  readonly what: string;
  readonly at: readonly [string, string, string];
  readonly value: Triple;
  readonly onChange: (value: Triple) => void;
}) {
  const { settings } = useDossier();
  return (
    <div className="triple">
      {props.at.map((where, index) => (
        <LengthField
          key={where}
          label={`${props.what}, ${where}`}
          units={settings.units}
          isRequired
          value={props.value[index] ?? null}
          onChange={(value) => {
            const next = [...props.value];
            next[index] = value;
            props.onChange([next[0] ?? null, next[1] ?? null, next[2] ?? null]);
          }}
        />
      ))}
    </div>
  );
}

/** Three lengths and three widths, so that a rug out of square shows. */
export function MeasureSheet({ onClose }: { readonly onClose: () => void }) {
  const { standing, visit, settings } = useDossier();
  const before = standing.measurements.at(-1);
  const { form, act, isBusy, problem } = useForm('measure', onClose);
  const [shape, setShape] = useField<RugFactOf<'RugMeasured'>['shape'] | null>(
    form,
    'shape',
    before?.shape ?? 'rectangle',
  );
  const [lengths, setLengths] = useField<Triple>(form, 'lengths', none);
  const [widths, setWidths] = useField<Triple>(form, 'widths', none);
  const [fringeStart, setFringeStart] = useField<number | null>(form, 'fringeStart', null);
  const [fringeEnd, setFringeEnd] = useField<number | null>(form, 'fringeEnd', null);
  const [pile, setPile] = useField<number | null>(form, 'pile', null);
  const worked = visit !== null && (visit.steps.length > 0 || visit.finishings.length > 0);
  const [lengthsMm, widthsMm] = [whole(lengths), whole(widths)];
  const record = () => {
    if (shape === null || lengthsMm === null || widthsMm === null) return;
    act({
      type: 'RugMeasured',
      occasion: worked ? 'after work' : 'intake',
      shape,
      lengthsMm,
      widthsMm,
      ...(fringeStart === null ? {} : { fringeStartMm: fringeStart }),
      ...(fringeEnd === null ? {} : { fringeEndMm: fringeEnd }),
      ...(pile === null ? {} : { pileHeightMm: pile }),
      uncertaintyMm: 5,
    });
  };
  return (
    <Sheet title="Measure it" isOpen onClose={onClose}>
      <p className="why">Flat, without pulling, without the fringe. Each end counts as ±0.5 cm.</p>
      <Choice
        label="Shape"
        columns={3}
        options={rugShapes.map((value) => ({ value, words: value }))}
        value={shape}
        onChange={setShape}
      />
      <Three what="Length" at={['left', 'middle', 'right']} value={lengths} onChange={setLengths} />
      <Three what="Width" at={['start', 'middle', 'end']} value={widths} onChange={setWidths} />
      <div className="pair">
        <FringeField
          label="Fringe, start"
          units={settings.units}
          value={fringeStart}
          onChange={setFringeStart}
        />
        <FringeField label="Fringe, end" units={settings.units} value={fringeEnd} onChange={setFringeEnd} />
      </div>
      <NumberField label="Pile height" unit="mm" least={0} most={150} value={pile} onChange={setPile} />
      {problem && <ProblemNotice problem={problem} />}
      <Button wide isDisabled={shape === null || !lengthsMm || !widthsMm || isBusy} onPress={record}>
        Record
      </Button>
    </Sheet>
  );
}
