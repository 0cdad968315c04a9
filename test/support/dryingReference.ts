import { equilibriumRegain } from '../../src/core/air/index.ts';
import type { DryScenario, Running } from '../../src/core/drying/index.ts';

// The drying model's equations by other means: explicit Runge-Kutta of fourth order in even steps, faces by
// halving, isotherms by straight lines, constants written out. Nothing of the model is used but the regain table.

const pressure = (celsius: number): number => {
  const T = celsius + 273.15;
  const powers = 1.3914993 - 0.048640239 * T + 4.1764768e-5 * T ** 2 - 1.4452093e-8 * T ** 3;
  return Math.exp(-5800.2206 / T + powers + 6.5459673 * Math.log(T));
};
/** Frost and not dew forms in freezing air outside: the same handbook's fit over ice. */
const outsidePressure = (celsius: number): number => {
  if (celsius >= 0) return pressure(celsius);
  const T = celsius + 273.15;
  const powers = 6.3925247 - 9.677843e-3 * T + 6.2215701e-7 * T ** 2 + 2.0747825e-9 * T ** 3;
  return Math.exp(-5674.5359 / T + powers - 9.484024e-13 * T ** 4 + 4.1635019 * Math.log(T));
};
const concentration = (celsius: number): number => pressure(celsius) / (461.5 * (celsius + 273.15));
const latent = (celsius: number): number => (2501 - 2.361 * celsius) * 1000;

const points = 1000;
function blendOf(fibres: DryScenario['rugs'][number]['fibres']) {
  const held = Array.from(
    { length: points + 1 },
    (_, i) => equilibriumRegain(fibres, i / points, 'from the wet side').likely,
  );
  const regainAt = (rh: number): number => {
    const place = Math.min(1, Math.max(0, rh)) * points;
    const i = Math.min(points - 1, Math.floor(place));
    return (held[i] ?? 0) + (place - i) * ((held[i + 1] ?? 0) - (held[i] ?? 0));
  };
  const humidityAt = (regain: number): number => {
    if (regain >= (held[points] ?? 0)) return 1;
    let [low, high] = [0, 1];
    for (let i = 0; i < 30; i++) {
      const middle = (low + high) / 2;
      if (regainAt(middle) < regain) low = middle;
      else high = middle;
    }
    return low;
  };
  return { regainAt, humidityAt };
}

const runsAt = ({ fromHour, untilHour = 1e9 }: Running, hour: number): boolean =>
  hour >= fromHour - 1e-9 && hour < untilHour - 1e-9;
const isOn = (runs: readonly Running[] | undefined, hour: number): boolean =>
  runs === undefined || runs.some((one) => runsAt(one, hour));

/** Straight between rows of one figure each, held outside them. */
function readRows(rows: readonly (readonly [hour: number, value: number])[], hour: number): number {
  const after = rows.findIndex(([at]) => at > hour);
  const [first, last] = [rows[0], rows[rows.length - 1]];
  if (after === 0) return first?.[1] ?? Number.NaN;
  if (after === -1) return last?.[1] ?? Number.NaN;
  const [[from, low] = [0, 0], [to, high] = [0, 0]] = [rows[after - 1], rows[after]];
  return low + ((high - low) * (hour - from)) / (to - from);
}

const faceCount = { hung: 2, mesh: 1.5, floor: 1 } as const;

/**
 * A scenario integrated in even steps; on and off times, turnings and hangings have to fall on steps.
 * Without a held or scheduled temperature, the room's heat is integrated too.
 */
