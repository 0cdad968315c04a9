import heat from '../../../data/drying/heat.json' with { type: 'json' };
import settings from '../../../data/drying/settings.json' with { type: 'json' };
import {
  type Desorption,
  desorptionOf,
  readTable,
  saturationPressure,
  vapourConcentration,
} from '../air/index.ts';
import type { Fibre } from '../wash/index.ts';
import { machineOf } from './dehumidifier.ts';
import { fibresReckoned, unknownFibreAs } from './fibresReckoned.ts';
import { type AirCourse, airAt, airCourseOf, bendsOf, secondsPerHour } from './givenAir.ts';
import { conditionsOf, type RoomCondition } from './roomCondition.ts';
import type { DryRug, DryScenario } from './scenario.ts';
import { saturatedConcentration } from './surfaceFlux.ts';

/** Faces times area from a time on. */
interface Exposure {
  readonly from: number;
  readonly m2: number;
}

/** A rug as the model sees it; times in seconds of the scenario. */
export interface PreparedRug {
  readonly id: string;
  /** In rising time; the first holds from hanging. */
  readonly exposures: readonly Exposure[];
  readonly dryMassKg: number;
  readonly desorption: Desorption;
  readonly unknownFibreAs: Fibre | null;
  readonly startRegain: number;
  readonly targetRegain: number;
  readonly criticalRegain: number;
  readonly resistance: number;
  readonly g: number;
  /** Of the logarithms of starting water, resistance, critical regain and dry mass. */
  readonly spreads: Readonly<Record<'start' | 'resistance' | 'critical' | 'dryMass', number>>;
  readonly hungAt: number;
  readonly takenAt: number;
  readonly wettedAt: number;
}

/** How a room keeps and loses its heat. */
export interface RoomHeat {
  readonly wallsWPerK: number;
  readonly wallsSpread: number;
  readonly heldJPerK: number;
}

/** Outside air at an hour. */
export interface OutsideRow {
  readonly hour: number;
  readonly airC: number;
  readonly pressurePa: number;
}

/** A drying room with everything that does not change from draw to draw. */
export interface PreparedRoom {
  readonly seconds: number;
  readonly volumeM3: number;
  readonly g: number;
  readonly gSpread: number;
  readonly air: AirCourse;
  readonly conditions: readonly RoomCondition[];
  readonly heat: RoomHeat;
  readonly startC: number;
  readonly startVapour: number;
  /** By time; one row where the outside air is held. */
  readonly outside: readonly OutsideRow[];
  readonly machines: readonly ReturnType<typeof machineOf>[];
  readonly rugs: readonly PreparedRug[];
  /** Times at which something jumps [s]. */
  readonly jumps: readonly number[];
}

/** Vapour pressure of saturated air [Pa], over ice where it freezes; not a number where the handbook has none. */
export const pressureOf = (celsius: number): number => {
  const found = saturationPressure(celsius);
  return found.ok ? found.value : Number.NaN;
};

const startOf = ({ startRegain, extraction }: DryRug): { likely: number; spread: number } => {
  const { rows } = settings.startRegain;
  if (startRegain !== undefined) return { likely: startRegain, spread: settings.belief.startRegainSpread };
  const row = rows.find((one) => one.extraction === (extraction ?? 'saturated'));
  return { likely: row?.likely ?? Number.NaN, spread: row?.spread ?? Number.NaN };
};

const facesOf = ({ faces, posture }: Pick<DryRug, 'faces' | 'posture'>): number =>
  faces ?? (posture === undefined ? settings.worstFaces : settings.facesByPosture[posture]);

function rugOf(rug: DryRug, desorption: Desorption): PreparedRug {
  const { targetRh, criticalRegain, resistanceSPerM, belief } = settings;
  const start = startOf(rug);
  const hungAt = (rug.hungAtHour ?? 0) * secondsPerHour;
  const turnings = (rug.turnings ?? []).map((turning) => ({
    from: turning.hour * secondsPerHour,
    m2: rug.areaM2 * facesOf(turning),
  }));
  return {
    id: rug.id,
    exposures: [{ from: hungAt, m2: rug.areaM2 * facesOf(rug) }, ...turnings],
    dryMassKg: rug.dryMassKg,
    desorption,
    unknownFibreAs: unknownFibreAs(rug),
    startRegain: start.likely,
    targetRegain: rug.targetRegain ?? readTable(desorption.regain, targetRh),
    criticalRegain: rug.criticalRegain ?? criticalRegain,
    resistance: rug.resistance ?? resistanceSPerM,
    g: rug.g ?? 1,
    spreads: {
      start: rug.spreads?.startRegain ?? start.spread,
      resistance: rug.spreads?.resistance ?? belief.resistanceSpread,
      critical: rug.spreads?.criticalRegain ?? belief.criticalRegainSpread,
      dryMass: rug.spreads?.dryMass ?? belief.dryMassSpread,
    },
    hungAt,
    takenAt: (rug.takenAtHour ?? Number.POSITIVE_INFINITY) * secondsPerHour,
    wettedAt: rug.wettedAtHour === undefined ? hungAt : rug.wettedAtHour * secondsPerHour,
  };
}

