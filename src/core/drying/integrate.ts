import type { ArrowSystem } from './arrowSystem.ts';

/** Coefficients of the method. @source sandu-1997, table 2: RODAS3 */
const gamma = 0.5;
const fromStages = [[], [0], [2, 0], [2, 0, 1]] as const;
const couplings = [[], [4], [1, -1], [1, -1, -8 / 3]] as const;
const stageTimes = [0, 0, 1, 1] as const;
const timeSlopes = [0.5, 1.5, 0, 0] as const;
const weights = [2, 0, 1, 1] as const;

/** A step as it was taken; states and rates at both ends allow to read between them. */
export interface Step {
  readonly from: number;
  readonly to: number;
  readonly state: Float64Array;
  readonly rates: Float64Array;
  readonly nextState: Float64Array;
  readonly nextRates: Float64Array;
}

/** How finely to step: by an error allowed per step, or by steps of one length. */
export type Fineness =
  | { readonly kind: 'error'; readonly relative: number }
  | { readonly kind: 'steps'; readonly seconds: number };

const ratesInto = (system: ArrowSystem, into: Float64Array): void => {
  const { cells, paths } = system;
  let given = 0;
  for (let i = 0; i < cells; i++) {
    const rate = system.cellRate[i] ?? 0;
    into[i] = rate;
    given -= rate * (system.weights[i] ?? 0);
  }
  for (let k = 0; k < paths; k++) {
    const rate = system.pathRate[k] ?? 0;
    into[cells + 1 + k] = rate;
    given -= rate;
  }
  into[cells] = system.airIsGiven ? system.givenRate() : (given + system.givenRate()) / system.volume;
};