export function referenceRun(scenario: DryScenario, stepS: number) {
  const { room, outside, rugs, dehumidifiers, fans = [], heaters = [] } = scenario;
  const [n, warmth] = [rugs.length, rugs.length + 1];
  const blends = rugs.map(({ fibres }) => blendOf(fibres));
  const outsideC = (outside.series ?? [{ hour: 0, ...outside }]).map(
    ({ hour, airC }) => [hour, airC] as const,
  );
  const outsidePa = (outside.series ?? [{ hour: 0, ...outside }]).map(
    ({ hour, airC, rh }) => [hour, rh * outsidePressure(airC)] as const,
  );
  const held = 12_000 * room.volumeM3;
  const walls = room.wallsWPerK ?? 1.2 * room.volumeM3;

  /** Conditions are those at the begin of the step. */
  const ratesOf = (begun: number, time: number, state: readonly number[]): number[] => {
    const hour = begun / 3600 + 1e-9;
    const vapour = state[n] ?? 0;
    const airC = room.airC ?? state[warmth] ?? 0;
    const speed = Math.max(room.airSpeed, ...fans.map((fan) => (isOn(fan.runs, hour) ? fan.airSpeed : 0)));
    const convection = 4 + 4 * speed;
    const perFilm = (1.2 * 1006 * 0.87 ** (2 / 3)) / convection;
    const rh = vapour / concentration(airC);
    let [given, drawn] = [0, 0];
    const byRug = rugs.map((rug, i) => {
      if (hour < (rug.hungAtHour ?? 0) || hour >= (rug.takenAtHour ?? 1e9)) return 0;
      const turned = rug.turnings?.filter((one) => one.hour <= hour).at(-1) ?? rug;
      const faces = turned.faces ?? faceCount[turned.posture ?? 'floor'];
      const regain = state[i] ?? 0;
      const { criticalRegain = 0.6, resistance = 40 } = rug;
      const rest = blends[i]?.regainAt(rh) ?? 0;
      const dryness = Math.min(1, Math.max(0, (criticalRegain - regain) / (criticalRegain - rest)));
      const through = (perFilm + resistance * dryness) / (room.g ?? 1);
      const activity = blends[i]?.humidityAt(regain) ?? 0;
      let [low, high] = [airC - 40, airC + 40];
      for (let k = 0; k < 34; k++) {
        const middle = (low + high) / 2;
        const flux = (activity * concentration(middle) - vapour) / through;
        if ((convection + 5.1) * (airC - middle) > latent(middle) * flux) low = middle;
        else high = middle;
      }
      const flux = ((activity * concentration(low) - vapour) / through) * rug.areaM2 * faces;
      given += flux;
      drawn += latent(low) * flux;
      return -flux / rug.dryMassKg;
    });
    let current = 0;
    const taken = dehumidifiers.reduce((sum, { litresPerDay, ratedC = 0, ratedRh = 1, type, kw, runs }) => {
      if (!isOn(runs, hour)) return sum;
      const desiccant = type === 'desiccant';
      current += (kw ?? (litresPerDay / 24) * (desiccant ? 1.3 : 0.5)) * (desiccant ? 0.5 : 1);
      const keeps = desiccant ? 1 : airC < 15 ? 0 : Math.min(1, Math.max(0, (rh - 0.2) / 0.2));
      const rated = ratedRh * pressure(ratedC);
      return sum + ((litresPerDay / 86_400) * keeps * rh * pressure(airC)) / rated;
    }, 0);
    const opening = room.openings?.findLast((one) => runsAt(one, hour));
    const changed = ((opening?.airChangesPerHour ?? room.airChangesPerHour) / 3600) * room.volumeM3;
    const outVapour = readRows(outsidePa, time / 3600) / (461.5 * (airC + 273.15));
    for (const { kw = 0.1, runs } of fans) if (isOn(runs, hour)) current += kw;
    for (const { kw, untilC = 1e9, runs } of heaters) {
      if (isOn(runs, hour)) current += kw * Math.min(1, Math.max(0, untilC - airC + 0.5));
    }
    const loss = (walls + changed * 1.2 * 1006) * (airC - readRows(outsideC, time / 3600));
    const warming = (1000 * current - loss + latent(airC) * taken - drawn) / held;
    return [
      ...byRug,
      (given - taken - changed * (vapour - outVapour)) / room.volumeM3,
      room.airC === undefined ? warming : 0,
    ];
  };
  const moved = (state: readonly number[], by: readonly number[], length: number) =>
    state.map((value, i) => value + length * (by[i] ?? 0));
  const startC = room.airC ?? room.startC ?? Number.NaN;
  let state: readonly number[] = [
    ...rugs.map(({ startRegain = 0 }) => startRegain),
    (room.startRh ?? 0) * concentration(startC),
    startC,
  ];
  const reached = rugs.map(() => Number.NaN);
  for (let time = 0; time < scenario.hours * 3600 - 1; time += stepS) {
    const a = ratesOf(time, time, state);
    const b = ratesOf(time, time + stepS / 2, moved(state, a, stepS / 2));
    const c = ratesOf(time, time + stepS / 2, moved(state, b, stepS / 2));
    const d = ratesOf(time, time + stepS, moved(state, c, stepS));
    const before = state;
    state = state.map(
      (value, i) => value + (stepS / 6) * ((a[i] ?? 0) + 2 * (b[i] ?? 0) + 2 * (c[i] ?? 0) + (d[i] ?? 0)),
    );
    for (const [i, { targetRegain = 0, hungAtHour = 0 }] of rugs.entries()) {
      const [from, to] = [before[i] ?? 0, state[i] ?? 0];
      if (Number.isNaN(reached[i] ?? 0) && to <= targetRegain) {
        reached[i] = (time + (stepS * (from - targetRegain)) / (from - to)) / 3600 - hungAtHour;
      }
    }
  }
  const endC = state[warmth] ?? Number.NaN;
  return {
    ...{ reached, endC, endRegain: state.slice(0, n) },
    endRh: (state[n] ?? Number.NaN) / concentration(endC),
  };
}
