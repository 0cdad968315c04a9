import { useState } from 'react';
import type { Posture } from '../../core/drying/index.ts';
import type { RoomChange } from '../../dossier/index.ts';
import { Choice, Picker } from '../kit/index.ts';
import { AddRug } from './AddRugFields.tsx';
import { AirSpeedField, RatingFields } from './MachineFields.tsx';
import { OpenWindows } from './OpenWindows.tsx';
import { useRoomView } from './roomView.ts';
import type { WhatKind } from './WhatIfPart.tsx';
import { type OnWhat, useNowHour, useTold } from './whatTold.ts';

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
  const { units } = useRoomView().settings;
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
      <RatingFields
        units={units}
        litresPerDay={litres}
        onLitres={setLitres}
        ratedC={ratedC}
        onC={setRatedC}
        ratedRh={ratedRh}
        onRh={setRatedRh}
      />
    </div>
  );
}

function AddFan({ onWhat }: OnWhat) {
  const { units } = useRoomView().settings;
  const [airSpeed, setAirSpeed] = useState<number | null>(2);
  useTold(airSpeed === null ? null : { kind: 'add-fan', fan: { airSpeed } }, onWhat);
  return <AirSpeedField units={units} value={airSpeed} onChange={setAirSpeed} />;
}
