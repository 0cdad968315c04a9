import type { Grade, PlanStep } from '../../core/wash/index.ts';
import {
  benchGrade,
  type RugFactOf,
  residuesIn,
  rulebookOf,
  runOffsBefore,
  stepId,
  stopsRaised,
  type WorkshopSettings,
} from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { stainWords } from '../dossier/figures.ts';
import { noItems, useField, useForm } from '../dossier/useForm.ts';
import { Button, Choice, ProblemNotice, Sheet } from '../kit/index.ts';
import { clothOptions, runOffOptions } from './BathSheet.tsx';
import { clothVerdict, runOffVerdict } from './bathVerdict.ts';
import { ClothOn } from './ClothOn.tsx';
import { ReadingPad, type Slot, type Typed, valueIn, warmthIn } from './ReadingPad.tsx';
import { ReadingPhotos } from './ReadingPhotos.tsx';
import { StoppedLine } from './StoppedLine.tsx';
import { VerdictLine } from './VerdictLine.tsx';

type Key = 'conductivity' | 'supply' | 'ph' | 'supplyPh' | 'temperature';
type Foam = NonNullable<RugFactOf<'RinseMeasured'>['foam']>;

const slotsIn = (units: WorkshopSettings['units']): readonly Slot<Key>[] => [
  { key: 'conductivity', name: 'Rinse water', unit: 'µS/cm', least: 0, most: 200_000 },
  { key: 'supply', name: 'Supply', unit: 'µS/cm', least: 0, most: 200_000, aim: 'the water as it comes' },
  { key: 'ph', name: 'Rinse pH', unit: '', least: 0, most: 14 },
  { key: 'supplyPh', name: 'Supply pH', unit: '', least: 0, most: 14 },
  { key: 'temperature', name: 'Water', ...warmthIn(units, 0, 90) },
];

const wholeRug = 'the whole rug';

interface RinseSheetProps {
  /** The step that rinses; absent: a place rinsed by itself, between spotters that may not meet. */
  readonly step?: PlanStep | undefined;
  /** The mark it is read at first; absent: the whole rug. */
  readonly at?: string;
  readonly onClose: () => void;
}

/** A rinse reading against the water it is rinsed with. */
export function RinseSheet({ step, at, onClose }: RinseSheetProps) {
  const { standing, visit, settings, now } = useDossier();
  const limits = rulebookOf(settings).stops;
  const slots = slotsIn(settings.units);
  const before = visit?.rinses.at(-1);
  const { form, act, isBusy, problem, forget } = useForm(
    `rinse/${step === undefined ? (at ?? '') : stepId(step)}`,
    onClose,
  );
  const [typed, setTyped] = useField<Typed<Key>>(form, 'typed', {
    ...(before?.supplyConductivityUsPerCm === undefined
      ? {}
      : { supply: String(before.supplyConductivityUsPerCm) }),
    ...(before?.supplyPh === undefined ? {} : { supplyPh: String(before.supplyPh) }),
  });
  const [foam, setFoam] = useField<Foam | null>(form, 'foam', null);
  const [cloth, setCloth] = useField<Grade | null>(form, 'cloth', null);
  const [clothOn, setClothOn] = useField<string | null>(form, 'clothOn', null);
  const [runOff, setRunOff] = useField<RugFactOf<'RinseMeasured'>['runOff'] | null>(form, 'runOff', null);
  const [photos, setPhotos] = useField<readonly string[]>(form, 'photos', noItems);
  const [place, setPlace] = useField<string>(form, 'place', at ?? wholeRug);
  if (visit === null) return null;
  // Only where something that water takes out is still in the rug can a reading clear it.
  const held = residuesIn(standing, settings).flatMap(({ where, clears }) =>
    where !== null && clears === 'verified rinse' ? [where] : [],
  );
  const places = [...new Set([...held, ...(at === undefined ? [] : [at])])].map((mark) => ({
    value: mark,
    words: stainWords(standing.marks, mark),
  }));
  const value = Object.fromEntries(slots.map((slot) => [slot.key, valueIn(slot, typed)])) as {
    readonly [K in Key]: number | null;
  };
  const impossible = slots.some((slot) => (typed[slot.key] ?? '') !== '' && value[slot.key] === null);
  const empty =
    [value.conductivity, value.ph, foam, cloth, runOff].every((one) => one == null) && photos.length === 0;
  const fact: RugFactOf<'RinseMeasured'> = {
    type: 'RinseMeasured',
    ...(step === undefined ? {} : { step: stepId(step) }),
    ...(value.ph === null ? {} : { ph: value.ph }),
    ...(value.conductivity === null ? {} : { conductivityUsPerCm: value.conductivity }),
    ...(value.supply === null ? {} : { supplyConductivityUsPerCm: value.supply }),
    ...(value.supplyPh === null ? {} : { supplyPh: value.supplyPh }),
    ...(value.temperature === null ? {} : { temperatureC: value.temperature }),
    ...(foam === null ? {} : { foam }),
    ...(cloth === null ? {} : { whiteClothGrade: cloth }),
    ...(cloth === null || clothOn === null ? {} : { clothOn }),
    ...(runOff == null ? {} : { runOff }),
    ...(place === wholeRug ? {} : { mark: place }),
    ...(photos.length === 0 ? {} : { photos }),
  };
  const isNamed = clothOn !== null;
  const bench = benchGrade(standing, clothOn ?? undefined);
  const cloths = cloth === null ? null : clothVerdict(cloth, bench, isNamed);
  const colours = runOff == null ? null : runOffVerdict(runOff, runOffsBefore(visit, now), limits);
  const [stop] = empty ? [] : stopsRaised(standing, fact, { now, settings });
  // A figure typed long ago is no reading of now: closing the sheet lets it go.
  const leave = () => {
    forget();
    onClose();
  };
  return (
    <Sheet title="Reading: rinse" isOpen onClose={leave}>
      <div className="wash">
        <StoppedLine />
        {places.length > 0 && (
          <Choice
            label="Where is it read?"
            columns={2}
            options={[{ value: wholeRug, words: 'The whole rug' }, ...places]}
            value={place}
            onChange={setPlace}
          />
        )}
        <ReadingPad slots={slots} typed={typed} onChange={setTyped} />
        <Choice
          label="Foam"
          columns={3}
          options={[
            { value: 'none', words: 'None' },
            { value: 'some', words: 'Some' },
            { value: 'much', words: 'Much' },
          ]}
          value={foam}
          onChange={setFoam}
        />
        <Choice
          label="White cloth pressed on it"
          columns={3}
          options={clothOptions}
          value={cloth}
          onChange={setCloth}
        />
        {cloth !== null && <ClothOn value={clothOn} onChange={setClothOn} />}
        {cloths !== null && <VerdictLine verdict={cloths} />}
        <Choice
          label="Run-off"
          columns={2}
          options={runOffOptions}
          value={runOff ?? null}
          onChange={setRunOff}
        />
        {colours !== null && <VerdictLine verdict={colours} />}
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
