import { useState } from 'react';
import type { RoomMachine } from '../../dossier/index.ts';
import { Button, Choice, LineField, NumberField, newId, Section } from '../kit/index.ts';

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
export function machineWords(machine: RoomMachine): string {
  switch (machine.kind) {
    case 'dehumidifier':
      return `${machine.works} dehumidifier, ${machine.litresPerDay} L a day at ${machine.ratedC} °C and ${Math.round(machine.ratedRh * 100)} % RH`;
    case 'fan':
      return `fan, ${machine.airSpeedMPerS} m/s along the rugs`;
    case 'heater':
      return `heater, ${machine.watts} W${machine.untilC === undefined ? '' : `, until ${machine.untilC} °C`}`;
  }
}

/** The room's machines: a rating counts only with the air it was rated in. */
export function MachineFields(props: {
  readonly machines: readonly RoomMachine[];
  readonly onChange: (machines: readonly RoomMachine[]) => void;
}) {
  const { machines, onChange } = props;
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
              <span className="why">{machineWords(one)}</span>
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
              <NumberField
                label="Takes out"
                unit="L a day"
                least={0.1}
                most={2000}
                value={typed.litresPerDay}
                onChange={(litresPerDay) => change({ litresPerDay })}
              />
              <NumberField
                label="Rated at"
                unit="°C"
                least={5}
                most={45}
                value={typed.ratedC}
                onChange={(ratedC) => change({ ratedC })}
                hint="on its plate or in its papers; often 30 °C"
              />
              <NumberField
                label="Rated at"
                unit="% RH"
                least={10}
                most={100}
                value={typed.ratedRh}
                onChange={(ratedRh) => change({ ratedRh })}
                hint="often 80 %, far damper than this room should be"
              />
            </>
          ) : null}
          {typed.kind === 'fan' ? (
            <NumberField
              label="Air along the rugs"
              unit="m/s"
              least={0.1}
              most={15}
              value={typed.airSpeed}
              onChange={(airSpeed) => change({ airSpeed })}
              hint="1 to 3 m/s is wanted"
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
            <NumberField
              label="Its thermostat"
              unit="°C"
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
