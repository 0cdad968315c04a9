import settings from '../../../data/drying/settings.json' with { type: 'json' };
import { done, type Result, refused } from '../../units/index.ts';
import { type AirState, airState } from '../air/index.ts';
import { wetClock, wetClockHours } from '../mould/index.ts';
import { alarmsOf } from './dryAlarms.ts';
import type { AirCompared, DryAnswer, LikelyRug, RugAnswer, RugSpread } from './dryAnswer.ts';
import type { DryingProblem } from './dryingProblem.ts';
import { secondsPerHour } from './givenAir.ts';
import { nextReadings } from './nextReading.ts';
import { type PreparedRoom, type PreparedRug, prepareRoom } from './preparedRoom.ts';
import { type RoomBelief, roomBelief } from './roomBelief.ts';
import { roomHours } from './roomHours.ts';
import { fixedPaths } from './roomSystem.ts';
import { evidenceOf } from './rugEvidence.ts';
import { makeRoomRunner, type RoomCourse, regainsAt } from './runRoom.ts';
import type { DryScenario } from './scenario.ts';
import { scenarioProblem } from './scenarioProblem.ts';
import { quantileOf, type Random, seededRandom } from './seededRandom.ts';
import { surfaceCourse } from './surfaceCourse.ts';
import { saturatedConcentration } from './surfaceFlux.ts';
import { knownUnknowns, type Unknowns } from './unknowns.ts';

const sampleHoursOf = (hours: number): readonly number[] => {
  const whole = Array.from({ length: Math.floor(hours) + 1 }, (_, hour) => hour);
  return hours > whole.length - 1 ? [...whole, hours] : whole;
};

const orNull = (value: number): number | null => (Number.isFinite(value) ? value : null);

const hungHourOf = (rug: PreparedRug): number => rug.hungAt / secondsPerHour;
const hoursWetOf = (rug: PreparedRug, targetAtHour: number | null): number | null =>
  targetAtHour === null ? null : targetAtHour - rug.wettedAt / secondsPerHour;

function waterOf({ loadKg, paths }: RoomCourse): DryAnswer['water'] {
  const [byAirExchangeKg = 0, byCondensationKg = 0, whileMeasuredKg = 0] = paths;
  const byMachineKg = Array.from(paths.slice(fixedPaths.length));
  const removedKg = paths.reduce((sum, water) => sum + water, 0);
  return { loadKg, removedKg, byAirExchangeKg, byCondensationKg, whileMeasuredKg, byMachineKg };
}

function rugAnswer(
  room: PreparedRoom,
  at: number,
  unknowns: Unknowns,
  course: RoomCourse,
  hours: readonly number[],
): RugAnswer | null {
  const rug = room.rugs[at];
  if (rug === undefined) return null;
  const targetAtHour = course.targetAtHour[at] ?? null;
  const states = surfaceCourse(room, at, unknowns, course, hours);
  const last = states[states.length - 1];
  const hoursWet = hoursWetOf(rug, targetAtHour);
  return {
    id: rug.id,
    hoursToTarget: targetAtHour === null ? null : targetAtHour - hungHourOf(rug),
    targetAtHour,
    targetRegain: rug.targetRegain,
    endRegain: course.endRegain[at] ?? Number.NaN,
    endSurfaceRh: last?.surfaceRh ?? Number.NaN,
    mouldIndex: Math.max(...states.map(({ mouldIndex }) => mouldIndex)),
    hoursWet,
    wetClock: wetClock(hoursWet),
    unknownFibreAs: rug.unknownFibreAs,
    course: states,
  };
}

const between = (sorted: Float64Array, share: number): readonly [number, number] => [
  quantileOf(sorted, (1 - share) / 2),
  quantileOf(sorted, (1 + share) / 2),
];

const likelyOf = (rug: PreparedRug, at: number, likely: Unknowns): LikelyRug => ({
  startRegain: likely.startRegain[at] ?? Number.NaN,
  g: likely.g[at] ?? Number.NaN,
  resistance: likely.resistance[at] ?? Number.NaN,
  criticalRegain: likely.criticalRegain[at] ?? Number.NaN,
  dryMassKg: rug.dryMassKg * (likely.dryMass[at] ?? 1),
});

