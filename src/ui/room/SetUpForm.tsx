import { useState } from 'react';
import { useLocation } from 'wouter';
import type { RoomFactOf, RoomMachine } from '../../dossier/index.ts';
import { type ShownProblem, useRecordRoom } from '../call/index.ts';
import { Button, LineField, NumberField, newId, ProblemNotice, Section, useKept } from '../kit/index.ts';
import { MachineFields } from './MachineFields.tsx';

type SetUp = RoomFactOf<'RoomSetUp'>;
interface TypedRoom {
  readonly name: string;
  readonly volumeM3: number | null;
  readonly airSpeedMPerS: number | null;
  readonly airChangesPerHour: number | null;
  readonly openAirChangesPerHour: number | null;
  readonly wallsWPerK: number | null;
  readonly poles: readonly {
    spot: string;
    name: string;
    length: number | null;
    mostKg: number | null;
    toNext: number | null;
  }[];
  readonly meshes: readonly { spot: string; name: string; length: number | null; width: number | null }[];
  readonly machines: readonly RoomMachine[];
}

const typedOf = (before: SetUp): TypedRoom => ({
  ...before,
  wallsWPerK: before.wallsWPerK ?? null,
  poles: before.poles.map(({ spot, name, lengthMm, mostKg, toNextMm }) => ({
    ...{ spot, name, length: lengthMm / 1000, mostKg: mostKg ?? null },
    toNext: toNextMm === undefined ? null : toNextMm / 10,
  })),
  meshes: before.meshes.map(({ spot, name, lengthMm, widthMm }) => ({
    ...{ spot, name, length: lengthMm / 1000, width: widthMm / 1000 },
  })),
});

/** The fact, or null while a figure or a name is missing. */
function factOf(typed: TypedRoom): SetUp | null {
  const { name, volumeM3, airSpeedMPerS, airChangesPerHour, openAirChangesPerHour, wallsWPerK } = typed;
  if (name.trim() === '' || volumeM3 === null || airSpeedMPerS === null) return null;
  if (airChangesPerHour === null || openAirChangesPerHour === null) return null;
  const poles = typed.poles.flatMap(({ spot, name: pole, length, mostKg, toNext }) =>
    length === null || pole.trim() === ''
      ? []
      : [
          {
            ...{ spot, name: pole.trim(), lengthMm: Math.round(length * 1000) },
            ...(mostKg === null ? {} : { mostKg }),
            ...(toNext === null ? {} : { toNextMm: Math.round(toNext * 10) }),
          },
        ],
  );
  const meshes = typed.meshes.flatMap(({ spot, name: mesh, length, width }) =>
    length === null || width === null || mesh.trim() === ''
      ? []
      : [{ spot, name: mesh.trim(), lengthMm: Math.round(length * 1000), widthMm: Math.round(width * 1000) }],
  );
  if (poles.length < typed.poles.length || meshes.length < typed.meshes.length) return null;
  return {
    type: 'RoomSetUp',
    ...{ name: name.trim(), volumeM3, airSpeedMPerS, airChangesPerHour, openAirChangesPerHour },
    ...(wallsWPerK === null ? {} : { wallsWPerK }),
    ...{ poles, meshes, machines: typed.machines },
  };
}

