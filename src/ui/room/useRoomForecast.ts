import { useMemo } from 'react';
import type { RoomAnswer } from '../../contract/index.ts';
import { type DryingRug, dryingRugOf, roomScenario, standingOf } from '../../dossier/index.ts';
import { useNow } from '../kit/index.ts';
import { useRoomWorker } from './useRoomWorker.ts';

/** How far a room's forecast looks ahead [h]. */
const aheadHours = 72;
const fiveMinutes = 5 * 60_000;

/** A room's forecast from the record as it stands: made anew every five minutes, and when something is recorded. */
export function useRoomForecast(told: RoomAnswer | null) {
  const clock = useNow(20_000);
  const minute = Math.floor(clock / fiveMinutes) * fiveMinutes;
  const now = new Date(Math.max(minute, Date.parse(told?.now ?? '1970-01-01'))).toISOString();
  const rugs = useMemo<readonly DryingRug[]>(
    () =>
      (told?.hanging ?? []).flatMap(({ rug, entries }) => {
        const drying = dryingRugOf(standingOf(entries), rug);
        return drying?.ok === true ? [drying.value] : [];
      }),
    [told],
  );
  const built = useMemo(
    () => (told === null ? null : roomScenario(told.standing, rugs, now, aheadHours)),
    [told, rugs, now],
  );
  const scenario = built?.ok === true && rugs.length > 0 ? built.value.scenario : null;
  const learning = built?.ok === true ? built.value.learning : null;
  return { now, rugs, built, ...useRoomWorker(scenario, learning) };
}
