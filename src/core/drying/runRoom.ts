import heatSettings from '../../../data/drying/heat.json' with { type: 'json' };
import { secondsPerHour } from './givenAir.ts';
import { type Fineness, makeIntegrator, type Step, within } from './integrate.ts';
import type { PreparedRoom } from './preparedRoom.ts';
import { type Background, fixedPaths, makeRoomSystem } from './roomSystem.ts';
import { saturatedConcentration } from './surfaceFlux.ts';
import type { Unknowns } from './unknowns.ts';

/** What became of a room in one run. Arrays by rug follow the room's rugs. */
export interface RoomCourse {
  /** Clock hour of the scenario at which each rug first held no more than its target; null: not in this time. */
  readonly targetAtHour: readonly (number | null)[];
  readonly endRegain: Float64Array;
  readonly endRh: number;
  readonly endC: number;
  /** Greatest relative humidity at the ends of the steps [fraction]. */
  readonly peakRh: number;
  readonly peakC: number;
  /** Regain of each rug at each hour asked for. */
  readonly regains: readonly Float64Array[];
  /** Vapour of the room at each hour asked for [kg/m³]. */
  readonly vapours: Float64Array;
  /** Temperature of the room at each hour asked for [°C]. */
  readonly airCs: Float64Array;
  /** Water by path [kg]: the fixed paths, then each machine. */
  readonly paths: Float64Array;
  readonly loadKg: number;
  /** Water found less water there should be, as a share of the load. */
  readonly waterBalanceError: number;
  readonly steps: number;
  /** Where the room's heat carried it beyond all rooms of this trade; what comes after is not to be used. */
  readonly ranAway: { readonly hour: number; readonly airC: number } | null;
}

/** Regains of one rug at one of the hours asked for, over some courses; `into` has a place for each. */
export function regainsAt(
  courses: readonly RoomCourse[],
  rug: number,
  hour: number,
  into: Float64Array,
): Float64Array {
  for (let d = 0; d < courses.length; d++) into[d] = courses[d]?.regains[rug]?.[hour] ?? Number.NaN;
  return into;
}

/** Error allowed per step; halving it moves the time to target by far less than a thousandth. */
export const usualFineness: Fineness = { kind: 'error', relative: 1e-3 };

/** A load below a gram is no load to take a share of. */
const leastLoadKg = 1e-3;

/** First step after anything jumps; too long a one is taken back. */
const firstStepS = 600;

const crossing = (step: Step, index: number, target: number): number => {
  let [from, to] = [step.from, step.to];
  for (let i = 0; i < 40; i++) {
    const middle = (from + to) / 2;
    if (within(step, index, middle) > target) from = middle;
    else to = middle;
  }
  return to;
};

/**
 * A runner for one room: it keeps its store, so that hundreds of draws cost no memory.
 *
 * @param room - prepared
 * @param background - water from rugs that are not in this run, or null
 * @returns a function from unknowns and hours [h, rising] to the course of the room
 * @source none: mass balance integrated by makeIntegrator
 */