/** The room described once, by an owner: size, air, poles, meshes, machines. */
export function SetUpForm(props: {
  readonly room: string;
  readonly before: SetUp;
  readonly onKept?: () => void;
}) {
  const { room, before, onKept } = props;
  const [initial] = useState(() => typedOf(before));
  const [typed, setTyped, forget] = useKept<TypedRoom>(`room/${room}/set-up`, initial);
  const { record, isBusy } = useRecordRoom(room);
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const [, go] = useLocation();
  const change = (changed: Partial<TypedRoom>) => setTyped((known) => ({ ...known, ...changed }));
  const fact = factOf(typed);
  const keep = async () => {
    if (fact === null) return;
    const answer = await record([fact]);
    if (!answer.ok) return setProblem(answer.problem);
    forget();
    if (onKept === undefined) go(`/rooms/${room}`);
    else onKept();
  };
  return (
    <div className="form">
      <Section title="The room">
        <div className="form">
          <LineField label="Name" value={typed.name} onChange={(name) => change({ name })} isRequired />
          <NumberField
            label="Volume"
            unit="m³"
            least={5}
            most={20000}
            value={typed.volumeM3}
            onChange={(volumeM3) => change({ volumeM3 })}
            hint="length × width × height"
            isRequired
          />
          <NumberField
            label="Air along the rugs, fans still"
            unit="m/s"
            least={0}
            most={10}
            value={typed.airSpeedMPerS}
            onChange={(airSpeedMPerS) => change({ airSpeedMPerS })}
            hint="0.1 to 0.3 is a still room"
            isRequired
          />
          <NumberField
            label="Air changes an hour, windows shut"
            unit="per hour"
            least={0}
            most={60}
            value={typed.airChangesPerHour}
            onChange={(airChangesPerHour) => change({ airChangesPerHour })}
            hint="0.2 tight, 0.5 ordinary, 1 draughty"
            isRequired
          />
          <NumberField
            label="Air changes an hour, windows open"
            unit="per hour"
            least={0}
            most={200}
            value={typed.openAirChangesPerHour}
            onChange={(openAirChangesPerHour) => change({ openAirChangesPerHour })}
            hint="3 to 10 with one window"
            isRequired
          />
          <NumberField
            label="Walls let through"
            unit="W/K"
            least={1}
            most={100000}
            value={typed.wallsWPerK}
            onChange={(wallsWPerK) => change({ wallsWPerK })}
            hint="wall area × U-value; empty: the room is taken to stay as warm as it was read last"
          />
        </div>
      </Section>
      <Section title="Poles">
        <div className="form">
          {typed.poles.map((pole, index) => {
            const put = (changed: Partial<typeof pole>) =>
              change({ poles: typed.poles.map((one, at) => (at === index ? { ...one, ...changed } : one)) });
            return (
              <fieldset key={pole.spot} className="bareSet spotFields">
                <legend className="name">{pole.name || 'Pole'}</legend>
                <LineField label="Name" value={pole.name} onChange={(name) => put({ name })} isRequired />
                <NumberField
                  label="Length"
                  unit="m"
                  least={0.2}
                  most={50}
                  value={pole.length}
                  onChange={(length) => put({ length })}
                  isRequired
                />
                <NumberField
                  label="Carries at most"
                  unit="kg"
                  least={1}
                  most={500}
                  value={pole.mostKg}
                  onChange={(mostKg) => put({ mostKg })}
                  hint="all wet rugs together; empty: not known"
                />
                <NumberField
                  label="To the next pole"
                  unit="cm"
                  least={1}
                  most={5000}
                  value={pole.toNext}
                  onChange={(toNext) => put({ toNext })}
                />
                <Button
                  tone="ghost"
                  onPress={() => change({ poles: typed.poles.filter((_, at) => at !== index) })}
                >
                  Take {pole.name || 'the pole'} away
                </Button>
              </fieldset>
            );
          })}
          <Button
            tone="ghost"
            onPress={() =>
              change({
                poles: [
                  ...typed.poles,
                  {
                    spot: newId(),
                    name: `Pole ${typed.poles.length + 1}`,
                    length: 4,
                    mostKg: null,
                    toNext: null,
                  },
                ],
              })
            }
          >
            One more pole
          </Button>
        </div>
      </Section>
      <Section title="Meshes">
        <div className="form">
          {typed.meshes.map((mesh, index) => {
            const put = (changed: Partial<typeof mesh>) =>
              change({
                meshes: typed.meshes.map((one, at) => (at === index ? { ...one, ...changed } : one)),
              });
            return (
              <fieldset key={mesh.spot} className="bareSet spotFields">
                <legend className="name">{mesh.name || 'Mesh'}</legend>
                <LineField label="Name" value={mesh.name} onChange={(name) => put({ name })} isRequired />
                <NumberField
                  label="Length"
                  unit="m"
                  least={0.2}
                  most={50}
                  value={mesh.length}
                  onChange={(length) => put({ length })}
                  isRequired
                />
                <NumberField
                  label="Width"
                  unit="m"
                  least={0.2}
                  most={50}
                  value={mesh.width}
                  onChange={(width) => put({ width })}
                  isRequired
                />
                <Button
                  tone="ghost"
                  onPress={() => change({ meshes: typed.meshes.filter((_, at) => at !== index) })}
                >
                  Take {mesh.name || 'the mesh'} away
                </Button>
              </fieldset>
            );
          })}
          <Button
            tone="ghost"
            onPress={() =>
              change({
                meshes: [
                  ...typed.meshes,
                  { spot: newId(), name: `Mesh ${typed.meshes.length + 1}`, length: 3.5, width: 2.5 },
                ],
              })
            }
          >
            One more mesh
          </Button>
        </div>
      </Section>
      <MachineFields machines={typed.machines} onChange={(machines) => change({ machines })} />
      <ProblemNotice problem={problem} />
      <Button wide isDisabled={fact === null || isBusy} onPress={keep}>
        Record the room
      </Button>
    </div>
  );
}
