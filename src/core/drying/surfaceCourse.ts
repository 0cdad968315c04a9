import { mouldIndexHukka1999, type SurfaceState } from '../mould/index.ts';
import { secondsPerHour } from './givenAir.ts';
import { conditionAt, type PreparedRoom } from './preparedRoom.ts';
import { setFace } from './rugFace.ts';
import type { RoomCourse } from './runRoom.ts';
import { newFace, saturatedConcentration } from './surfaceFlux.ts';
import type { Unknowns } from './unknowns.ts';

/** A rug at an hour of the scenario's clock. */
export interface RugHour {
  readonly hour: number;
  readonly regain: number;
  /** Humidity the fibre itself keeps at its surface [fraction]. */
  readonly surfaceRh: number;
  readonly surfaceC: number;
  readonly mouldIndex: number;
}

/** What a mould index counts: the states from the first wetting on, which may lie before the hours looked at. */
function wetStates(
  states: readonly Omit<RugHour, 'mouldIndex'>[],
  wettedHour: number,
  airC: number,
): readonly SurfaceState[] {
  const since = states.flatMap(({ hour, surfaceC, surfaceRh }) =>
    hour > wettedHour ? [{ hour, temperatureC: surfaceC, rh: surfaceRh }] : [],
  );
  const wetted = states.findLast(({ hour }) => hour <= wettedHour) ?? states[0];
  return wetted === undefined
    ? since
    : [{ hour: wettedHour, temperatureC: airC, rh: wetted.surfaceRh }, ...since];
}

/**
 * Regain, surface state and mould index of one rug along a run. Until it hangs, a wetted rug is as warm as
 * the room: nothing is known of where it lies, and a warmer face grows mould sooner.
 *
 * @param room - prepared
 * @param at - place of the rug in the room
 * @param unknowns - those of the run
 * @param course - the run
 * @param hours - at which the run was sampled
 * @source none: surface balance and mould index of the run's states
 */
export function surfaceCourse(
  room: PreparedRoom,
  at: number,
  unknowns: Unknowns,
  course: RoomCourse,
  hours: readonly number[],
): readonly RugHour[] {
  const rug = room.rugs[at];
  if (rug === undefined) return [];
  const face = newFace();
  const states = hours.map((hour, k) => {
    const regain = course.regains[at]?.[k] ?? Number.NaN;
    const vapour = course.vapours[k] ?? Number.NaN;
    const airC = course.airCs[k] ?? Number.NaN;
    const rh = Math.min(1, vapour / saturatedConcentration(airC));
    const condition = conditionAt(room, hour * secondsPerHour);
    if (condition !== undefined)
      setFace(face, rug, at, unknowns, regain, { airC, vapour, rh }, condition.film);
    const hangs = hour * secondsPerHour >= rug.hungAt;
    return { hour, regain, surfaceRh: face.activity, surfaceC: hangs ? face.temperatureC : airC };
  });
  const wettedHour = rug.wettedAt / secondsPerHour;
  const wettedIn = Math.max(
    0,
    hours.findLastIndex((hour) => hour <= wettedHour),
  );
  const wet = wetStates(states, wettedHour, course.airCs[wettedIn] ?? Number.NaN);
  const mould = mouldIndexHukka1999(wet);
  const before = states.length - (wet.length - 1);
  return states.map((state, k) => ({
    ...state,
    mouldIndex: k < before ? 0 : (mould[k - before + 1] ?? Number.NaN),
  }));
}
