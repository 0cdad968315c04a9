import { useState } from 'react';
import type { Agent } from '../../../core/wash/index.ts';
import { Check, NumberField, NumberFields, type NumberOf } from '../../kit/index.ts';
import { figure } from '../figures.ts';
import { conditionWords } from './conditionWords.ts';

/** What a blot lay in, how warm and how long; null where nobody said. */
export interface MadeWith {
  readonly strengthGPerL: number | null;
  readonly ph: number | null;
  readonly temperatureC: number | null;
  readonly minutes: number | null;
}

const minutesRange = { unit: 'min', least: 0, most: 20_000 } as const;

const madeFields: readonly NumberOf<keyof MadeWith>[] = [
  { name: 'strengthGPerL', label: 'Strength', unit: 'g/L', least: 0, most: 500 },
  { name: 'ph', label: 'pH', unit: '', least: 0, most: 14 },
  { name: 'temperatureC', label: 'Warmth', unit: '°C', least: 0, most: 60 },
  { name: 'minutes', label: 'Lay for', ...minutesRange },
];

/** The conditions a blot was made under: those asked for, unless somebody says otherwise. */
export function BlotConditions(props: {
  readonly agents: readonly Agent[] | undefined;
  readonly value: MadeWith;
  readonly onChange: (value: MadeWith) => void;
  /** Minutes asked for, where the plan asks for the blot. */
  readonly asked: number | undefined;
  /** Minutes it lay by its timer; null where none ran. */
  readonly lain: number | null;
}) {
  const { agents, value, asked, lain } = props;
  const [otherwise, setOtherwise] = useState(false);
  const set = (name: keyof MadeWith, to: number | null) => props.onChange({ ...value, [name]: to });
  const untimed = lain === null && asked !== undefined;
  return (
    <>
      <p>
        Made with{' '}
        {conditionWords({
          agents,
          strengthGPerL: value.strengthGPerL ?? undefined,
          pH: value.ph ?? undefined,
          temperatureC: value.temperatureC ?? undefined,
          minutes: value.minutes ?? undefined,
        }) || 'conditions not noted'}
        .
      </p>
      <Check
        label="It was made otherwise"
        hint="a test covers a bath of the same agents, no stronger, warmer or longer, and within 0.5 pH"
        isSelected={otherwise}
        onChange={setOtherwise}
      />
      {untimed && !otherwise && (
        <NumberField
          label="How long it lay"
          {...minutesRange}
          value={value.minutes}
          onChange={(minutes) => set('minutes', minutes)}
          hint="no timer ran for it; it covers no longer bath than this"
          isRequired
        />
      )}
      {otherwise && (
        <div className="pair">
          <NumberFields fields={madeFields} typed={value} onChange={set} />
        </div>
      )}
      {lain !== null && asked !== undefined && lain < asked && (
        <p className="open-fact">
          It lay {figure(lain)} of {figure(asked)} min: it covers no longer bath than that.
        </p>
      )}
    </>
  );
}
