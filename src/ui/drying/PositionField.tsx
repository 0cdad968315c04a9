import { useState } from 'react';
import type { RoomAnswer } from '../../contract/index.ts';
import {
  type DryingRug,
  dryingRugOf,
  plannedDryingRug,
  type poleEnds,
  type postures,
  type RoomPlace,
  roomLayout,
  type SpotPosition,
  standingOf,
} from '../../dossier/index.ts';
import { placeWarningWords } from '../../text/roomAlarmWords.ts';
import { measureWords } from '../../units/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { Choice, MeasureField } from '../kit/index.ts';
import { PlaceDrawing } from '../room/PlaceDrawing.tsx';
import { wetKgNow } from '../room/wetKgNow.ts';

type End = (typeof poleEnds)[number];
type SetUp = NonNullable<RoomAnswer['standing']['setUp']>;

interface PositionProps {
  readonly told: RoomAnswer;
  readonly setUp: SetUp;
  readonly spot: string;
  readonly posture: (typeof postures)[number] | null;
  readonly position: SpotPosition | null;
  readonly onChange: (position: SpotPosition | null) => void;
}

/** Where along a pole or mesh it comes to hang or lie, drawn among what is there before anybody lifts it. */
export function PositionField(props: PositionProps) {
  const { setUp, spot, position, onChange } = props;
  const { settings } = useDossier();
  const [from, setFrom] = useState<End>(position?.from ?? 'left');
  const lengthMm = [...setUp.poles, ...setUp.meshes].find((one) => one.spot === spot)?.lengthMm ?? 0;
  const place = usePlaceWith(props);
  return (
    <>
      {place === null ? null : <Drawn place={place} />}
      <Choice
        label="Measured from its"
        options={[
          { value: 'left', words: 'left end' },
          { value: 'right', words: 'right end' },
        ]}
        value={from}
        onChange={(end) => {
          setFrom(end);
          if (position !== null) onChange({ ...position, from: end });
        }}
        hint="left and right as drawn"
      />
      <MeasureField
        label="From there to the rug’s edge"
        measure="gap"
        units={settings.units}
        least={0}
        most={lengthMm}
        value={position?.mm ?? null}
        onChange={(mm) => onChange(mm === null ? null : { from, mm })}
        hint="empty: not measured; it is then drawn where there is room"
      />
    </>
  );
}

/** The pole or mesh with this rug in the place that is typed. */
function usePlaceWith({ told, setUp, spot, posture, position }: PositionProps): RoomPlace | null {
  const { rug, standing, now } = useDossier();
  const others = told.hanging.flatMap((one): readonly DryingRug[] => {
    const drying = one.rug === rug ? null : dryingRugOf(standingOf(one.entries), one.rug);
    return drying?.ok === true ? [drying.value] : [];
  });
  const planned = plannedDryingRug(standing, rug, null, now, posture !== 'hung');
  if (!planned.ok) return null;
  const here: DryingRug = { ...planned.value, room: told.room, spot, position };
  const { places } = roomLayout(setUp, [...others, here], (one) => wetKgNow(one, null, now, now));
  return places.find((one) => one.spot === spot) ?? null;
}

function Drawn({ place }: { readonly place: RoomPlace }) {
  const { rug, settings } = useDossier();
  const { units } = settings;
  const own = place.rugs.find((one) => one.rug.rug === rug);
  return (
    <div className="roomPlace">
      <PlaceDrawing place={place} units={units} longestMm={Math.max(1000, place.lengthMm)} candidate={rug} />
      {own?.isTeamLift === true ? (
        <p className="placeWarning">
          <span aria-hidden="true">▲ </span>
          {measureWords('load', own.wetKg, units)} wet: lift it with two or more, floor dry underfoot.
        </p>
      ) : null}
      {place.warnings.map((warning) => (
        <p key={JSON.stringify(warning)} className="placeWarning">
          <span aria-hidden="true">{warning.code === 'pole-strength-unknown' ? '◆' : '▲'} </span>
          {placeWarningWords(warning, units)}
        </p>
      ))}
    </div>
  );
}
