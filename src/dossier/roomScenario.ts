import settings from '../../data/drying/room.json' with { type: 'json' };
import model from '../../data/drying/settings.json' with { type: 'json' };
import type { Estimate } from '../core/air/index.ts';
import {
  asLearnt,
  type DryReading,
  type DryRug,
  type DryScenario,
  type LearntDrying,
  learnDrying,
  leastMassKg,
  type Running,
} from '../core/drying/index.ts';
import { done, type Problem, type Result, refused } from '../units/index.ts';
import type { DryingRug } from './dryingRug.ts';
import type { AirAt, RoomStanding, Switched } from './roomStanding.ts';

/** Why no forecast of a room is possible from its record. */
export type RoomScenarioProblem =
  | Problem<'room-not-set-up', Readonly<Record<string, never>>>
  | Problem<'room-air-unknown', { readonly lastReadAt: string | null; readonly mostHours: number }>;

/** Why no rug can be wetted by a forecast of a room: the water of what hangs there already is unknown. */
export type NeighbourNotMeasured = Problem<'neighbour-not-measured', { readonly rugs: readonly string[] }>;

/** What had to be assumed where nobody measured; the screen says each with what to find out. */
export type RoomAssumption =
  | { readonly code: 'outside-not-read'; readonly rh: number }
  | { readonly code: 'mass-by-construction'; readonly rug: string }
  | { readonly code: 'extraction-unknown'; readonly rug: string }
  | { readonly code: 'fibres-unknown'; readonly rug: string }
  | {
      readonly code: 'mass-below-bone-dry';
      readonly rug: string;
      readonly when: string;
      readonly massKg: number;
    };

export interface RoomScenario {
  readonly scenario: DryScenario;
  /** The instant of the scenario's hour 0. */
  readonly zero: string;
  readonly assumptions: readonly RoomAssumption[];
  /** What the room's past rugs taught; the scenario is made with it. */
  readonly learning: LearntDrying;
}

/** How far the forecast of a room looks ahead [h]. */
export const roomAheadHours = settings.aheadHours;

/**
 * The instant by which a room is forecast at a time: the end of the five minutes it lies in. The page, Today
 * and the server then say the same of one record, also where a chance lies near a bound.
 *
 * @source none: rule of this project
 */
export function forecastInstant(now: string): string {
  const slot = settings.everyMinutes * 60_000;
  return new Date((Math.floor(Date.parse(now) / slot) + 1) * slot).toISOString();
}

const hoursFrom = (zero: string, instant: string): number =>
  (Date.parse(instant) - Date.parse(zero)) / 3_600_000;

/** Of readings of one kind at one moment the last holds: it is the one somebody wrote down again. */
function lastOfKind(readings: readonly DryReading[]): readonly DryReading[] {
  const kindOf = (reading: DryReading) => Object.keys(reading).join();
  return readings.filter(
    (one, i) => !readings.slice(i + 1).some((next) => next.hour === one.hour && kindOf(next) === kindOf(one)),
  );
}

/** Stretches of running by the switches; a machine nobody switched on never ran. */
function runningOf(switches: readonly Switched[], zero: string): readonly Running[] {
  const stretches: { fromHour: number; untilHour?: number }[] = [];
  for (const { when, on } of switches) {
    const hour = Math.max(0, hoursFrom(zero, when));
    const open = stretches.at(-1);
    const isRunning = open !== undefined && open.untilHour === undefined;
    if (on && !isRunning) stretches.push({ fromHour: hour });
    if (!on && isRunning) open.untilHour = hour;
  }
  return stretches.filter(({ fromHour, untilHour }) => untilHour === undefined || untilHour > fromHour);
}

interface Row {
  readonly hour: number;
  readonly airC: number;
  readonly rh: number;
}

/** Readings of temperature and humidity joined: a half that was not read at that moment is the one before it. */
function rowsOf(air: readonly AirAt[], zero: string, now: string): readonly Row[] {
  const rows: Row[] = [];
  let [airC, rh]: [number | undefined, number | undefined] = [undefined, undefined];
  for (const read of air) {
    airC = read.airC ?? airC;
    rh = read.rh ?? rh;
    if (airC === undefined || rh === undefined || read.when > now) continue;
    const hour = hoursFrom(zero, read.when);
    if (rows.at(-1)?.hour === hour) rows.pop();
    rows.push({ hour, airC, rh });
  }
  return rows;
}