export function makeRoomRunner(room: PreparedRoom, background: Background | null = null) {
  const { system, begin, enter, vapourIsGiven } = makeRoomSystem(room, background);
  const { state, run } = makeIntegrator(system);
  const { rugs, seconds, volumeM3 } = room;
  const air = rugs.length;
  const [warmth, firstPath] = [air + 1, air + 2];
  const measured = firstPath + fixedPaths.indexOf('whileMeasured');
  const stored = (): number => {
    let sum = volumeM3 * (state[air] ?? 0);
    for (let i = 0; i < air; i++) sum += (system.weights[i] ?? 0) * (state[i] ?? 0);
    return sum;
  };

  return (
    unknowns: Unknowns,
    sampleHours: readonly number[],
    fineness: Fineness = usualFineness,
  ): RoomCourse => {
    begin(unknowns);
    state.fill(0);
    state.set(unknowns.startRegain);
    state[air] = room.startVapour;
    state[warmth] = room.startC;
    const loadKg = stored();
    const targetAtHour: (number | null)[] = rugs.map(() => null);
    const regains = rugs.map(() => new Float64Array(sampleHours.length));
    const [vapours, airCs] = [new Float64Array(sampleHours.length), new Float64Array(sampleHours.length)];
    let sampled = 0;
    let [peakRh, peakC] = [0, Number.NEGATIVE_INFINITY];
    let steps = 0;
    const heat: { ranAway: RoomCourse['ranAway'] } = { ranAway: null };

    const noteAir = (of: Float64Array): void => {
      const airC = of[warmth] ?? Number.NaN;
      peakRh = Math.max(peakRh, (of[air] ?? 0) / saturatedConcentration(airC));
      peakC = Math.max(peakC, airC);
    };
    const runsAway = (time: number, airC: number): void => {
      heat.ranAway ??= { hour: time / secondsPerHour, airC };
    };
    const sampleUntil = (time: number, read: (index: number, at: number) => number): void => {
      for (; sampled < sampleHours.length; sampled++) {
        const at = (sampleHours[sampled] ?? 0) * secondsPerHour;
        if (at > time + 1e-6) return;
        for (let i = 0; i < air; i++) {
          const of = regains[i];
          if (of !== undefined) of[sampled] = read(i, at);
        }
        vapours[sampled] = Math.max(0, read(air, at));
        airCs[sampled] = read(warmth, at);
      }
    };
    const taken = (step: Step): void => {
      steps++;
      for (let i = 0; i < air; i++) {
        const target = rugs[i]?.targetRegain ?? 0;
        if (
          targetAtHour[i] === null &&
          (step.nextState[i] ?? 0) <= target &&
          step.to > (rugs[i]?.hungAt ?? 0)
        ) {
          targetAtHour[i] = crossing(step, i, target) / secondsPerHour;
        }
      }
      sampleUntil(step.to, (index, at) => within(step, index, at));
      noteAir(step.nextState);
      const airC = step.nextState[warmth] ?? Number.NaN;
      const { fromC, toC } = heatSettings.modelHolds;
      if (!(airC >= fromC && airC <= toC)) runsAway(step.to, airC);
    };

    enter(0, state);
    sampleUntil(0, (index) => state[index] ?? 0);
    noteAir(state);
    let length = firstStepS;
    for (const [i, from] of room.jumps.slice(0, -1).entries()) {
      const before = volumeM3 * (state[air] ?? 0);
      enter(from, state);
      // What measuring puts into the air or takes out of it came and went unseen.
      state[measured] = (state[measured] ?? 0) + before - volumeM3 * (state[air] ?? 0);
      const to = room.jumps[i + 1] ?? seconds;
      for (const [r, rug] of rugs.entries()) {
        if (targetAtHour[r] === null && rug.hungAt === from && (state[r] ?? 0) <= rug.targetRegain) {
          targetAtHour[r] = from / secondsPerHour;
        }
      }
      const held = stored();
      const last = run(from, to, Math.min(length, firstStepS), fineness, taken);
      if (last === null) runsAway(to, state[warmth] ?? Number.NaN);
      if (heat.ranAway !== null) break;
      length = last ?? length;
      if (vapourIsGiven()) state[measured] = (state[measured] ?? 0) + held - stored();
    }
    sampleUntil(Number.POSITIVE_INFINITY, (index) => state[index] ?? 0);
    const paths = state.slice(firstPath);
    const gone = paths.reduce((sum, water) => sum + water, 0);
    return {
      ...{ targetAtHour, regains, vapours, airCs, paths, loadKg, peakRh, peakC, steps },
      ranAway: heat.ranAway,
      endRegain: state.slice(0, air),
      endRh: (state[air] ?? 0) / saturatedConcentration(state[warmth] ?? Number.NaN),
      endC: state[warmth] ?? Number.NaN,
      waterBalanceError: (stored() + gone - loadKg) / Math.max(loadKg, leastLoadKg),
    };
  };
}
