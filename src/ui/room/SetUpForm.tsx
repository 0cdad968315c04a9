import { useState } from 'react';
import { useLocation } from 'wouter';
import type { RoomFactOf } from '../../dossier/index.ts';
import { measureWords } from '../../units/index.ts';
import { type ShownProblem, useRecordRoom, useSettings } from '../call/index.ts';
import {
  Button,
  LineField,
  MeasureField,
  NumberField,
  newId,
  ProblemNotice,
  Section,
  useKept,
} from '../kit/index.ts';
import { MachineFields } from './MachineFields.tsx';
import { factOf, type TypedRoom, typedOf } from './typedRoom.ts';
import { WallField } from './WallField.tsx';

type SetUp = RoomFactOf<'RoomSetUp'>;

/** The room described once, by an owner: size, air, poles, meshes, machines. */
export function SetUpForm(props: {
  readonly room: string;
  readonly before: SetUp;
  readonly onKept?: () => void;
}) {
  const { room, before, onKept } = props;
  const { units } = useSettings();
  const [initial] = useState(() => typedOf(before));
  const [typed, setTyped, forget] = useKept<TypedRoom>(`room/${room}/set up`, initial);
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
  const speed = (metresPerSecond: number) => measureWords('airSpeed', metresPerSecond, units);
  return (
    <div className="form">
      <Section title="The room">
        <div className="form">
          <LineField label="Name" value={typed.name} onChange={(name) => change({ name })} isRequired />
          <MeasureField
            label="Volume"
            measure="volume"
            units={units}
            least={5}
            most={20000}
            value={typed.volumeM3}
            onChange={(volumeM3) => change({ volumeM3 })}
            hint="length × width × height"
            isRequired
          />
          <MeasureField
            label="Air along the rugs, fans still"
            measure="airSpeed"
            units={units}
            least={0}
            most={10}
            value={typed.airSpeedMPerS}
            onChange={(airSpeedMPerS) => change({ airSpeedMPerS })}
            hint={`${speed(0.1)} to ${speed(0.3)} is a still room`}
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
          <WallField
            volumeM3={typed.volumeM3}
            units={units}
            value={typed.wallsWPerK}
            onChange={(wallsWPerK) => change({ wallsWPerK })}
          />
        </div>
      </Section>
      <PoleFields typed={typed} change={change} units={units} />
      <MeshFields typed={typed} change={change} units={units} />
      <MachineFields machines={typed.machines} units={units} onChange={(machines) => change({ machines })} />
      <ProblemNotice problem={problem} />
      <Button wide isDisabled={fact === null || isBusy} onPress={keep}>
        Record the room
      </Button>
    </div>
  );
}

interface PartProps {
  readonly typed: TypedRoom;
  readonly change: (changed: Partial<TypedRoom>) => void;
  readonly units: 'metric' | 'customary';
}

function PoleFields({ typed, change, units }: PartProps) {
  const { poles } = typed;
  const fresh = { spot: newId(), name: `Pole ${poles.length + 1}`, lengthMm: 4000 };
  return (
    <Section title="Poles">
      <div className="form">
        {poles.map((pole, index) => {
          const put = (changed: Partial<typeof pole>) =>
            change({ poles: poles.map((one, at) => (at === index ? { ...one, ...changed } : one)) });
          return (
            <fieldset key={pole.spot} className="bareSet spotFields">
              <legend className="name">{pole.name || 'Pole'}</legend>
              <LineField label="Name" value={pole.name} onChange={(name) => put({ name })} isRequired />
              <SpanField
                label="Length"
                value={pole.lengthMm}
                units={units}
                onChange={(lengthMm) => put({ lengthMm })}
              />
              <MeasureField
                label="Carries at most"
                measure="mass"
                units={units}
                least={1}
                most={500}
                value={pole.mostKg}
                onChange={(mostKg) => put({ mostKg })}
                hint="all wet rugs together; empty: not known"
              />
              <MeasureField
                label="To the next pole"
                measure="gap"
                units={units}
                least={10}
                most={50_000}
                value={pole.toNextMm}
                onChange={(toNextMm) => put({ toNextMm })}
              />
              <Button tone="ghost" onPress={() => change({ poles: poles.filter((_, at) => at !== index) })}>
                Take {pole.name || 'the pole'} away
              </Button>
            </fieldset>
          );
        })}
        <Button
          tone="ghost"
          onPress={() => change({ poles: [...poles, { ...fresh, mostKg: null, toNextMm: null }] })}
        >
          One more pole
        </Button>
      </div>
    </Section>
  );
}

function MeshFields({ typed, change, units }: PartProps) {
  const { meshes } = typed;
  const fresh = { spot: newId(), name: `Mesh ${meshes.length + 1}`, lengthMm: 3500, widthMm: 2500 };
  return (
    <Section title="Meshes">
      <div className="form">
        {meshes.map((mesh, index) => {
          const put = (changed: Partial<typeof mesh>) =>
            change({ meshes: meshes.map((one, at) => (at === index ? { ...one, ...changed } : one)) });
          return (
            <fieldset key={mesh.spot} className="bareSet spotFields">
              <legend className="name">{mesh.name || 'Mesh'}</legend>
              <LineField label="Name" value={mesh.name} onChange={(name) => put({ name })} isRequired />
              <SpanField
                label="Length"
                value={mesh.lengthMm}
                units={units}
                onChange={(lengthMm) => put({ lengthMm })}
              />
              <SpanField
                label="Width"
                value={mesh.widthMm}
                units={units}
                onChange={(widthMm) => put({ widthMm })}
              />
              <Button tone="ghost" onPress={() => change({ meshes: meshes.filter((_, at) => at !== index) })}>
                Take {mesh.name || 'the mesh'} away
              </Button>
            </fieldset>
          );
        })}
        <Button tone="ghost" onPress={() => change({ meshes: [...meshes, fresh] })}>
          One more mesh
        </Button>
      </div>
    </Section>
  );
}

/** How long or wide a pole or mesh is. */
function SpanField(props: {
  readonly label: string;
  readonly value: number | null;
  readonly units: PartProps['units'];
  readonly onChange: (mm: number | null) => void;
}) {
  return <MeasureField {...props} measure="span" least={200} most={50_000} isRequired />;
}