/** Rows that tell of the hours from 0 on, without a silence longer than a logger may have. */
function seriesOf(rows: readonly Row[]): readonly Row[] {
  let from = 0;
  for (const [index, row] of rows.entries()) {
    const before = rows[index - 1];
    if (before !== undefined && row.hour - before.hour > settings.silenceHours) from = index;
  }
  const unbroken = rows.slice(from);
  const first = unbroken.findLastIndex(({ hour }) => hour <= 0);
  return unbroken.slice(Math.max(0, first)).map((row) => ({ ...row, hour: Math.max(0, row.hour) }));
}

/** Of the normal distribution: so many spreads hold 80 % to either side. */
const spreadsOf80 = 1.2816;

/**
 * How well an oven-dry mass is known: its bounds are taken to hold four of five rugs, and soil goes with the
 * water. A rug that nobody weighed is so as light or as heavy as its construction makes them, and weighings
 * while it dries narrow that.
 */
const massSpreadOf = ({ least, most }: Estimate): number =>
  Math.hypot(model.belief.dryMassSpread, Math.log(most / least) / (2 * spreadsOf80));

/**
 * A rug as the drying model is told of it.
 *
 * @param rug - as its dossier tells
 * @param zero - instant of the scenario's hour 0
 * @param assume - told of what had to be assumed
 * @source none: rule of this project
 */
export function rugInScenario(
  rug: DryingRug,
  zero: string,
  assume: (assumption: RoomAssumption) => void = () => {},
): DryRug {
  const { ovenDry, ovenDryFrom, extraction, fibres, postures, looks } = rug;
  const hungAtHour = Math.max(0, hoursFrom(zero, rug.hungAt));
  if (ovenDryFrom === 'mass band') assume({ code: 'mass-by-construction', rug: rug.rug });
  if (extraction === null) assume({ code: 'extraction-unknown', rug: rug.rug });
  if ('unknown' in fibres) assume({ code: 'fibres-unknown', rug: rug.rug });
  const spreads = { dryMass: massSpreadOf(ovenDry) };
  const leastKg =
    ovenDryFrom === 'weighed' ? ovenDry.likely : leastMassKg({ dryMassKg: ovenDry.likely, spreads });
  const readings: DryReading[] = [];
  for (const { when, massKg, pocketRh, meterAboveDry, touch } of looks) {
    const hour = Math.max(hungAtHour, hoursFrom(zero, when));
    if (hoursFrom(zero, when) < 0) continue;
    if (massKg !== undefined && massKg < leastKg) {
      assume({ code: 'mass-below-bone-dry', rug: rug.rug, when, massKg });
    } else if (massKg !== undefined) readings.push({ hour, massKg });
    if (pocketRh !== undefined) readings.push({ hour, pocketRh });
    // Below the dry reference is as dry as the reference: the model asks only whether it is near.
    if (meterAboveDry !== undefined) readings.push({ hour, meterAboveDry });
    if (touch !== undefined) readings.push({ hour, touch });
  }
  const [first, ...turned] = postures;
  return {
    id: rug.rug,
    areaM2: rug.areaM2,
    dryMassKg: ovenDry.likely,
    spreads,
    fibres,
    ...(rug.construction === null ? {} : { construction: rug.construction }),
    ...(extraction === null ? {} : { extraction }),
    ...(first === undefined ? {} : { posture: first.posture }),
    turnings: turned.map(({ when, posture }) => ({
      hour: Math.max(hungAtHour, hoursFrom(zero, when)),
      posture,
    })),
    hungAtHour,
    wettedAtHour: Math.min(hungAtHour, Math.max(-settings.mostWetHours, hoursFrom(zero, rug.wettedAt))),
    readings: lastOfKind(readings),
  };
}

/**
 * The drying scenario of a room as the record stands: air, machines and windows as they were and are, and
 * every rug with its readings; the forecast goes on from the last reading of the air.
 *
 * @param room - the room's standing
 * @param rugs - what hangs there, and what is about to
 * @param now - instant
 * @param aheadHours - how far to look [h from now]
 * @returns the scenario, the instant of its hour 0, and what had to be assumed
 * @refuses room-not-set-up, room-air-unknown - nobody read the room's air within a day
 * @source none: workshop settings of data/drying/room.json
 */
