import { type RugFactOf, rugShapes } from '../../../dossier/index.ts';
import {
  Button,
  Check,
  Choice,
  LineField,
  NumberField,
  PassageField,
  ProblemNotice,
  Sheet,
} from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { useField, useForm } from '../useForm.ts';

interface SheetProps {
  readonly onClose: () => void;
}
type Triple = readonly [number | null, number | null, number | null];
const none: Triple = [null, null, null];
const whole = (values: Triple): readonly number[] | null =>
  values.some((value) => value === null) ? null : values.map((value) => (value ?? 0) * 10);

function Three(props: {
  readonly what: string;
  readonly at: readonly [string, string, string];
  readonly value: Triple;
  readonly onChange: (value: Triple) => void;
}) {
  return (
    <div className="triple">
      {props.at.map((where, index) => (
        <NumberField
          key={where}
          label={`${props.what}, ${where}`}
          unit="cm"
          least={0.1}
          most={5000}
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
export function MeasureSheet({ onClose }: SheetProps) {
  const { standing, visit } = useDossier();
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
      ...(fringeStart === null ? {} : { fringeStartMm: fringeStart * 10 }),
      ...(fringeEnd === null ? {} : { fringeEndMm: fringeEnd * 10 }),
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
        <NumberField
          label="Fringe, start"
          unit="cm"
          least={0}
          most={100}
          value={fringeStart}
          onChange={setFringeStart}
        />
        <NumberField
          label="Fringe, end"
          unit="cm"
          least={0}
          most={100}
          value={fringeEnd}
          onChange={setFringeEnd}
        />
      </div>
      <NumberField label="Pile height" unit="mm" least={0} most={150} value={pile} onChange={setPile} />
      {problem && <ProblemNotice problem={problem} />}
      <Button wide isDisabled={shape === null || !lengthsMm || !widthsMm || isBusy} onPress={record}>
        Record
      </Button>
    </Sheet>
  );
}

/** The mass with the air it was taken in; without the air it means little. */
export function WeighSheet({ onClose }: SheetProps) {
  const { visit } = useDossier();
  const { form, act, isBusy, problem } = useForm('weigh', onClose);
  const [massKg, setMass] = useField<number | null>(form, 'massKg', null);
  const [rh, setRh] = useField<number | null>(form, 'rh', null);
  const [airC, setAirC] = useField<number | null>(form, 'airC', null);
  const [rested, setRested] = useField(form, 'rested', false);
  const [unusual, setUnusual] = useField(form, 'unusual', false);
  const dusted = visit !== null && visit.dustings.length > 0;
  const record = () => {
    if (massKg === null) return;
    act({
      type: 'RugWeighed',
      massKg,
      occasion: dusted ? 'after dusting' : 'intake',
      restedADay: rested,
      ...(rh === null ? {} : { airRh: rh / 100 }),
      ...(airC === null ? {} : { airC }),
      ...(unusual ? { confirmedUnusual: true } : {}),
    });
  };
  return (
    <Sheet title="Weigh it dry" isOpen onClose={onClose}>
      <p className="why">
        Before any water: drying is measured against this. Wool weighs several per cent more in damp air, so
        the air is noted with it. Two people for a heavy rug.
      </p>
      <NumberField
        label="Mass"
        unit="kg"
        least={0.01}
        most={500}
        value={massKg}
        onChange={setMass}
        isRequired
      />
      <div className="pair">
        <NumberField
          label="Humidity of the room"
          unit="% RH"
          least={0}
          most={100}
          value={rh}
          onChange={setRh}
        />
        <NumberField label="Air" unit="°C" least={-30} most={60} value={airC} onChange={setAirC} />
      </div>
      <Check
        label="It has lain in this air for a day or more"
        hint="otherwise its dry mass is known to ±5 % only"
        isSelected={rested}
        onChange={setRested}
      />
      {problem && <ProblemNotice problem={problem} />}
      {problem?.code === 'mass-outside-band' && (
        <Check label="I weighed it again and this is its mass" isSelected={unusual} onChange={setUnusual} />
      )}
      <Button wide isDisabled={massKg === null || isBusy} onPress={record}>
        Record
      </Button>
    </Sheet>
  );
}

/** Says that the rug was looked over; only then does an empty list of marks mean anything. */
export function SurveySheet({ onClose }: SheetProps) {
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

/** A dusting pass with the soil it gave. */
export function DustSheet({ onClose }: SheetProps) {
  const { visit, plan } = useDossier();
  const before = visit?.dustings ?? [];
  const { form, act, isBusy, problem } = useForm('dust', onClose);
  const [soilG, setSoil] = useField<number | null>(form, 'soilG', null);
  const [minutes, setMinutes] = useField<number | null>(form, 'minutes', null);
  const [side, setSide] = useField<'face' | 'back' | null>(form, 'side', 'back');
  const first = before[0]?.soilG;
  const forbidden = plan.ok
    ? plan.value.bounds.forbiddenActs.filter((one) => one === 'beat' || one === 'machine dusting')
    : [];
  return (
    <Sheet title={`Dusting, pass ${before.length + 1}`} isOpen onClose={onClose}>
      {forbidden.length > 0 && <p className="open-fact">Never on this rug: {forbidden.join(', ')}.</p>}
      <p className="why">
        Until a pass gives less than 5 % of the first (workshop setting)
        {first === undefined ? '' : `: below ${(first * 0.05).toFixed(0)} g`}. Dust mask; gloves and a
        respirator where old insecticide is possible.
      </p>
      <Choice
        label="Side"
        columns={2}
        options={[
          { value: 'back', words: 'Back' },
          { value: 'face', words: 'Face' },
        ]}
        value={side}
        onChange={setSide}
      />
      <div className="pair">
        <NumberField
          label="Soil"
          unit="g"
          least={0}
          most={500000}
          value={soilG}
          onChange={setSoil}
          isRequired
        />
        <NumberField label="Time" unit="min" least={0} most={600} value={minutes} onChange={setMinutes} />
      </div>
      {problem && <ProblemNotice problem={problem} />}
      <Button
        wide
        isDisabled={soilG === null || side === null || isBusy}
        onPress={() =>
          soilG !== null &&
          side !== null &&
          act({
            type: 'RugDusted',
            pass: before.length + 1,
            soilG,
            side,
            ...(minutes === null ? {} : { minutes }),
          })
        }
      >
        Record
      </Button>
    </Sheet>
  );
}
