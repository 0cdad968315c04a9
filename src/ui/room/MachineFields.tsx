import { useState } from 'react';
import type { RoomMachine } from '../../dossier/index.ts';
import { measureWords, type UnitSystem } from '../../units/index.ts';
import { Button, Choice, LineField, MeasureField, NumberField, newId, Section } from '../kit/index.ts';

type Kind = RoomMachine['kind'];
interface Typed {
  readonly kind: Kind;
  readonly name: string;
  readonly works: 'refrigerant' | 'desiccant';
  readonly litresPerDay: number | null;
  readonly ratedC: number | null;
  readonly ratedRh: number | null;
  readonly airSpeed: number | null;
  readonly watts: number | null;
  readonly untilC: number | null;
}

const untouched: Typed = {
  ...{
    kind: 'dehumidifier',
    name: '',
    works: 'refrigerant',
    litresPerDay: null,
    ratedC: null,
    ratedRh: null,
  },
  ...{ airSpeed: null, watts: null, untilC: null },
};

function machineOf(typed: Typed): RoomMachine | null {
  const name = typed.name.trim();
  if (name === '') return null;
  const named = { machine: newId(), name };
  const watts = typed.watts === null ? {} : { watts: typed.watts };
  switch (typed.kind) {
    case 'dehumidifier': {
      const { works, litresPerDay, ratedC, ratedRh } = typed;
      if (litresPerDay === null || ratedC === null || ratedRh === null) return null;
      return {
        ...named,
        kind: 'dehumidifier',
        works,
        litresPerDay,
        ratedC,
        ratedRh: ratedRh / 100,
        ...watts,
      };
    }
    case 'fan':
      return typed.airSpeed === null
        ? null
        : { ...named, kind: 'fan', airSpeedMPerS: typed.airSpeed, ...watts };
    case 'heater':
      return typed.watts === null
        ? null
        : {
            ...{ ...named, kind: 'heater', watts: typed.watts },
            ...(typed.untilC === null ? {} : { untilC: typed.untilC }),
          };
  }
}

/** A machine's rating in words. */
function machineWords(machine: RoomMachine, units: UnitSystem): string {
  const warm = (celsius: number) => measureWords('temperature', celsius, units);
  switch (machine.kind) {
    case 'dehumidifier': {
      const water = measureWords('waterPerDay', machine.litresPerDay, units);
      return `${machine.works} dehumidifier, ${water} at ${warm(machine.ratedC)} and ${Math.round(machine.ratedRh * 100)} % RH`;
    }
    case 'fan':
      return `fan, ${measureWords('airSpeed', machine.airSpeedMPerS, units)} along the rugs`;
    case 'heater':
      return `heater, ${machine.watts} W${machine.untilC === undefined ? '' : `, until ${warm(machine.untilC)}`}`;
  }
}

/** What a dehumidifier takes out, with the air it was rated in: without that a rating says nothing. */
export function RatingFields(props: {
  readonly units: UnitSystem;
  readonly litresPerDay: number | null;
  readonly onLitres: (litresPerDay: number | null) => void;
  readonly ratedC: number | null;
  readonly onC: (ratedC: number | null) => void;
  readonly ratedRh: number | null;
  readonly onRh: (ratedRh: number | null) => void;
}) {
  const { units } = props;
  return (
    <>
      <MeasureField
        label="Takes out"
        measure="waterPerDay"
        units={units}
        least={0.1}
        most={2000}
        value={props.litresPerDay}
        onChange={props.onLitres}
      />
      <MeasureField
        label="Rated at"
        measure="temperature"
        units={units}
        least={5}
        most={45}
        value={props.ratedC}
        onChange={props.onC}
        hint={`on its plate or in its papers; often ${measureWords('temperature', 30, units)}`}
      />
      <NumberField
        label="Rated in air of"
        unit="% RH"
        least={10}
        most={100}
        value={props.ratedRh}
        onChange={props.onRh}
        hint="often 80 %, far damper than this room should be"
      />
    </>
  );
}

/** How fast a fan moves the air along what hangs. */
export function AirSpeedField(props: {
  readonly units: UnitSystem;
  readonly value: number | null;
  readonly onChange: (metresPerSecond: number | null) => void;
}) {
  const { units } = props;
  const speed = (metresPerSecond: number) => measureWords('airSpeed', metresPerSecond, units);
  return (
    <MeasureField
      {...props}
      label="Air along the rugs"
      measure="airSpeed"
      least={0.1}
      most={10}
      hint={`${speed(1)} to ${speed(3)} is wanted`}
    />
  );
}

/** The room's machines: a rating counts only with the air it was rated in. */
export function MachineFields(props: {
  readonly machines: readonly RoomMachine[];
  readonly units: UnitSystem;
  readonly onChange: (machines: readonly RoomMachine[]) => void;
}) {
  const { machines, units, onChange } = props;
  const [typed, setTyped] = useState<Typed>(untouched);
  const change = (changed: Partial<Typed>) => setTyped((before) => ({ ...before, ...changed }));
  const made = machineOf(typed);
  return (
    <Section title="Machines">
      <ul className="plain-list switches">
        {machines.map((one) => (
          <li key={one.machine}>
            <span>
              <b>{one.name}</b>
              <span className="why">{machineWords(one, units)}</span>
            </span>
            <Button
              tone="ghost"
              label={`Take ${one.name} away`}
              onPress={() => onChange(machines.filter(({ machine }) => machine !== one.machine))}
            >
              Take away
            </Button>
          </li>
        ))}
      </ul>
      <details>
        <summary>Add a machine</summary>
        <div className="form">
          <Choice
            label="What"
            columns={3}
            options={[
              { value: 'dehumidifier', words: 'Dehumidifier' },
              { value: 'fan', words: 'Fan' },
              { value: 'heater', words: 'Heater' },
            ]}
            value={typed.kind}
            onChange={(kind) => change({ kind })}
          />
          <LineField
            label="Name"
            value={typed.name}
            onChange={(name) => change({ name })}
            hint="what is written on it"
          />
          {typed.kind === 'dehumidifier' ? (
            <>
              <Choice
                label="How it works"
                options={[
                  { value: 'refrigerant', words: 'Refrigerant' },
                  { value: 'desiccant', words: 'Desiccant' },
                ]}
                value={typed.works}
                onChange={(works) => change({ works })}
              />
              <RatingFields
                units={units}
                litresPerDay={typed.litresPerDay}
                onLitres={(litresPerDay) => change({ litresPerDay })}
                ratedC={typed.ratedC}
                onC={(ratedC) => change({ ratedC })}
                ratedRh={typed.ratedRh}
                onRh={(ratedRh) => change({ ratedRh })}
              />
            </>
          ) : null}
          {typed.kind === 'fan' ? (
            <AirSpeedField
              units={units}
              value={typed.airSpeed}
              onChange={(airSpeed) => change({ airSpeed })}
            />
          ) : null}
          <NumberField
            label="Power"
            unit="W"
            least={1}
            most={50000}
            value={typed.watts}
            onChange={(watts) => change({ watts })}
          />
          {typed.kind === 'heater' ? (
            <MeasureField
              label="Its thermostat"
              measure="temperature"
              units={units}
              least={5}
              most={45}
              value={typed.untilC}
              onChange={(untilC) => change({ untilC })}
              hint="never on the face of a rug"
            />
          ) : null}
          <Button
            tone="ghost"
            isDisabled={made === null}
            onPress={() => {
              if (made === null) return;
              onChange([...machines, made]);
              setTyped(untouched);
            }}
          >
            Add it to the room
          </Button>
        </div>
      </details>
    </Section>
  );
}
