import { useMemo } from 'react';
import type { RoomAnswer } from '../../contract/index.ts';
import {
  forecastInstant,
  type Hanging,
  hangingOf,
  roomAheadHours,
  roomScenario,
  standingOf,
} from '../../dossier/index.ts';
import { useNow } from '../kit/index.ts';
import { useRoomWorker } from './useRoomWorker.ts';

const fiveMinutes = 5 * 60_000;

/** A room's forecast from the record as it stands: made anew every five minutes, and when something is recorded. */
export function useRoomForecast(told: RoomAnswer | null) {
  const clock = useNow(20_000);
  const minute = Math.floor(clock / fiveMinutes) * fiveMinutes;
  const now = new Date(Math.max(minute, Date.parse(told?.now ?? '1970-01-01'))).toISOString();
  const { rugs, unmeasured } = useMemo<Hanging>(
    () =>
      hangingOf((told?.hanging ?? []).map(({ rug, entries }) => ({ rug, standing: standingOf(entries) }))),
    [told],
  );
  const built = useMemo(
    () => (told === null ? null : roomScenario(told.standing, rugs, forecastInstant(now), roomAheadHours)),
    [told, rugs, now],
  );
  const scenario = built?.ok === true && rugs.length > 0 ? built.value.scenario : null;
  const learning = built?.ok === true ? built.value.learning : null;
  return { now, rugs, unmeasured, built, ...useRoomWorker(scenario, learning) };
}