export function roomScenario(
  room: RoomStanding,
  rugs: readonly DryingRug[],
  now: string,
  aheadHours: number,
): Result<RoomScenario, RoomScenarioProblem> {
  const { setUp } = room;
  if (setUp === null) return refused('room-not-set-up', {});
  // A rug forgotten for weeks does not cost the others their forecast: its hours count from when they can be reckoned.
  const oldest = new Date(Date.parse(now) - (settings.mostHours - aheadHours) * 3_600_000).toISOString();
  const first = [now, ...rugs.map(({ hungAt }) => hungAt)].sort()[0] ?? now;
  const zero = [first, oldest].sort()[1] ?? first;
  const rows = rowsOf(room.room, zero, now);
  const last = rows.at(-1);
  const nowHour = hoursFrom(zero, now);
  if (last === undefined || nowHour - last.hour > settings.airKnownHours) {
    const lastReadAt = room.room.at(-1)?.when ?? null;
    return refused('room-air-unknown', { lastReadAt, mostHours: settings.airKnownHours });
  }
  const assumptions: RoomAssumption[] = [];
  const assume = (assumption: RoomAssumption) => void assumptions.push(assumption);
  const outsideRows = rowsOf(room.outside, zero, now);
  const outside = outsideRows.at(-1);
  const isOutsideKnown = outside !== undefined && nowHour - outside.hour <= settings.airKnownHours;
  if (!isOutsideKnown) assume({ code: 'outside-not-read', rh: settings.outsideUnknownRh });
  const series = seriesOf(rows);
  const start = series[0] ?? last;
  const running = (machine: string) => runningOf(room.switches[machine] ?? [], zero);
  const kw = (watts: number | undefined) => (watts === undefined ? {} : { kw: watts / 1000 });
  const machines = setUp.machines.flatMap((machine) => {
    const runs = running(machine.machine);
    return runs.length === 0 ? [] : [{ ...machine, runs }];
  });
  const learning = learnDrying(room.past.slice(-settings.learning.mostRuns));
  const scenario: DryScenario = {
    hours: nowHour + aheadHours,
    uncertainty: true,
    seed: 1,
    room: {
      volumeM3: setUp.volumeM3,
      // Walls nobody described: the room is taken to stay as warm as it was read last.
      ...(setUp.wallsWPerK === undefined
        ? { airC: last.airC }
        : { startC: start.airC, wallsWPerK: setUp.wallsWPerK }),
      startRh: start.rh,
      ...(series.length > 1 ? { measured: series } : {}),
      airSpeed: setUp.airSpeedMPerS,
      airChangesPerHour: setUp.airChangesPerHour,
      openings: runningOf(room.windows, zero).map((opening) => ({
        ...opening,
        airChangesPerHour: setUp.openAirChangesPerHour,
      })),
    },
    outside: isOutsideKnown
      ? { airC: outside.airC, rh: outside.rh }
      : { airC: last.airC, rh: settings.outsideUnknownRh },
    dehumidifiers: machines.flatMap((machine) =>
      machine.kind === 'dehumidifier'
        ? [
            {
              ...{ litresPerDay: machine.litresPerDay, ratedC: machine.ratedC, ratedRh: machine.ratedRh },
              ...{ type: machine.works, runs: machine.runs, ...kw(machine.watts) },
            },
          ]
        : [],
    ),
    fans: machines.flatMap((machine) =>
      machine.kind === 'fan'
        ? [{ airSpeed: machine.airSpeedMPerS, runs: machine.runs, ...kw(machine.watts) }]
        : [],
    ),
    heaters: machines.flatMap((machine) =>
      machine.kind === 'heater'
        ? [
            {
              kw: machine.watts / 1000,
              runs: machine.runs,
              ...(machine.untilC === undefined ? {} : { untilC: machine.untilC }),
            },
          ]
        : [],
    ),
    rugs: rugs.map((rug) => rugInScenario(rug, zero, assume)),
  };
  return done({ zero, assumptions, learning, scenario: asLearnt(scenario, learning) });
}
