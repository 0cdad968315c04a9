import { Fragment, useState } from 'react';
import {
  type HardnessUnit,
  hardnessOnlyUnits,
  hardnessUnits,
  hardnessUnitWords,
  mostIronMgPerL,
  waterToReckonWith,
} from '../../core/chemistry/index.ts';
import { mixingPlaceOf, type ShelfFactOf, type ShelfStanding } from '../../dossier/index.ts';
import {
  Button,
  DayField,
  dayWords,
  FactList,
  Notice,
  NumberField,
  NumberFields,
  type NumberOf,
  Picker,
  ProblemNotice,
  Section,
  Sheet,
} from '../kit/index.ts';
import { useSheet } from './useSheet.ts';

const asksWords = {
  absent: 'The supply water was never read.',
  old: 'The reading of the water is more than a year old.',
  'no alkalinity': 'The alkalinity of the water is not known.',
  'no hardness': 'The hardness of the water is not known.',
} as const;

interface WaterProps {
  readonly water: ShelfStanding['water'];
  readonly today: string;
  readonly keeps: boolean;
}

/** The water that comes out of the tap, as last read, and what is assumed where it was not. */
export function WaterPart({ water, today, keeps }: WaterProps) {
  const [isOpen, setOpen] = useState(false);
  const supply = mixingPlaceOf({ revision: 0, agents: [], water }, today).water;
  const { alkalinity, hardness, asks } = waterToReckonWith(supply, today);
  const range = ({ least, most, value, assumed }: typeof alkalinity) =>
    assumed
      ? `${least.toFixed(0)} to ${most.toFixed(0)} mg/L CaCO₃, assumed`
      : `${value.toFixed(0)} mg/L CaCO₃`;
  const read = (name: string, value: number | undefined, unit: string) =>
    value === undefined ? [] : [{ name, value: `${value} ${unit}`.trim() }];
  const iron = supply?.ironMgPerL ?? 0;
  return (
    <Section
      title="Supply water"
      aside={
        keeps ? (
          <Button tone="ghost" onPress={() => setOpen(true)}>
            Write a reading
          </Button>
        ) : null
      }
    >
      {asks === null ? null : (
        <Notice tone="caution" title={asksWords[asks]}>
          <p>
            Ask the water supplier for its sheet, or use a test kit. Until then the worst is assumed: acid is
            begun at its least amount and measured.
          </p>
        </Notice>
      )}
      {iron > mostIronMgPerL ? (
        <Notice
          tone="caution"
          title={`Iron ${iron} mg/L: it can leave rust on cotton and spoils peroxide.`}
        />
      ) : null}
      <FactList
        rows={[
          ...(water === null ? [] : [{ name: 'Read on', value: dayWords(water.on) }]),
          { name: 'Alkalinity', value: range(alkalinity) },
          { name: 'Hardness', value: range(hardness) },
          ...read('pH', supply?.pH, ''),
          ...read('Conductivity', supply?.conductivityUsPerCm, 'µS/cm'),
          ...read('Iron', supply?.ironMgPerL, 'mg/L'),
          ...read('Temperature', supply?.temperatureC, '°C'),
        ]}
      />
      {isOpen ? <WaterSheet today={today} onClose={() => setOpen(false)} /> : null}
    </Section>
  );
}

interface Typed {
  readonly alkalinity: number | null;
  readonly hardness: number | null;
  readonly ph: number | null;
  readonly conductivityUsPerCm: number | null;
  readonly ironMgPerL: number | null;
  readonly temperatureC: number | null;
}
const nothing: Typed = {
  ...{ alkalinity: null, hardness: null, ph: null },
  ...{ conductivityUsPerCm: null, ironMgPerL: null, temperatureC: null },
};

const plainFields: readonly NumberOf<Exclude<keyof Typed, 'alkalinity' | 'hardness'>>[] = [
  { name: 'ph', label: 'pH', unit: 'pH', least: 0, most: 14 },
  { name: 'conductivityUsPerCm', label: 'Conductivity', unit: 'µS/cm', least: 0, most: 200_000 },
  { name: 'ironMgPerL', label: 'Iron', unit: 'mg/L', least: 0, most: 100 },
  { name: 'temperatureC', label: 'Temperature', unit: '°C', least: 0, most: 60 },
];

const unitOptions = {
  alkalinity: hardnessUnits.map((value) => ({ value, words: hardnessUnitWords[value] })),
  hardness: hardnessOnlyUnits.map((value) => ({ value, words: hardnessUnitWords[value] })),
};

function WaterSheet({ today, onClose }: { readonly today: string; readonly onClose: () => void }) {
  const { send, problem, isBusy } = useSheet(onClose);
  const [on, setOn] = useState<string | null>(today);
  const [typed, setTyped] = useState(nothing);
  const [units, setUnits] = useState<{ readonly alkalinity: HardnessUnit; readonly hardness: HardnessUnit }>({
    alkalinity: 'mg/L CaCO₃',
    hardness: '°dH',
  });
  const fact = (): ShelfFactOf<'WaterMeasured'> => {
    const { alkalinity, hardness, ...plain } = typed;
    const given = Object.entries(plain).filter(([, value]) => value !== null);
    return {
      type: 'WaterMeasured',
      on: on ?? today,
      ...(alkalinity === null ? {} : { alkalinity: { value: alkalinity, unit: units.alkalinity } }),
      ...(hardness === null ? {} : { hardness: { value: hardness, unit: units.hardness } }),
      ...(Object.fromEntries(given) as Partial<ShelfFactOf<'WaterMeasured'>>),
    };
  };
  return (
    <Sheet title="Supply water" isOpen onClose={onClose}>
      <div className="form">
        <DayField label="Read on" value={on} onChange={setOn} isRequired />
        {(['alkalinity', 'hardness'] as const).map((field) => (
          <Fragment key={field}>
            <NumberField
              label={field === 'alkalinity' ? 'Alkalinity' : 'Hardness'}
              unit={units[field] === 'mmol/L acid' ? 'mmol/L' : units[field]}
              least={0}
              most={5000}
              value={typed[field]}
              onChange={(value) => setTyped((before) => ({ ...before, [field]: value }))}
            />
            <Picker
              label={`Unit of the ${field}`}
              options={unitOptions[field]}
              value={units[field]}
              onChange={(unit) => setUnits((before) => ({ ...before, [field]: unit as HardnessUnit }))}
            />
          </Fragment>
        ))}
        <NumberFields
          fields={plainFields}
          typed={typed}
          onChange={(name, value) => setTyped((before) => ({ ...before, [name]: value }))}
        />
        <ProblemNotice problem={problem} />
        <Button
          wide
          isDisabled={isBusy || on === null || Object.values(typed).every((one) => one === null)}
          onPress={() => send(fact())}
        >
          Record the reading
        </Button>
      </div>
    </Sheet>
  );
}
