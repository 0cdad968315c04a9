import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { expectedDrying } from '../../../dossier/index.ts';
import { call, type ShownProblem, useRooms } from '../../call/index.ts';
import {
  Busy,
  Button,
  Notice,
  NumberField,
  PassageField,
  ProblemNotice,
  Sheet,
  When,
} from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { counted, figure } from '../figures.ts';
import { useField, useForm } from '../useForm.ts';

/** How long it will be wet: by the drying room's forecast with what hangs there already, else by hand. */
export function DryingHoursSheet({ onClose }: { readonly onClose: () => void }) {
  const { rooms } = useRooms();
  const { visit } = useDossier();
  return (
    <Sheet title="Hours until dry" isOpen onClose={onClose}>
      {rooms.map(({ room, body }) => (
        <RoomForecast key={room} room={room} name={body.name} />
      ))}
      {rooms.length === 0 ? (
        <p className="why">No drying room is set up, so nothing can be forecast. Set one up under Drying.</p>
      ) : null}
      <Made />
      {rooms.length === 0 && (visit?.dryingForecast ?? null) === null ? (
        <ByHand onClose={onClose} />
      ) : (
        <details>
          <summary>Enter the hours by hand instead</summary>
          <ByHand onClose={onClose} />
        </details>
      )}
    </Sheet>
  );
}

function RoomForecast({ room, name }: { readonly room: string; readonly name: string }) {
  const { rug } = useDossier();
  const cache = useQueryClient();
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const make = async () => {
    setBusy(true);
    const path = `/api/rugs/${encodeURIComponent(rug)}/drying-forecast`;
    const answer = await call(path, { method: 'POST', body: { room } });
    await cache.invalidateQueries({ queryKey: ['rug', rug] });
    setBusy(false);
    setProblem(answer.ok ? null : answer.problem);
  };
  return (
    <>
      <Button wide isDisabled={isBusy} onPress={make}>
        Forecast it in “{name}”
      </Button>
      {isBusy ? <Busy words="Reckoning with what hangs there" /> : null}
      <ProblemNotice problem={problem} />
    </>
  );
}

/** The forecast that is on record, and what it means for the wash. */
function Made() {
  const { visit, nameOf } = useDossier();
  const made = visit?.dryingForecast ?? null;
  if (visit === null || made === null) return null;
  const { hours, medianHours, lookedHours, among, when, by } = made;
  const inForce = expectedDrying(visit)?.from !== 'estimated by hand';
  const tooLong = (hours ?? lookedHours) > 48;
  return (
    <Notice
      tone={!inForce ? 'plain' : tooLong ? 'stop' : 'ok'}
      title={
        hours === null
          ? `Not dry within ${figure(lookedHours)} h of first wetting.`
          : `Nine of ten such rugs are dry ${figure(hours)} h after first wetting.`
      }
    >
      <p>
        {medianHours === null ? '' : `Most likely after ${figure(medianHours)} h. `}
        Beside {counted(among.length, 'rug')} that hung there. <When at={when} />, {nameOf(by)}.
        {inForce ? '' : ' Hours by hand stand in its place.'}
      </p>
      {tooLong && inForce ? (
        <p>
          Mould may grow in a rug that stays wet this long: the wash is blocked (R38) unless the owner
          overrides it. See under Drying what would change it: fewer rugs, another machine, turning.
        </p>
      ) : null}
    </Notice>
  );
}

function ByHand({ onClose }: { readonly onClose: () => void }) {
  const { visit, isOwner } = useDossier();
  const { form, act, isBusy, problem } = useForm('drying hours', onClose);
  const [hours, setHours] = useField<number | null>(form, 'hours', visit?.dryingExpected?.hours ?? null);
  const [why, setWhy] = useField(form, 'why', '');
  const againstForecast = (visit?.dryingForecast ?? null) !== null;
  if (againstForecast && !isOwner)
    return <p className="why">Only an owner puts hours by hand in place of a forecast.</p>;
  const reason = why.trim();
  return (
    <div className="form">
      <p>
        From first wetting until dry through, in your room as it is loaded now. An ordinary extracted rug
        takes 12 to 36 h (common practice, no published source).
      </p>
      <NumberField
        label="Hours"
        unit="h"
        least={1}
        most={1000}
        value={hours}
        onChange={setHours}
        isRequired
      />
      {hours !== null && hours > 48 && (
        <Notice tone="stop" title="Longer than 48 h.">
          <p>
            Mould may grow in a rug that stays wet this long: the wash is blocked (R38) unless the owner
            overrides it.
          </p>
        </Notice>
      )}
      <PassageField
        label={againstForecast ? 'Why not the forecast' : 'Why'}
        value={why}
        onChange={setWhy}
        isRequired={againstForecast}
        rows={2}
      />
      <p className="why">It is printed “estimated by hand”.</p>
      {problem && <ProblemNotice problem={problem} />}
      <Button
        wide
        isDisabled={hours === null || isBusy || (againstForecast && reason === '')}
        onPress={() =>
          hours !== null && act({ type: 'DryingExpected', hours, ...(reason === '' ? {} : { why: reason }) })
        }
      >
        Record
      </Button>
    </div>
  );
}
