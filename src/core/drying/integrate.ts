import { type ArrowSystem, makeArrowMatrix } from './arrowSystem.ts';

/**
 * The method: four stages, of third order, damping what is stiff. In its usual form
 * (1/(gamma h) − J) k = f + Σ (c/h) k, the coefficients are gamma ½, couplings 4; 1, −1; 1, −1, −8/3,
 * stage states y, y, y + 2 k₁, y + 2 k₁ + k₃, and the new state that of the last stage plus k₄, which is
 * also the error of the second-order solution inside it.
 * @source sandu-1997, section 3: RODAS3
 */
const gamma = 0.5;

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

/** Below these, errors count against the floor and not against the value. */
const leastRegain = 0.1;
const leastVapour = 0.005;
const leastC = 20;

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
    into[cells + 2 + k] = rate;
    given -= rate;
  }
  into[cells] = system.vapourIsGiven() ? system.givenRate() : (given + system.givenRate()) / system.volume;
  into[cells + 1] = system.heat.rate;
};

/** Makes an integrator whose store is used again from run to run. */
export function makeIntegrator(system: ArrowSystem) {
  const { cells, paths } = system;
  const size = cells + 2 + paths;
  const vector = () => new Float64Array(size);
  const [state, rates, nextState, nextRates] = [vector(), vector(), vector(), vector()];
  const [stage, right, timeRate] = [vector(), vector(), vector()];
  const [k1, k2, k3, k4] = [vector(), vector(), vector(), vector()];
  const matrix = makeArrowMatrix(system);

  const beginAt = (time: number): void => {
    system.evaluate(time, state, true);
    ratesInto(system, rates);
    matrix.keep();
  };

  const measureTimeRate = (time: number, length: number): void => {
    const ahead = length * 1e-3;
    system.evaluate(time + ahead, state, false);
    ratesInto(system, timeRate);
    for (let i = 0; i < size; i++) timeRate[i] = ((timeRate[i] ?? 0) - (rates[i] ?? 0)) / ahead;
  };

  /** Tries a step; gives its error against the error allowed. */
  const tryStep = (time: number, length: number, relative: number): number => {
    matrix.factor(1 / (gamma * length));
    const perLength = 1 / length;
    const { varies } = system;
    if (varies) measureTimeRate(time, length);
    for (let i = 0; i < size; i++) {
      right[i] = (rates[i] ?? 0) + (varies ? 0.5 * length * (timeRate[i] ?? 0) : 0);
    }
    matrix.solve(k1, right);
    for (let i = 0; i < size; i++) {
      const slope = varies ? 1.5 * length * (timeRate[i] ?? 0) : 0;
      right[i] = (rates[i] ?? 0) + slope + 4 * perLength * (k1[i] ?? 0);
    }
    matrix.solve(k2, right);
    for (let i = 0; i < size; i++) stage[i] = (state[i] ?? 0) + 2 * (k1[i] ?? 0);
    system.evaluate(time + length, stage, false);
    ratesInto(system, right);
    for (let i = 0; i < size; i++) right[i] = (right[i] ?? 0) + perLength * ((k1[i] ?? 0) - (k2[i] ?? 0));
    matrix.solve(k3, right);
    for (let i = 0; i < size; i++) stage[i] = (stage[i] ?? 0) + (k3[i] ?? 0);
    system.evaluate(time + length, stage, false);
    ratesInto(system, right);
    for (let i = 0; i < size; i++) {
      const coupled = (k1[i] ?? 0) - (k2[i] ?? 0) - (8 / 3) * (k3[i] ?? 0);
      right[i] = (right[i] ?? 0) + perLength * coupled;
    }
    matrix.solve(k4, right);
    let worst = 0;
    for (let i = 0; i < size; i++) {
      const error = k4[i] ?? 0;
      const next = (stage[i] ?? 0) + error;
      nextState[i] = next;
      if (i > cells + 1) continue;
      const floor = i < cells ? leastRegain : i === cells ? leastVapour : leastC;
      const scale = Math.max(Math.abs(next), floor);
      worst = Math.max(worst, Math.abs(error) / scale);
    }
    return worst / relative;
  };

  /**
   * Carries the state through a stretch of time in which nothing jumps.
   *
   * @returns the length of the last full step, to begin the next stretch with; null where no step however
   * short can be taken, since the state has left what the model can describe
   */
  const run = (
    from: number,
    to: number,
    firstStep: number,
    fineness: Fineness,
    taken: (step: Step) => void,
  ): number | null => {
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
          if (length < 1e-6) return null;
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
      matrix.keep();
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
