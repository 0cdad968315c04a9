import { extractions, type Posture, postures } from '../../core/drying/index.ts';
import { fibres } from '../../core/wash/index.ts';
import { Choice, NumberField, Picker, Section } from '../kit/index.ts';
import type { TypedDrying } from './typedDrying.ts';

interface DryFieldsProps {
  readonly typed: TypedDrying;
  readonly change: (changed: Partial<TypedDrying>) => void;
}

type NumberName = {
  [Field in keyof TypedDrying]: TypedDrying[Field] extends number | null ? Field : never;
}[keyof TypedDrying];

interface NumberRow {
  readonly field: NumberName;
  readonly label: string;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly hint?: string;
  readonly isRequired?: boolean;
  readonly step?: number;
}

function Numbers({ rows, typed, change }: DryFieldsProps & { readonly rows: readonly NumberRow[] }) {
  return (
    <div className="pad">
      {rows.map(({ field, ...row }) => (
        <NumberField
          key={field}
          {...row}
          value={typed[field]}
          onChange={(value) => change({ [field]: value })}
        />
      ))}
    </div>
  );
}

const rugRows: readonly NumberRow[] = [
  { field: 'areaM2', label: 'Area', unit: 'm²', least: 0.05, most: 100, isRequired: true },
  {
    ...{ field: 'massKg', label: 'Dry mass', unit: 'kg', least: 0.1, most: 500, isRequired: true },
    hint: 'As weighed before the wash.',
  },
  { field: 'together', label: 'Rugs like it, itself included', unit: '', least: 1, most: 40, step: 1 },
];

const roomRows: readonly NumberRow[] = [
  { field: 'volumeM3', label: 'Room', unit: 'm³', least: 5, most: 10_000, isRequired: true },
  { field: 'airC', label: 'Room temperature', unit: '°C', least: 5, most: 45, isRequired: true },
  { field: 'rhPercent', label: 'Room humidity', unit: '% RH', least: 5, most: 100, isRequired: true },
  {
    ...{ field: 'airSpeed', label: 'Air along the rug', unit: 'm/s', least: 0, most: 5 },
    hint: 'Still air 0.1, a fan in the room 0.5, a fan along the face 1 to 3.',
  },
  {
    ...{ field: 'airChanges', label: 'Air changes', unit: 'per hour', least: 0, most: 20 },
    hint: 'Closed 0.3, a window ajar 1, wide open 5 and more.',
  },
  { field: 'outsideC', label: 'Outside temperature', unit: '°C', least: -30, most: 45, isRequired: true },
  {
    field: 'outsideRhPercent',
    label: 'Outside humidity',
    unit: '% RH',
    least: 5,
    most: 100,
    isRequired: true,
  },
];

const ratingRows: readonly NumberRow[] = [
  {
    ...{
      field: 'litresPerDay',
      label: 'Each takes out',
      unit: 'L/day',
      least: 1,
      most: 500,
      isRequired: true,
    },
    hint: 'From its plate, at the temperature and humidity beside it.',
  },
  { field: 'ratedC', label: 'Rated at', unit: '°C', least: 5, most: 45, isRequired: true },
  {
    field: 'ratedRhPercent',
    label: 'Rated at humidity',
    unit: '% RH',
    least: 10,
    most: 100,
    isRequired: true,
  },
];

const postureWords: Readonly<Record<Posture, string>> = {
  hung: 'hung, air on both faces',
  mesh: 'flat on open mesh',
  floor: 'flat on a floor',
};

/** The rug, how wet it is, and how it lies. */
export function DryRugFields({ typed, change }: DryFieldsProps) {
  const fibrePicker = (label: string, field: 'pile' | 'foundation') => (
    <Picker
      label={label}
      options={fibres}
      value={typed[field]}
      onChange={(word) => change({ [field]: fibres.find((fibre) => fibre === word) ?? 'unknown' })}
    />
  );
  return (
    <Section title="The rug">
      <div className="form">
        <Numbers rows={rugRows} typed={typed} change={change} />
        <div className="pad">
          {fibrePicker('Pile', 'pile')}
          {fibrePicker('Foundation', 'foundation')}
        </div>
        <Choice
          label="Water taken out by"
          options={extractions.map((extraction) => ({
            value: extraction,
            words: extraction === 'saturated' ? 'nothing: it is saturated' : extraction,
          }))}
          value={typed.extraction}
          onChange={(extraction) => change({ extraction })}
        />
        <Choice
          label="How it lies"
          columns={3}
          options={postures.map((posture) => ({ value: posture, words: postureWords[posture] }))}
          value={typed.posture}
          onChange={(posture) => change({ posture })}
        />
      </div>
    </Section>
  );
}

/** The room, the air outside, and the machines. */
export function DryRoomFields({ typed, change }: DryFieldsProps) {
  return (
    <Section title="The room">
      <div className="form">
        <Numbers rows={roomRows} typed={typed} change={change} />
        <NumberField
          label="Dehumidifiers"
          unit=""
          least={0}
          most={40}
          step={1}
          value={typed.machines}
          onChange={(machines) => change({ machines })}
        />
        {typed.machines === 0 ? null : (
          <>
            <Numbers rows={ratingRows} typed={typed} change={change} />
            <Choice
              label="Kind"
              options={[
                {
                  value: 'refrigerant',
                  words: 'with a cold coil',
                  hint: 'Weak below 40 % RH, none below 15 °C.',
                },
                { value: 'desiccant', words: 'with a drying agent' },
              ]}
              value={typed.machineType}
              onChange={(machineType) => change({ machineType })}
            />
          </>
        )}
      </div>
    </Section>
  );
}
