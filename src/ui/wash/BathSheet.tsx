import {
  type Grade,
  grades,
  type PlanStep,
  phBandOf,
  rescuePhBand,
  temperatureBandOf,
} from '../../core/wash/index.ts';
import {
  agreedPlan,
  benchGrade,
  isRescuing,
  type RugFactOf,
  rulebookOf,
  runOffsBefore,
  stepId,
  stopsRaised,
} from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { figure, temperatureWords } from '../dossier/figures.ts';
import { noItems, nothingTyped, useField, useForm } from '../dossier/useForm.ts';
import { Button, Choice, ProblemNotice, Sheet } from '../kit/index.ts';
import {
  clothVerdict,
  phVerdict,
  rescuePhVerdict,
  runOffVerdict,
  temperatureVerdict,
} from './bathVerdict.ts';
import { ClothOn } from './ClothOn.tsx';
import { ReadingPad, type Slot, type Typed, valueIn, warmthIn } from './ReadingPad.tsx';
import { ReadingPhotos } from './ReadingPhotos.tsx';
import { StoppedLine } from './StoppedLine.tsx';
import { VerdictLine } from './VerdictLine.tsx';

type RunOff = NonNullable<RugFactOf<'BathMeasured'>['runOff']>;

export const runOffOptions: readonly { readonly value: RunOff; readonly words: string }[] = [
  { value: 'clear', words: 'Clear' },
  { value: 'soil', words: 'Soil only' },
  { value: 'faint colour', words: 'Faint colour' },
  { value: 'strong colour', words: 'Strong colour' },
];

export const clothOptions = [...grades].reverse().map((value) => ({ value, words: value }));

/** A bath reading, judged against the plan's band while it is typed. */
export function BathSheet({ step, onClose }: { readonly step: PlanStep; readonly onClose: () => void }) {
  const { standing, visit, settings, now } = useDossier();
  const limits = rulebookOf(settings).stops;
  const { form, act, isBusy, problem, forget } = useForm(`bath/${stepId(step)}`, onClose);
  const [typed, setTyped] = useField<Typed<'ph' | 'temperature'>>(form, 'typed', nothingTyped);
  const [cloth, setCloth] = useField<Grade | null>(form, 'cloth', null);
  const [clothOn, setClothOn] = useField<string | null>(form, 'clothOn', null);
  const [runOff, setRunOff] = useField<RunOff | null>(form, 'runOff', null);
  const [photos, setPhotos] = useField<readonly string[]>(form, 'photos', noItems);
  const plan = agreedPlan(standing);
  if (plan === null || visit === null) return null;
  const rescuing = isRescuing(visit);
  const phBand = rescuing ? rescuePhBand : phBandOf(step, plan);
  const warmth = temperatureBandOf(step, plan);
  const bench = benchGrade(standing, clothOn ?? undefined);
  const ph: Slot<'ph'> = {
    key: 'ph',
    name: 'pH',
    unit: '',
    least: 0,
    most: 14,
    ...(phBand === null
      ? {}
      : {
          aim: `${rescuing ? 'rescue: ' : ''}${figure(phBand.least, 2)} – ${figure(phBand.most, 2)}`,
          verdict: (value: number) =>
            rescuing ? rescuePhVerdict(value, limits) : phVerdict(value, phBand, limits),
        }),
  };
  const temperature: Slot<'temperature'> = {
    key: 'temperature',
    name: 'Bath',
    ...warmthIn(settings.units, 0, 90),
    aim: `${temperatureWords(warmth.least, settings.units)} – ${temperatureWords(warmth.most, settings.units)}`,
    verdict: (value) => temperatureVerdict(value, warmth, limits),
  };
  const values = { ph: valueIn(ph, typed), temperature: valueIn(temperature, typed) };
  const impossible = ([ph, temperature] as const).some(
    (slot) => (typed[slot.key] ?? '') !== '' && values[slot.key] === null,
  );
  const empty =
    [values.ph, values.temperature, cloth, runOff].every((one) => one === null) && photos.length === 0;
  const fact: RugFactOf<'BathMeasured'> = {
    type: 'BathMeasured',
    step: stepId(step),
    ...(values.ph === null ? {} : { ph: values.ph }),
    ...(values.temperature === null ? {} : { temperatureC: values.temperature }),
    ...(cloth === null ? {} : { whiteClothGrade: cloth }),
    ...(cloth === null || clothOn === null ? {} : { clothOn }),
    ...(runOff === null ? {} : { runOff }),
    photos,
  };
  const [stop] = empty ? [] : stopsRaised(standing, fact, { now, settings });
  // A figure typed long ago is no reading of now: closing the sheet lets it go.
  const leave = () => {
    forget();
    onClose();
  };
  return (
    <Sheet title={`Reading: ${step.kind}`} isOpen onClose={leave}>
      <div className="wash">
        <StoppedLine />
        <ReadingPad slots={[ph, temperature]} typed={typed} onChange={setTyped} />
        <Choice
          label="White cloth pressed on it"
          columns={3}
          options={clothOptions}
          value={cloth}
          onChange={setCloth}
        />
        {cloth !== null && <ClothOn value={clothOn} onChange={setClothOn} />}
        {cloth !== null && <VerdictLine verdict={clothVerdict(cloth, bench, clothOn !== null)} />}
        <Choice label="Run-off" columns={2} options={runOffOptions} value={runOff} onChange={setRunOff} />
        {runOff !== null && (
          <VerdictLine verdict={runOffVerdict(runOff, runOffsBefore(visit, now), limits)} />
        )}
        <ReadingPhotos photos={photos} onChange={setPhotos} />
        <ProblemNotice problem={problem} />
        {stop !== undefined && (
          <p className="verdict stop" role="alert">
            <span aria-hidden="true">▲ </span>
            Recording this stops the wash on every tablet.
          </p>
        )}
        <Button
          wide
          tone={stop === undefined ? 'act' : 'stop'}
          isDisabled={empty || impossible || isBusy}
          onPress={() => act(fact)}
        >
          Record the reading
        </Button>
      </div>
    </Sheet>
  );
}
