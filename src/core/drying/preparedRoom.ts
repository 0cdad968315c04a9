import settings from '../../../data/drying/settings.json' with { type: 'json' };
import {
  type Desorption,
  desorptionOf,
  readTable,
  saturationPressure,
  vapourConcentration,
} from '../air/index.ts';
import { machineOf } from './dehumidifier.ts';
import type { AirRow, DryRug, DryScenario } from './scenario.ts';
import { type AirFilm, airFilm, saturatedConcentration } from './surfaceFlux.ts';

export const secondsPerHour = 3600;

/** A rug as the model sees it; times in seconds of the scenario. */
export interface PreparedRug {
  readonly id: string;
  /** Area times faces [m²]. */
  readonly exposedM2: number;
  readonly dryMassKg: number;
  readonly desorption: Desorption;
  readonly startRegain: number;
  readonly startSpread: number;
  readonly targetRegain: number;
  readonly criticalRegain: number;
  readonly resistance: number;
  readonly hungAt: number;
  readonly takenAt: number;
  readonly wettedAt: number;
}

/** A drying room with everything that does not change from draw to draw. */
export interface PreparedRoom {
  readonly seconds: number;
  readonly volumeM3: number;
  readonly film: AirFilm;
  readonly g: number;
  /** Rows of the air by time; one row when it is held. */
  readonly air: readonly AirRow[];
  readonly airIsMeasured: boolean;
  readonly startVapour: number;
  readonly outsidePressurePa: number;
  readonly airChangesPerS: number;
  readonly machines: readonly ReturnType<typeof machineOf>[];
  readonly rugs: readonly PreparedRug[];
  /** Times at which something jumps [s]. */
  readonly jumps: readonly number[];
}

const pressureOf = (celsius: number): number => {
  const found = saturationPressure(celsius);
  return found.ok ? found.value : Number.NaN;
};

const startOf = ({ startRegain, extraction }: DryRug): { likely: number; spread: number } => {
  const { rows } = settings.startRegain;
  if (startRegain !== undefined) return { likely: startRegain, spread: settings.belief.startRegainSpread };
  const row = rows.find((one) => one.extraction === (extraction ?? 'saturated'));
  return { likely: row?.likely ?? Number.NaN, spread: row?.spread ?? Number.NaN };
};

function rugOf(rug: DryRug, desorption: Desorption): PreparedRug {
  const { facesByPosture, worstFaces, targetRh, criticalRegain, resistanceSPerM } = settings;
  const faces = rug.faces ?? (rug.posture === undefined ? worstFaces : facesByPosture[rug.posture]);
  const start = startOf(rug);
  const hungAt = (rug.hungAtHour ?? 0) * secondsPerHour;
  return {
    id: rug.id,
    exposedM2: rug.areaM2 * faces,
    dryMassKg: rug.dryMassKg,
    desorption,
    startRegain: start.likely,
    startSpread: start.spread,
    targetRegain: rug.targetRegain ?? readTable(desorption.regain, targetRh),
    criticalRegain: rug.criticalRegain ?? criticalRegain,
    resistance: rug.resistance ?? resistanceSPerM,
    hungAt,
    takenAt: (rug.takenAtHour ?? Number.POSITIVE_INFINITY) * secondsPerHour,
    wettedAt: rug.wettedAtHour === undefined ? hungAt : rug.wettedAtHour * secondsPerHour,
  };
}

/**
 * A checked scenario made ready for many runs.
 *
 * @param scenario - as `scenarioProblem` found nothing wrong with it
 * @returns the room, its defaults filled in
 * @source workshop-setting (data/drying/settings.json); c_out = outside vapour pressure at the room's temperature
 */
export function prepareRoom(scenario: DryScenario): PreparedRoom {
  const { room, outside } = scenario;
  const seconds = scenario.hours * secondsPerHour;
  const blends = new Map<string, Desorption>();
  const desorptionFor = (rug: DryRug): Desorption => {
    const key = JSON.stringify(rug.fibres);
    const found = blends.get(key) ?? desorptionOf(rug.fibres);
    blends.set(key, found);
    return found;
  };
  const rugs = scenario.rugs.map((rug) => rugOf(rug, desorptionFor(rug)));
  const air = room.air ?? [{ hour: 0, airC: room.airC ?? Number.NaN }];
  const [first] = air;
  const airIsMeasured = air.every(({ rh }) => rh !== undefined);
  const startRh = airIsMeasured ? first?.rh : room.startRh;
  const jumps = [
    ...rugs.flatMap(({ hungAt, takenAt }) => [hungAt, takenAt]),
    ...(air.length > 1 ? air.map(({ hour }) => hour * secondsPerHour) : []),
  ];
  return {
    seconds,
    volumeM3: room.volumeM3,
    film: airFilm(room.airSpeed),
    g: room.g ?? 1,
    air,
    airIsMeasured,
    startVapour: (startRh ?? Number.NaN) * saturatedConcentration(first?.airC ?? Number.NaN),
    outsidePressurePa: outside.rh * pressureOf(outside.airC),
    airChangesPerS: room.airChangesPerHour / secondsPerHour,
    machines: scenario.dehumidifiers.map(({ ratedC, ratedRh, ...machine }) =>
      machineOf({ ...machine, ratedC: ratedC ?? Number.NaN, ratedRh: ratedRh ?? Number.NaN }),
    ),
    rugs,
    jumps: [...new Set([0, seconds, ...jumps.filter((time) => time > 0 && time < seconds)])].sort(
      (a, b) => a - b,
    ),
  };
}

/** Temperature and, where measured, vapour of the room's air at a time. */
export interface GivenAir {
  readonly airC: number;
  readonly vapour: number | null;
  /** Change of the measured vapour [kg/m³s]. */
  readonly vapourPerS: number;
}

const rowVapour = ({ airC, rh }: AirRow): number | null =>
  rh === undefined ? null : rh * saturatedConcentration(airC);

/**
 * The given air at a time, straight between the rows and held outside them.
 *
 * @param rows - in rising time
 * @param time - [s]
 * @source none: linear interpolation
 */
export function airAt(rows: readonly AirRow[], time: number): GivenAir {
  const hour = time / secondsPerHour;
  const after = rows.findIndex((row) => row.hour > hour);
  const before = rows[after === -1 ? rows.length - 1 : Math.max(0, after - 1)];
  const next = after <= 0 ? undefined : rows[after];
  if (before === undefined) return { airC: Number.NaN, vapour: null, vapourPerS: 0 };
  const [from, to] = [rowVapour(before), next === undefined ? null : rowVapour(next)];
  if (next === undefined) return { airC: before.airC, vapour: from, vapourPerS: 0 };
  const share = (hour - before.hour) / (next.hour - before.hour);
  const rise = from === null || to === null ? 0 : to - from;
  return {
    airC: before.airC + share * (next.airC - before.airC),
    vapour: from === null ? null : from + share * rise,
    vapourPerS: rise / ((next.hour - before.hour) * secondsPerHour),
  };
}

/** Vapour of the outside air once it is as warm as the room [kg/m³]. */
export const outsideVapour = ({ outsidePressurePa }: PreparedRoom, airC: number): number =>
  vapourConcentration(outsidePressurePa, airC);
