import { type Fineness, makeIntegrator, type Step, within } from './integrate.ts';
import { airAt, type PreparedRoom, secondsPerHour } from './preparedRoom.ts';
import { type Background, fixedPaths, makeRoomSystem, type Unknowns } from './roomSystem.ts';
import { saturatedConcentration } from './surfaceFlux.ts';

/** What became of a room in one run. Arrays by rug follow the room's rugs. */
export interface RoomCourse {
  /** Clock hour of the scenario at which each rug first held no more than its target; null: not in this time. */
  readonly targetAtHour: readonly (number | null)[];
  readonly endRegain: Float64Array;
  readonly endRh: number;
  /** Greatest relative humidity at the ends of the steps [fraction]. */
  readonly peakRh: number;
  /** Regain of each rug at each hour asked for. */
  readonly regains: readonly Float64Array[];
  /** Vapour of the room at each hour asked for [kg/m³]. */
  readonly vapours: Float64Array;
  /** Water by path [kg]: air exchange, condensation, then each machine. */
  readonly paths: Float64Array;
  readonly loadKg: number;
  /** Water found less water there should be, as a share of the load. */
  readonly waterBalanceError: number;
  readonly steps: number;
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
  const { system, begin, hangAt } = makeRoomSystem(room, background);
  const { state, run } = makeIntegrator(system);
  const { rugs, seconds, volumeM3, airIsMeasured } = room;
  const air = rugs.length;
  const stored = (): number => {
    let sum = airIsMeasured ? 0 : volumeM3 * (state[air] ?? 0);
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
    const loadKg = stored();
    const targetAtHour: (number | null)[] = rugs.map(() => null);
    const regains = rugs.map(() => new Float64Array(sampleHours.length));
    const vapours = new Float64Array(sampleHours.length);
    let sampled = 0;
    let peakRh = 0;
    let steps = 0;

    const noteRh = (time: number, vapour: number): void => {
      peakRh = Math.max(peakRh, vapour / saturatedConcentration(airAt(room.air, time).airC));
    };
    const sampleUntil = (time: number, read: (index: number, at: number) => number): void => {
      for (; sampled < sampleHours.length; sampled++) {
        const at = (sampleHours[sampled] ?? 0) * secondsPerHour;
        if (at > time + 1e-6) return;
        for (let i = 0; i < air; i++) {
          const of = regains[i];
          if (of !== undefined) of[sampled] = read(i, at);
        }
        vapours[sampled] = read(air, at);
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
      noteRh(step.to, step.nextState[air] ?? 0);
    };

    sampleUntil(0, (index) => state[index] ?? 0);
    noteRh(0, room.startVapour);
    let length = firstStepS;
    for (const [i, from] of room.jumps.slice(0, -1).entries()) {
      hangAt(from);
      const to = room.jumps[i + 1] ?? seconds;
      for (const [r, rug] of rugs.entries()) {
        if (targetAtHour[r] === null && rug.hungAt === from && (state[r] ?? 0) <= rug.targetRegain) {
          targetAtHour[r] = from / secondsPerHour;
        }
      }
      length = run(from, to, Math.min(length, firstStepS), fineness, taken);
    }
    const paths = state.slice(air + 1);
    if (airIsMeasured) paths[fixedPaths.indexOf('airExchange')] = loadKg - stored();
    const gone = paths.reduce((sum, water) => sum + water, 0);
    return {
      ...{ targetAtHour, regains, vapours, paths, loadKg, peakRh, steps },
      endRegain: state.slice(0, air),
      endRh: (state[air] ?? 0) / saturatedConcentration(airAt(room.air, seconds).airC),
      waterBalanceError: (stored() + gone - loadKg) / Math.max(loadKg, leastLoadKg),
    };
  };
}