/** Area times faces of a rug at a time [m²]; 0 while it does not hang in the room. */
export const exposedAt = ({ exposures, hungAt, takenAt }: PreparedRug, time: number): number =>
  time < hungAt || time >= takenAt ? 0 : (exposures.findLast(({ from }) => from <= time)?.m2 ?? 0);

const heatOf = ({ room }: DryScenario): RoomHeat => ({
  wallsWPerK: room.wallsWPerK ?? heat.wallsWPerM3K * room.volumeM3,
  wallsSpread: room.wallsWPerK === undefined ? heat.wallsSpread : heat.statedWallsSpread,
  heldJPerK: heat.heldJPerM3K * room.volumeM3,
});

/**
 * A checked scenario made ready for many runs.
 *
 * @param scenario - as `scenarioProblem` found nothing wrong with it
 * @returns the room, its defaults filled in
 * @source workshop-setting (data/drying/settings.json, data/drying/heat.json)
 */
export function prepareRoom(scenario: DryScenario): PreparedRoom {
  const { room, outside } = scenario;
  const seconds = scenario.hours * secondsPerHour;
  const blends = new Map<string, Desorption>();
  const desorptionFor = (rug: DryRug): Desorption => {
    const fibres = fibresReckoned(rug);
    const key = JSON.stringify(fibres);
    const found = blends.get(key) ?? desorptionOf(fibres);
    blends.set(key, found);
    return found;
  };
  const rugs = scenario.rugs.map((rug) => rugOf(rug, desorptionFor(rug)));
  const air = airCourseOf(room);
  const given = airAt(air, 0);
  const startC = given.airC ?? room.startC ?? Number.NaN;
  const conditions = conditionsOf(scenario);
  const rows = outside.series ?? [{ hour: 0, ...outside }];
  const jumps = [
    ...rugs.flatMap(({ exposures, takenAt }) => [...exposures.map(({ from }) => from), takenAt]),
    ...conditions.map(({ from }) => from),
    ...bendsOf(air),
    ...(rows.length > 1 ? rows.map(({ hour }) => hour * secondsPerHour) : []),
  ];
  return {
    seconds,
    volumeM3: room.volumeM3,
    g: room.g ?? 1,
    gSpread: room.gSpread ?? settings.belief.roomSpread,
    air,
    conditions,
    heat: heatOf(scenario),
    startC,
    startVapour: given.vapour ?? (room.startRh ?? Number.NaN) * saturatedConcentration(startC),
    outside: rows.map(({ hour, airC, rh }) => ({ hour, airC, pressurePa: rh * pressureOf(airC) })),
    machines: scenario.dehumidifiers.map(({ ratedC, ratedRh, ...machine }) =>
      machineOf({ ...machine, ratedC: ratedC ?? Number.NaN, ratedRh: ratedRh ?? Number.NaN }),
    ),
    rugs,
    jumps: [...new Set([0, seconds, ...jumps.filter((time) => time > 0 && time < seconds)])].sort(
      (a, b) => a - b,
    ),
  };
}

/** What is switched and opened at a time. */
export const conditionAt = ({ conditions }: PreparedRoom, time: number): RoomCondition | undefined =>
  conditions.findLast(({ from }) => from <= time) ?? conditions[0];

/** Outside air at a time, and how it changes [K/s, Pa/s]. */
export interface OutsideAir {
  readonly airC: number;
  readonly airCPerS: number;
  readonly pressurePa: number;
  readonly pressurePerS: number;
}

/** Outside air at a time: straight between its rows by temperature and vapour pressure, held outside them. */
export function outsideAt({ outside }: PreparedRoom, time: number): OutsideAir {
  const hour = time / secondsPerHour;
  const after = outside.findIndex((row) => row.hour > hour);
  const before = outside[after === -1 ? outside.length - 1 : Math.max(0, after - 1)];
  const next = after <= 0 ? undefined : outside[after];
  const { airC = Number.NaN, pressurePa = Number.NaN } = before ?? {};
  if (before === undefined || next === undefined) return { airC, airCPerS: 0, pressurePa, pressurePerS: 0 };
  const length = (next.hour - before.hour) * secondsPerHour;
  const past = time - before.hour * secondsPerHour;
  const airCPerS = (next.airC - airC) / length;
  const pressurePerS = (next.pressurePa - pressurePa) / length;
  return {
    ...{ airC: airC + past * airCPerS, airCPerS },
    ...{ pressurePa: pressurePa + past * pressurePerS, pressurePerS },
  };
}

/** Vapour of outside air once it is as warm as the room [kg/m³]. */
export const warmedVapour = ({ pressurePa }: { readonly pressurePa: number }, airC: number): number =>
  vapourConcentration(pressurePa, airC);
