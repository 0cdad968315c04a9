import { moistureRatio, ovenDryMassOf, type RugFactOf } from '../../dossier/index.ts';
import { measureWords } from '../../units/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { percentWords } from '../dossier/figures.ts';
import { noItems, nothingTyped, useField, useForm } from '../dossier/useForm.ts';
import { Button, Choice, LineField, Notice, newId, PhotoTaker, ProblemNotice, Sheet } from '../kit/index.ts';
import { massIn, ReadingPad, type Slot, type Typed, valueIn, warmthIn } from '../wash/ReadingPad.tsx';

type Reading = RugFactOf<'DryingReading'>;
type Key = 'mass' | 'airRh' | 'airC' | 'pocket' | 'reference';

interface MeterPoint {
  readonly key: string;
  readonly at: string;
}

const usualPoints: readonly MeterPoint[] = ['pile, middle', 'foundation, back', 'fringe'].map((at) => ({
  key: at,
  at,
}));

/** One look at a drying rug: mass and room first, then meter, pocket, and the senses. */
export function DryingReadingSheet({ onClose }: { readonly onClose: () => void }) {
  const { standing, visit, settings } = useDossier();
  const before = visit?.readings.findLast(({ meterDryReference }) => meterDryReference !== undefined);
  const { form, act, isBusy, problem, forget } = useForm('drying reading', onClose);
  const [typed, setTyped] = useField<Typed<Key>>(
    form,
    'typed',
    before?.meterDryReference === undefined ? {} : { reference: String(before.meterDryReference) },
  );
  const [points, setPoints] = useField<readonly MeterPoint[]>(form, 'points', usualPoints);
  const [meter, setMeter] = useField<Typed<string>>(form, 'meter', nothingTyped);
  const [touch, setTouch] = useField<NonNullable<Reading['touch']> | null>(form, 'touch', null);
  const [smell, setSmell] = useField<NonNullable<Reading['smell']> | null>(form, 'smell', null);
  const [cloth, setCloth] = useField<NonNullable<Reading['whiteCloth']> | null>(form, 'cloth', null);
  const [photos, setPhotos] = useField<readonly string[]>(form, 'photos', noItems);
  if (visit === null) return null;
  const ovenDry = ovenDryMassOf(standing, visit);
  const mass = (kilograms: number) => measureWords('mass', kilograms, settings.units);
  const slots: readonly Slot<Key>[] = [
    {
      key: 'mass',
      name: 'Mass',
      ...massIn(settings.units),
      verdict: (value) => {
        if (ovenDry === null) return null;
        const ratio = moistureRatio(value, ovenDry);
        return ratio.most < 0
          ? { tone: 'caution', words: 'lighter than the dry rug: weigh again' }
          : {
              tone: 'ok',
              words: `water ${percentWords(ratio.likely)} of dry mass (${percentWords(ratio.least)} to ${percentWords(ratio.most)})`,
            };
      },
    },
    {
      key: 'airRh',
      name: 'Room',
      unit: '% RH',
      least: 0,
      most: 100,
      verdict: (value) =>
        value > 60 ? { tone: 'caution', words: 'above 60 %: weighings here do not count as constant' } : null,
    },
    { key: 'airC', name: 'Room', ...warmthIn(settings.units, -30, 60) },
    {
      key: 'pocket',
      name: 'Pocket',
      unit: '% RH',
      least: 0,
      most: 100,
      aim: 'taped film, after 30 to 60 min',
    },
    {
      key: 'reference',
      name: 'Dry reference',
      unit: 'meter',
      least: 0,
      most: 1000,
      aim: 'same meter on a dry piece',
    },
  ];
  const meterSlots: readonly Slot<string>[] = points.map(({ key, at }) => ({
    key,
    name: at || 'point',
    unit: 'meter',
    least: 0,
    most: 1000,
  }));
  const value = Object.fromEntries(slots.map((slot) => [slot.key, valueIn(slot, typed)])) as {
    readonly [K in Key]: number | null;
  };
  const read = meterSlots.flatMap((slot) => {
    const one = valueIn(slot, meter);
    return one === null ? [] : [{ reading: one, at: slot.name }];
  });
  const impossible =
    slots.some((slot) => (typed[slot.key] ?? '') !== '' && value[slot.key] === null) ||
    meterSlots.some((slot) => (meter[slot.key] ?? '') !== '' && valueIn(slot, meter) === null);
  const empty =
    value.mass === null &&
    value.pocket === null &&
    read.length === 0 &&
    touch === null &&
    smell === null &&
    cloth === null;
  const record = () =>
    act({
      type: 'DryingReading',
      ...(value.mass === null ? {} : { massKg: value.mass }),
      ...(value.airRh === null ? {} : { airRh: value.airRh / 100 }),
      ...(value.airC === null ? {} : { airC: value.airC }),
      ...(value.pocket === null ? {} : { pocketRh: value.pocket / 100 }),
      ...(value.reference === null ? {} : { meterDryReference: value.reference }),
      ...(read.length === 0 ? {} : { meter: read }),
      ...(touch === null ? {} : { touch }),
      ...(smell === null ? {} : { smell }),
      ...(cloth === null ? {} : { whiteCloth: cloth }),
      photos,
    });
  // A figure typed long ago is no reading of now: closing the sheet lets it go.
  const leave = () => {
    forget();
    onClose();
  };
  return (
    <Sheet title="Drying reading" isOpen onClose={leave}>
      <div className="wash">
        <p className="why">
          {ovenDry === null
            ? 'The dry mass is not known.'
            : `Oven-dry ${mass(ovenDry.likely)} (${mass(ovenDry.least)} to ${mass(ovenDry.most)}), from the intake weighing.`}{' '}
          Note the room with every weighing. Lift it with the people its plan names; dry hands at switches.
        </p>
        <div className="besideEachOther">
          <ReadingPad slots={slots} typed={typed} onChange={setTyped} />
        </div>
        <details className="meter">
          <summary>Meter points: pile, foundation, fringe</summary>
          {points.map((point, index) => (
            <LineField
              key={point.key}
              label={`Point ${index + 1}`}
              value={point.at}
              onChange={(at) =>
                setPoints(points.map((one) => (one.key === point.key ? { ...one, at } : one)))
              }
            />
          ))}
          <ReadingPad slots={meterSlots} typed={meter} onChange={setMeter} />
          <Button tone="ghost" onPress={() => setPoints([...points, { key: newId(), at: '' }])}>
            One more point
          </Button>
        </details>
        <Choice
          label="Touch"
          columns={2}
          hint="wool holds a third of its mass in vapour without feeling wet: touch alone never passes"
          options={(['dry', 'cool', 'damp', 'wet'] as const).map((one) => ({ value: one, words: one }))}
          value={touch}
          onChange={setTouch}
        />
        <Choice
          label="Smell"
          columns={2}
          options={(['none', 'musty', 'sour', 'wet wool'] as const).map((one) => ({
            value: one,
            words: one,
          }))}
          value={smell}
          onChange={setSmell}
        />
        {smell === 'musty' || smell === 'sour' ? (
          <Notice tone="caution" title="Mould may have begun.">
            <p>
              Respirator and gloves before anybody comes nearer; keep it apart from the other rugs, and do not
              beat or brush it dry. Licensed practice and local codes come first.
            </p>
          </Notice>
        ) : null}
        <Choice
          label="White cloth"
          columns={2}
          options={(['clean', 'colour'] as const).map((one) => ({ value: one, words: one }))}
          value={cloth}
          onChange={setCloth}
        />
        <PhotoTaker label="Photograph it" onTaken={({ photo }) => setPhotos([...photos, photo])} />
        <ProblemNotice problem={problem} />
        <Button wide isDisabled={empty || impossible || isBusy} onPress={record}>
          Record the reading
        </Button>
      </div>
    </Sheet>
  );
}