/** Makes an integrator whose store is used again from run to run. */
export function makeIntegrator(system: ArrowSystem) {
  const { cells, paths } = system;
  const size = cells + 1 + paths;
  const vector = () => new Float64Array(size);
  const [state, rates, nextState, nextRates, stage, stageRates, right, timeRate] = Array.from(
    { length: 8 },
    vector,
  ) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const stages = Array.from({ length: 4 }, vector);
  const byCell = new Float64Array(cells);
  const byAir = new Float64Array(cells);
  const pathByAir = new Float64Array(paths);

  const beginAt = (time: number): void => {
    system.evaluate(time, state, true);
    ratesInto(system, rates);
    byCell.set(system.cellByCell);
    byAir.set(system.cellByAir);
    pathByAir.set(system.pathByAir);
  };

  /** Solves (1/(h·gamma) − slopes) x = right into x, down the arrow's shaft and back. */
  const solve = (into: Float64Array, shift: number): void => {
    const { volume } = system;
    let air = right[cells] ?? 0;
    let pivot = shift;
    if (!system.airIsGiven) {
      for (let i = 0; i < cells; i++) {
        const share = ((system.weights[i] ?? 0) * (byCell[i] ?? 0)) / (volume * (shift - (byCell[i] ?? 0)));
        air -= share * (right[i] ?? 0);
        pivot += share * (byAir[i] ?? 0) + ((system.weights[i] ?? 0) * (byAir[i] ?? 0)) / volume;
      }
      for (let k = 0; k < paths; k++) pivot += (pathByAir[k] ?? 0) / volume;
    }
    const room = air / pivot;
    into[cells] = room;
    for (let i = 0; i < cells; i++) {
      into[i] = ((right[i] ?? 0) + (byAir[i] ?? 0) * room) / (shift - (byCell[i] ?? 0));
    }
    for (let k = 0; k < paths; k++) {
      into[cells + 1 + k] = ((right[cells + 1 + k] ?? 0) + (pathByAir[k] ?? 0) * room) / shift;
    }
  };

  const measureTimeRate = (time: number, length: number): void => {
    const ahead = length * 1e-3;
    system.evaluate(time + ahead, state, false);
    ratesInto(system, timeRate);
    for (let i = 0; i < size; i++) timeRate[i] = ((timeRate[i] ?? 0) - (rates[i] ?? 0)) / ahead;
  };

  /** Tries a step; gives its error against the error allowed. */
  const tryStep = (time: number, length: number, relative: number): number => {
    const shift = 1 / (gamma * length);
    if (system.varies) measureTimeRate(time, length);
    for (let s = 0; s < 4; s++) {
      const into = stages[s];
      if (into === undefined) break;
      if (s >= 2) {
        stage.set(state);
        for (const [j, a] of (fromStages[s] ?? []).entries()) {
          const of = stages[j];
          if (a !== 0 && of !== undefined)
            for (let i = 0; i < size; i++) stage[i] = (stage[i] ?? 0) + a * (of[i] ?? 0);
        }
        system.evaluate(time + (stageTimes[s] ?? 0) * length, stage, false);
        ratesInto(system, stageRates);
        right.set(stageRates);
      } else right.set(rates);
      for (const [j, c] of (couplings[s] ?? []).entries()) {
        const of = stages[j];
        if (of !== undefined)
          for (let i = 0; i < size; i++) right[i] = (right[i] ?? 0) + (c / length) * (of[i] ?? 0);
      }
      const slope = timeSlopes[s] ?? 0;
      if (system.varies && slope !== 0)
        for (let i = 0; i < size; i++) right[i] = (right[i] ?? 0) + slope * length * (timeRate[i] ?? 0);
      solve(into, shift);
    }
    nextState.set(state);
    for (const [s, b] of weights.entries()) {
      const of = stages[s];
      if (b !== 0 && of !== undefined)
        for (let i = 0; i < size; i++) nextState[i] = (nextState[i] ?? 0) + b * (of[i] ?? 0);
    }
    const last = stages[3];
    let worst = 0;
    for (let i = 0; i <= cells; i++) {
      const floor = i === cells ? 0.005 : 0.1;
      const size = Math.max(Math.abs(state[i] ?? 0), Math.abs(nextState[i] ?? 0), floor);
      worst = Math.max(worst, Math.abs(last?.[i] ?? 0) / (size * relative));
    }
    return worst;
  };

  /**
   * Carries the state through a stretch of time in which nothing jumps.
   *
   * @returns the length of the last full step, to begin the next stretch with
   */
  const run = (
    from: number,
    to: number,
    firstStep: number,
    fineness: Fineness,
    taken: (step: Step) => void,
  ): number => {
    let time = from;
    let length = fineness.kind === 'steps' ? fineness.seconds : firstStep;
    beginAt(time);
    while (to - time > 1e-6) {
      const left = to - time;
      // The rest is taken in two even steps rather than a long and a tiny one.
      const now = length > left * 0.999 ? left : Math.min(length, left / 2);
      const error = tryStep(time, now, fineness.kind === 'error' ? fineness.relative : 1);
      const grow = 0.9 * Math.max(error, 1e-6) ** (-1 / 3);
      if (fineness.kind === 'error') {
        if (error > 1 || Number.isNaN(error)) {
          length = now * Math.max(0.1, Number.isNaN(grow) ? 0.1 : grow);
          if (length < 1e-6) throw new Error('the drying model takes no step');
          continue;
        }
        length = Math.max(now === length ? 0 : length, now * Math.min(5, grow));
      }
      const begun = { from: time, to: time + now, state, rates, nextState, nextRates };
      time = now === left ? to : time + now;
      system.evaluate(time, nextState, true);
      ratesInto(system, nextRates);
      taken(begun);
      state.set(nextState);
      rates.set(nextRates);
      byCell.set(system.cellByCell);
      byAir.set(system.cellByAir);
      pathByAir.set(system.pathByAir);
    }
    return length;
  };
  return { state, run };
}

/**
 * A quantity between the ends of a step, by its values and rates there.
 *
 * @source none: cubic Hermite
 */
export function within(
  { from, to, state, rates, nextState, nextRates }: Step,
  index: number,
  time: number,
): number {
  const length = to - from;
  const t = (time - from) / length;
  const v0 = state[index] ?? Number.NaN;
  const rise = (nextState[index] ?? Number.NaN) - v0;
  const s0 = (rates[index] ?? 0) * length;
  const s1 = (nextRates[index] ?? 0) * length;
  return v0 + t * (s0 + t * (3 * rise - 2 * s0 - s1 + t * (s0 + s1 - 2 * rise)));
}
