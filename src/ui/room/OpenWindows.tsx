import { useState } from 'react';
import { windowsOpen } from '../../dossier/index.ts';
import type { ShownProblem } from '../call/index.ts';
import { Button, ProblemNotice } from '../kit/index.ts';
import { useRoomView } from './roomView.ts';
import { WallField } from './WallField.tsx';
import { type OnWhat, useNowHour, useTold } from './whatTold.ts';

/** A night's opening [h]. */
const nightHours = 8;

/** The windows of this room open for a night; where its walls are not on record, they can be said here. */
export function OpenWindows({ onWhat }: OnWhat) {
  const { setUp, standing } = useRoomView();
  const hour = useNowHour();
  const [wallsWPerK, setWalls] = useState<number | null>(null);
  const opening = {
    ...{ fromHour: hour, untilHour: hour + nightHours },
    airChangesPerHour: setUp.openAirChangesPerHour,
  };
  useTold({ kind: 'open', opening, ...(wallsWPerK === null ? {} : { wallsWPerK }) }, onWhat);
  return (
    <div className="form">
      <p className="why">
        For {nightHours} h from now, {setUp.openAirChangesPerHour} air changes an hour
        {windowsOpen(standing) ? '; they stand open already' : ''}. Local rules on an open house at night come
        first.
      </p>
      {setUp.wallsWPerK === undefined ? <WallsHere value={wallsWPerK} onChange={setWalls} /> : null}
    </div>
  );
}

/** What the walls let through, tried at once and kept for the room by an owner. */
function WallsHere(props: {
  readonly value: number | null;
  readonly onChange: (wallsWPerK: number | null) => void;
}) {
  const { value, onChange } = props;
  const { setUp, settings, isOwner, record, isBusy } = useRoomView();
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const keep = async (wallsWPerK: number) => {
    const { entry: _entry, when: _when, by: _by, happenedAt: _then, ...room } = setUp;
    const answer = await record([{ ...room, wallsWPerK }]);
    setProblem(answer.ok ? null : answer.problem);
  };
  return (
    <>
      <WallField volumeM3={setUp.volumeM3} units={settings.units} value={value} onChange={onChange} />
      {isOwner && value !== null ? (
        <Button tone="ghost" isDisabled={isBusy} onPress={() => keep(value)}>
          Record it for the room
        </Button>
      ) : null}
      <ProblemNotice problem={problem} />
    </>
  );
}
