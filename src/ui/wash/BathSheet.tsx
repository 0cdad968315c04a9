import { type Grade, grades, type PlanStep } from '../../core/wash/index.ts';
import { agreedPlan, type RugFactOf, stepId } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { figure, temperatureWords } from '../dossier/figures.ts';
import { noItems, nothingTyped, useField, useForm } from '../dossier/useForm.ts';
import { Button, Choice, newId, PhotoTaker, ProblemNotice, Sheet } from '../kit/index.ts';
import {
  benchGrades,
  clothVerdict,
  phBandOf,
  phVerdict,
  rescuePhBand,
  rescuePhVerdict,
  runOffVerdict,
  temperatureBandOf,
  temperatureVerdict,
} from './bathVerdict.ts';
import { ReadingPad, type Slot, type Typed, valueIn, warmthIn } from './ReadingPad.tsx';
import { isBleed, stopNamed } from './rescue.ts';
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
  const { form, act, isBusy, problem, forget } = useForm(`bath/${stepId(step)}`, onClose);
  const [typed, setTyped] = useField<Typed<'ph' | 'temperature'>>(form, 'typed', nothingTyped);
  const [cloth, setCloth] = useField<Grade | null>(form, 'cloth', null);
  const [runOff, setRunOff] = useField<RunOff | null>(form, 'runOff', null);
  const [photos, setPhotos] = useField<readonly string[]>(form, 'photos', noItems);
  const plan = agreedPlan(standing);
  if (plan === null || visit === null) return null;
  const rescuing = visit.stops.some(({ called, cleared }) => cleared === null && isBleed(called.condition));
  const phBand = rescuing ? rescuePhBand : phBandOf(step, plan);
  const warmth = temperatureBandOf(step, plan);
  const bench = benchGrades(standing);
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
          verdict: (value: number) => (rescuing ? rescuePhVerdict(value) : phVerdict(value, phBand)),
        }),
  };
  const temperature: Slot<'temperature'> = {
    key: 'temperature',
    name: 'Bath',
    ...warmthIn(settings.units, 0, 90),
    aim: `${temperatureWords(warmth.least, settings.units)} – ${temperatureWords(warmth.most, settings.units)}`,
    verdict: (value) => temperatureVerdict(value, warmth),
  };
  const values = { ph: valueIn(ph, typed), temperature: valueIn(temperature, typed) };
  const impossible = ([ph, temperature] as const).some(
    (slot) => (typed[slot.key] ?? '') !== '' && values[slot.key] === null,
  );
  const empty = values.ph === null && values.temperature === null && cloth === null && runOff === null;
  const verdicts = [
    [stopNamed('cloth grade'), cloth === null ? null : clothVerdict(cloth, bench)],
    [stopNamed('run-off colour'), runOff === null ? null : runOffVerdict(runOff, visit.baths, now)],
    [stopNamed('pH off band'), values.ph === null ? null : (ph.verdict?.(values.ph) ?? null)],
    [
      stopNamed('temperature off'),
      values.temperature === null ? null : temperatureVerdict(values.temperature, warmth),
    ],
  ] as const;
  const stop = rescuing ? undefined : verdicts.find(([, verdict]) => verdict?.tone === 'stop')?.[0];
  const fact: RugFactOf<'BathMeasured'> = {
    type: 'BathMeasured',
    step: stepId(step),
    ...(values.ph === null ? {} : { ph: values.ph }),
    ...(values.temperature === null ? {} : { temperatureC: values.temperature }),
    ...(cloth === null ? {} : { whiteClothGrade: cloth }),
    ...(runOff === null ? {} : { runOff }),
    photos,
  };
  // A figure typed long ago is no reading of now: closing the sheet lets it go.
  const leave = () => {
    forget();
    onClose();
  };
  return (
    <Sheet title={`Reading: ${step.kind}`} isOpen onClose={leave}>
      <div className="wash">
        <ReadingPad slots={[ph, temperature]} typed={typed} onChange={setTyped} />
        <Choice
          label="White cloth pressed on it"
          columns={3}
          options={clothOptions}
          value={cloth}
          onChange={setCloth}
        />
        {cloth !== null && <VerdictLine verdict={clothVerdict(cloth, bench)} />}
        <Choice label="Run-off" columns={2} options={runOffOptions} value={runOff} onChange={setRunOff} />
        {runOff !== null && <VerdictLine verdict={runOffVerdict(runOff, visit.baths, now)} />}
        <PhotoTaker label="Photograph it" onTaken={({ photo }) => setPhotos([...photos, photo])} />
        <ProblemNotice problem={problem} />
        {stop !== undefined && (
          <Button
            wide
            tone="stop"
            isDisabled={impossible || isBusy}
            onPress={() => act(fact, { type: 'StopCalled', stop: newId(), condition: stop })}
          >
            ▲ Record it and stop the wash
          </Button>
        )}
        <Button
          wide
          tone={stop === undefined ? 'act' : 'ghost'}
          isDisabled={empty || impossible || isBusy}
          onPress={() => act(fact)}
        >
          Record the reading
        </Button>
      </div>
    </Sheet>
  );
}
