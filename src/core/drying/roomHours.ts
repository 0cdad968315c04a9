import settings from '../../../data/drying/settings.json' with { type: 'json' };
import { vapourPressure } from '../air/index.ts';
import { refrigerantShare } from './dehumidifier.ts';
import { airAt, secondsPerHour } from './givenAir.ts';
import {
  conditionAt,
  exposedAt,
  outsideAt,
  type PreparedRoom,
  pressureOf,
  warmedVapour,
} from './preparedRoom.ts';
import type { RoomCondition } from './roomCondition.ts';
import { setFace } from './rugFace.ts';
import type { RoomCourse } from './runRoom.ts';
import { newFace, saturatedConcentration } from './surfaceFlux.ts';
import type { Unknowns } from './unknowns.ts';

/** What holds drying up at an hour: more of it would help most. */
export const bindings = ['none', 'extraction', 'warmth', 'air-along-the-face', 'pile'] as const;
export type Binding = (typeof bindings)[number];

/** A room at an hour of the scenario's clock; a kilogram of water is a litre. */
export interface RoomHour {
  readonly hour: number;
  readonly airC: number;
  readonly rh: number;
  readonly outsideC: number;
  readonly outsideRh: number;
  /** As read, not as modelled. */
  readonly isMeasured: boolean;
  /** What machines and outside air could take out in air of the room's temperature at the humidity it should not pass. */
  readonly offeredLPerH: number;
  /** What the rugs would give off in that air. */
  readonly demandedLPerH: number;
  /** What they do give off. */
  readonly givenLPerH: number;
  /** Negative where the outside air brings water in. */
  readonly exchangeLPerH: number;
  readonly machinesLPerH: number;
  readonly binding: Binding;
}

interface Air {
  readonly airC: number;
  readonly vapour: number;
  readonly rh: number;
}

function removed(room: PreparedRoom, condition: RoomCondition, time: number, { airC, vapour, rh }: Air) {
  const out = warmedVapour(outsideAt(room, time), airC);
  const exchange = condition.airChangesPerS * room.volumeM3 * (vapour - out);
  const machines = room.machines.reduce((sum, { perPascal, refrigerant }, k) => {
    if (condition.runs[k] !== true) return sum;
    return sum + perPascal * vapourPressure(vapour, airC) * (refrigerant ? refrigerantShare(airC, rh) : 1);
  }, 0);
  return { exchange: exchange * secondsPerHour, machines: machines * secondsPerHour };
}

/** Water the rugs give off in an air [kg/h], and how much of what stops that of the wet ones lies in their pile. */
function given(
  room: PreparedRoom,
  unknowns: Unknowns,
  regains: readonly number[],
  condition: RoomCondition,
  time: number,
  air: Air,
) {
  const face = newFace();
  let [water, wet, inPile] = [0, 0, 0];
  for (const [i, rug] of room.rugs.entries()) {
    const m2 = exposedAt(rug, time);
    const regain = regains[i] ?? 0;
    if (m2 === 0) continue;
    setFace(face, rug, i, unknowns, regain, air, condition.film);
    water += face.flux * m2;
    if (regain <= rug.targetRegain) continue;
    const perFilm = 1 / condition.film.vapour / (unknowns.g[i] ?? 1);
    wet += m2;
    inPile += m2 * (1 - perFilm / face.resistance);
  }
  return { litresPerH: water * secondsPerHour, isWet: wet > 0, pileShare: wet > 0 ? inPile / wet : 0 };
}

/**
 * A room hour by hour: its air, the litres an hour that are offered and demanded, and what holds drying up.
 *
 * @param room - prepared
 * @param unknowns - those of the run
 * @param course - the run
 * @param hours - at which the run was sampled
 * @source none: parts of the model; humidity and temperature a drying room should keep are workshop settings (data/drying/settings.json)
 */
export function roomHours(
  room: PreparedRoom,
  unknowns: Unknowns,
  course: RoomCourse,
  hours: readonly number[],
): readonly RoomHour[] {
  const { mostRh, leastC } = settings.goodAir;
  return hours.flatMap((hour, k): readonly RoomHour[] => {
    const time = hour * secondsPerHour;
    const condition = conditionAt(room, time);
    if (condition === undefined) return [];
    const [airC, vapour] = [course.airCs[k] ?? Number.NaN, course.vapours[k] ?? Number.NaN];
    const atSaturation = saturatedConcentration(airC);
    const air = { airC, vapour, rh: Math.min(1, vapour / atSaturation) };
    const good = { airC, vapour: mostRh * atSaturation, rh: mostRh };
    const regains = course.regains.map((of) => of[k] ?? 0);
    const now = given(room, unknowns, regains, condition, time, air);
    const demandedLPerH = Math.max(0, given(room, unknowns, regains, condition, time, good).litresPerH);
    const could = removed(room, condition, time, good);
    const offeredLPerH = Math.max(0, could.exchange + could.machines);
    const isMeasured = airAt(room.air, time).vapour !== null;
    const tooDamp = air.rh > mostRh && (isMeasured || demandedLPerH > offeredLPerH);
    const dryOnes: Binding = now.pileShare > 0.5 ? 'pile' : airC < leastC ? 'warmth' : 'air-along-the-face';
    const outside = outsideAt(room, time);
    const does = removed(room, condition, time, air);
    return [
      {
        ...{ hour, airC, rh: air.rh, isMeasured, offeredLPerH, demandedLPerH },
        ...{ givenLPerH: now.litresPerH, exchangeLPerH: does.exchange, machinesLPerH: does.machines },
        ...{ outsideC: outside.airC, outsideRh: outside.pressurePa / pressureOf(outside.airC) },
        binding: now.isWet ? (tooDamp ? 'extraction' : dryOnes) : 'none',
      },
    ];
  });
}