function spreadOf(
  room: PreparedRoom,
  at: number,
  courses: readonly RoomCourse[],
  hours: readonly number[],
  belief: RoomBelief,
): { readonly medianAt: number | null; readonly spread: RugSpread } | null {
  const rug = room.rugs[at];
  if (rug === undefined) return null;
  const ends = Float64Array.from(
    courses,
    ({ targetAtHour }) => targetAtHour[at] ?? Number.POSITIVE_INFINITY,
  ).sort();
  const fromHanging = (bounds: readonly [number, number]) =>
    bounds.map((hour) => orNull(hour - hungHourOf(rug)));
  const [low80 = null, high80 = null] = fromHanging(between(ends, 0.8));
  const [low95 = null, high95 = null] = fromHanging(between(ends, 0.95));
  const read = belief.rugs[at] ?? null;
  const end = hours[hours.length - 1] ?? 0;
  const width = (high80 ?? end - hungHourOf(rug)) - (low80 ?? end - hungHourOf(rug));
  const lookedAt = Math.max(hungHourOf(rug), read?.readings.at(-1)?.reading.hour ?? 0);
  const red = rug.wettedAt / secondsPerHour + wetClockHours.redHours;
  const regains = new Float64Array(courses.length);
  const bands = hours.map((hour, k) => {
    regainsAt(courses, at, k, regains).sort();
    return {
      ...{ hour, median: quantileOf(regains, 0.5) },
      ...{ interval80: between(regains, 0.8), interval95: between(regains, 0.95) },
    };
  });
  return {
    medianAt: orNull(quantileOf(ends, 0.5)),
    spread: {
      ...{ interval80: [low80, high80], interval95: [low95, high95], bands },
      chanceDry: ends.filter(Number.isFinite).length / ends.length,
      chanceRed: ends.filter((end) => end > red).length / ends.length,
      readings: belief.rugs[at]?.readings ?? [],
      contradicted: belief.rugs[at]?.contradicted ?? false,
      likely: likelyOf(rug, at, belief.likely),
      evidence: read === null ? null : evidenceOf(read, rug, room),
      next: nextReadings(rug, at, belief.draws, courses, hours, lookedAt, width),
    },
  };
}

function airCompared({ outside }: DryScenario, room: PreparedRoom): AirCompared {
  const stateOf = (temperatureC: number, rh: number): AirState | null => {
    const found = airState({ temperatureC, rh });
    return found.ok ? found.value : null;
  };
  const inside = stateOf(room.startC, room.startVapour / saturatedConcentration(room.startC));
  const out = stateOf(outside.airC, outside.rh);
  const exchangeDries = (out?.humidityRatio ?? 0) < (inside?.humidityRatio ?? 0);
  return { room: inside, outside: out, exchangeDries };
}

/**
 * When each rug of a room will be dry: by the values of the scenario, or, with `uncertainty`, by joint
 * draws of what nobody knows exactly, narrowed by the readings.
 *
 * @param scenario - room, outside air, machines, rugs, readings
 * @param random - source of chances for the draws; the scenario's seed when absent
 * @returns hours to the target, regain, surface state and mould index by the hour, water by path, alarms
 * @refuses everything scenarioProblem names; drying-room-runs-away
 * @source none: model of surfaceFlux, machineOf and the isotherms, each with its source
 * @accuracy water conserved to 1e-9 of the load; time to target within 0.1 % of ever finer steps
 */
export function dryForecast(scenario: DryScenario, random?: Random): Result<DryAnswer, DryingProblem> {
  const problem = scenarioProblem(scenario);
  if (problem !== null) return problem;
  const room = prepareRoom(scenario);
  const hours = sampleHoursOf(scenario.hours);
  const run = makeRoomRunner(room);
  const chances = random ?? seededRandom(scenario.seed ?? 1);
  const uncertain = scenario.uncertainty === true;
  const readings = scenario.rugs.map((rug) => rug.readings ?? []);
  const belief = uncertain
    ? roomBelief(room, readings, scenario.draws ?? settings.belief.draws, chances)
    : null;
  const courses = belief?.draws.map((unknowns) => run(unknowns, hours)) ?? [];
  const central = belief === null ? knownUnknowns(room) : belief.likely;
  const course = run(central, hours);
  const away = [course, ...courses].find(({ ranAway }) => ranAway !== null)?.ranAway ?? null;
  if (away !== null) return refused('drying-room-runs-away', away);
  const rugs = room.rugs.flatMap((rug, at): readonly RugAnswer[] => {
    const answer = rugAnswer(room, at, central, course, hours);
    if (answer === null) return [];
    const found = belief === null ? null : spreadOf(room, at, courses, hours, belief);
    if (found === null) return [answer];
    const { medianAt, spread } = found;
    const hoursWet = hoursWetOf(rug, medianAt);
    const hoursToTarget = medianAt === null ? null : medianAt - hungHourOf(rug);
    return [
      { ...answer, hoursToTarget, targetAtHour: medianAt, hoursWet, wetClock: wetClock(hoursWet), spread },
    ];
  });
  const hourly = roomHours(room, central, course, hours);
  return done({
    air: airCompared(scenario, room),
    rugs,
    hourly,
    endRh: course.endRh,
    peakRh: course.peakRh,
    endC: course.endC,
    peakC: course.peakC,
    waterBalanceError: [course, ...courses].reduce(
      (worst, { waterBalanceError }) =>
        Math.abs(waterBalanceError) > Math.abs(worst) ? waterBalanceError : worst,
      0,
    ),
    water: waterOf(course),
    ...(belief === null ? {} : { g: belief.g }),
    alarms: alarmsOf(scenario, room, rugs, course, hourly),
  });
}
