import { useEffect, useState } from 'react';
import type { DryRug, Posture } from '../../core/drying/index.ts';
import {
  plannedDryingRug,
  planOf,
  type RoomChange,
  rugInScenario,
  standingOf,
  windowsOpen,
} from '../../dossier/index.ts';
import { useRows, useRug } from '../call/index.ts';
import { Choice, NumberField, Picker } from '../kit/index.ts';
import { useRoomView } from './roomView.ts';
import type { WhatKind } from './WhatIfPart.tsx';

/** The few things a change needs to be told. */
export function WhatIfFields(props: {
  readonly kind: WhatKind;
  readonly onWhat: (change: RoomChange | null) => void;
}) {
  const { kind, onWhat } = props;
  switch (kind) {
    case 'add-rug':
      return <AddRug onWhat={onWhat} />;
    case 'turn':
    case 'take-down':
      return <OneRug kind={kind} onWhat={onWhat} />;
    case 'add-machine':
      return <AddMachine onWhat={onWhat} />;
    case 'add-fan':
      return <AddFan onWhat={onWhat} />;
    case 'open':
      return <OpenWindows onWhat={onWhat} />;
  }
}

type OnWhat = { readonly onWhat: (change: RoomChange | null) => void };

const useNowHour = (): number => {
  const { now, zero } = useRoomView();
  return (Date.parse(now) - Date.parse(zero)) / 3_600_000;
};

/** Tells the change whenever one of its parts is another. */
const useTold = (change: RoomChange | null, onWhat: OnWhat['onWhat']) => {
  const said = JSON.stringify(change);
  useEffect(() => onWhat(JSON.parse(said) as RoomChange | null), [said, onWhat]);
};

function OneRug({ kind, onWhat }: OnWhat & { readonly kind: 'turn' | 'take-down' }) {
  const { rugs } = useRoomView();
  const hour = useNowHour();
  const [rug, setRug] = useState('');
  const [posture, setPosture] = useState<Posture>('hung');
  const change: RoomChange | null =
    rug === '' ? null : kind === 'turn' ? { kind, rug, hour, posture } : { kind, rug, hour };
  useTold(change, onWhat);
  return (
    <div className="form">
      <Picker
        label="Which"
        any="choose a rug"
        options={rugs.map((one) => ({ value: one.rug, words: `${one.tag} ${one.title}` }))}
        value={rug}
        onChange={setRug}
      />
      {kind === 'turn' ? (
        <Choice
          label="So that it"
          columns={3}
          options={[
            { value: 'hung', words: 'hangs' },
            { value: 'mesh', words: 'lies on mesh' },
            { value: 'floor', words: 'lies on the floor' },
          ]}
          value={posture}
          onChange={setPosture}
        />
      ) : null}
    </div>
  );
}

function AddMachine({ onWhat }: OnWhat) {
  const [litres, setLitres] = useState<number | null>(60);
  const [ratedC, setRatedC] = useState<number | null>(30);
  const [ratedRh, setRatedRh] = useState<number | null>(80);
  const change: RoomChange | null =
    litres === null || ratedC === null || ratedRh === null
      ? null
      : { kind: 'add-machine', machine: { litresPerDay: litres, ratedC, ratedRh: ratedRh / 100 } };
  useTold(change, onWhat);
  return (
    <div className="form">
      <NumberField
        label="Takes out"
        unit="L a day"
        least={0.1}
        most={2000}
        value={litres}
        onChange={setLitres}
      />
      <NumberField label="Rated at" unit="°C" least={5} most={45} value={ratedC} onChange={setRatedC} />
      <NumberField
        label="Rated in air of"
        unit="% RH"
        least={10}
        most={100}
        value={ratedRh}
        onChange={setRatedRh}
      />
    </div>
  );
}

function AddFan({ onWhat }: OnWhat) {
  const [airSpeed, setAirSpeed] = useState<number | null>(2);
  useTold(airSpeed === null ? null : { kind: 'add-fan', fan: { airSpeed } }, onWhat);
  return (
    <NumberField
      label="Air along the rugs"
      unit="m/s"
      least={0.1}
      most={10}
      value={airSpeed}
      onChange={setAirSpeed}
      hint="1 to 3 m/s is wanted"
    />
  );
}

