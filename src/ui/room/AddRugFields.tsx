import { useState } from 'react';
import type { DryRug, Posture } from '../../core/drying/index.ts';
import { plannedDryingRug, planOf, rugInScenario, standingOf } from '../../dossier/index.ts';
import { useRows, useRug } from '../call/index.ts';
import { Choice, MeasureField, Picker } from '../kit/index.ts';
import { useRoomView } from './roomView.ts';
import { type OnWhat, useNowHour, useTold } from './whatTold.ts';

/** A rug more: one of the house, or a sketch of one. */
export function AddRug({ onWhat }: OnWhat) {
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
  const { units } = useRoomView().settings;
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
      <MeasureField
        label="Area"
        measure="area"
        units={units}
        least={0.1}
        most={200}
        value={area}
        onChange={setArea}
      />
      <MeasureField
        label="Dry mass"
        measure="mass"
        units={units}
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
