import { mouldIndexHukka1999 } from '../mould/index.ts';
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

/**
 * Regain, surface state and mould index of one rug along a run.
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
    return { hour, regain, surfaceRh: face.activity, surfaceC: face.temperatureC };
  });
  const mould = mouldIndexHukka1999(
    states.map(({ hour, surfaceC, surfaceRh }) => ({ hour, temperatureC: surfaceC, rh: surfaceRh })),
  );
  return states.map((state, k) => ({ ...state, mouldIndex: mould[k] ?? Number.NaN }));
}