/** A night's opening [h]. */
const nightHours = 8;

function OpenWindows({ onWhat }: OnWhat) {
  const { setUp, standing } = useRoomView();
  const hour = useNowHour();
  const opening = {
    ...{ fromHour: hour, untilHour: hour + nightHours },
    airChangesPerHour: setUp.openAirChangesPerHour,
  };
  useTold({ kind: 'open', opening }, onWhat);
  return (
    <p className="why">
      For {nightHours} h from now, {setUp.openAirChangesPerHour} air changes an hour
      {windowsOpen(standing) ? '; they stand open already' : ''}. Local rules on an open house at night come
      first.
    </p>
  );
}

function AddRug({ onWhat }: OnWhat) {
  const [from, setFrom] = useState<'planned' | 'sketch'>('planned');
  return (
    <div className="form">
      <Choice
        label="Which rug"
        options={[
          { value: 'planned', words: 'One in the house' },
          { value: 'sketch', words: 'A sketch', hint: 'size and kind only' },
        ]}
        value={from}
        onChange={setFrom}
      />
      {from === 'planned' ? <PlannedRug onWhat={onWhat} /> : <SketchedRug onWhat={onWhat} />}
    </div>
  );
}

function PlannedRug({ onWhat }: OnWhat) {
  const { rows } = useRows({ inHouse: true, limit: 200 });
  const [rug, setRug] = useState('');
  const dryOnes = rows.filter(({ body }) => body.wetSince === null);
  return (
    <>
      <Picker
        label="Which"
        any="choose a rug"
        options={dryOnes.map((one) => ({ value: one.rug, words: `${one.body.tag ?? ''} ${one.body.title}` }))}
        value={rug}
        onChange={setRug}
        hint="as its plan would hang it, if its wash began now"
      />
      {rug === '' ? null : <PlannedRugTold key={rug} rug={rug} onWhat={onWhat} />}
    </>
  );
}

function PlannedRugTold({ rug, onWhat }: OnWhat & { readonly rug: string }) {
  const { now, zero, setUp, settings } = useRoomView();
  const { entries, isLoading } = useRug(rug);
  const standing = standingOf(entries);
  const plan = entries.length === 0 ? null : planOf(standing, settings, now);
  const bounds = plan?.ok === true ? plan.value.bounds : null;
  const told = plannedDryingRug(standing, rug, bounds, now, setUp.meshes.length > 0);
  const made: DryRug | null = told.ok ? { ...rugInScenario(told.value, zero), id: 'sketch' } : null;
  useTold(made === null ? null : { kind: 'add-rug', rug: made }, onWhat);
  return isLoading || told.ok ? null : <p className="why">It is not measured yet: measure it first.</p>;
}

function SketchedRug({ onWhat }: OnWhat) {
  const hour = useNowHour();
  const [area, setArea] = useState<number | null>(4);
  const [mass, setMass] = useState<number | null>(14);
  const [posture, setPosture] = useState<Posture>('hung');
  const rug: DryRug | null =
    area === null || mass === null
      ? null
      : {
          ...{ id: 'sketch', areaM2: area, dryMassKg: mass, fibres: { wool: 1 }, posture },
          ...{ extraction: 'squeegee and vacuum', hungAtHour: hour, wettedAtHour: hour - 1 },
        };
  useTold(rug === null ? null : { kind: 'add-rug', rug }, onWhat);
  return (
    <>
      <NumberField label="Area" unit="m²" least={0.1} most={200} value={area} onChange={setArea} />
      <NumberField
        label="Dry mass"
        unit="kg"
        least={0.1}
        most={500}
        value={mass}
        onChange={setMass}
        hint="wool, squeegeed and vacuumed, is reckoned with"
      />
      <Choice
        label="How it dries"
        columns={3}
        options={[
          { value: 'hung', words: 'hung' },
          { value: 'mesh', words: 'on mesh' },
          { value: 'floor', words: 'on the floor' },
        ]}
        value={posture}
        onChange={setPosture}
      />
    </>
  );
}
