import { readTable } from '../air/index.ts';
import { mouldIndexHukka1999 } from '../mould/index.ts';
import { airAt, type PreparedRoom, secondsPerHour } from './preparedRoom.ts';
import type { Unknowns } from './roomSystem.ts';
import type { RoomCourse } from './runRoom.ts';
import { balanceFace, newFace, saturatedConcentration } from './surfaceFlux.ts';

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
    const { airC } = airAt(room.air, hour * secondsPerHour);
    const atRest = readTable(rug.desorption.regain, vapour / saturatedConcentration(airC));
    const critical = unknowns.criticalRegain[at] ?? 0;
    const dryness = Math.min(1, Math.max(0, (critical - regain) / Math.max(1e-3, critical - atRest)));
    face.activity = readTable(rug.desorption.activity, regain);
    face.resistance =
      (1 / room.film.vapour + (unknowns.resistance[at] ?? 0) * dryness) / (unknowns.g[at] ?? 1);
    balanceFace(face, airC, vapour, room.film.heat);
    return { hour, regain, surfaceRh: face.activity, surfaceC: face.temperatureC };
  });
  const mould = mouldIndexHukka1999(
    states.map(({ hour, surfaceC, surfaceRh }) => ({ hour, temperatureC: surfaceC, rh: surfaceRh })),
  );
  return states.map((state, k) => ({ ...state, mouldIndex: mould[k] ?? Number.NaN }));
}
