import { describe, expect, test } from 'vitest';
import { dryingRug, dryingScenario } from '../../../test/support/dryingRoom.ts';
import { equilibriumRegain } from '../air/index.ts';
import { dryForecast } from './dryForecast.ts';
import type { DryScenario } from './scenario.ts';

// The same equations by other means: explicit Runge-Kutta of fourth order in even steps, faces by halving,
// isotherms by straight lines, constants written out. Nothing of the model is used but the regain table.

const pressure = (celsius: number): number => {
  const T = celsius + 273.15;
  const powers = 1.3914993 - 0.048640239 * T + 4.1764768e-5 * T ** 2 - 1.4452093e-8 * T ** 3;
  return Math.exp(-5800.2206 / T + powers + 6.5459673 * Math.log(T));
};
const concentration = (celsius: number): number => pressure(celsius) / (461.5 * (celsius + 273.15));

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

function hoursByRungeKutta(scenario: DryScenario, stepS: number) {
  const { room, outside, rugs, dehumidifiers } = scenario;
  const airC = room.airC ?? Number.NaN;
  const convection = 4 + 4 * room.airSpeed;
  const perFilm = (1.2 * 1006 * 0.87 ** (2 / 3)) / convection;
  const saturated = concentration(airC);
  const outVapour = (outside.rh * pressure(outside.airC)) / (461.5 * (airC + 273.15));
  const blends = rugs.map(({ fibres }) => blendOf(fibres));
  const fluxOf = (i: number, regain: number, vapour: number): number => {
    const { criticalRegain = 0.6, resistance = 40 } = rugs[i] ?? {};
    const rest = blends[i]?.regainAt(vapour / saturated) ?? 0;
    const dryness = Math.min(1, Math.max(0, (criticalRegain - regain) / (criticalRegain - rest)));
    const through = perFilm + resistance * dryness;
    const activity = blends[i]?.humidityAt(regain) ?? 0;
    let [low, high] = [airC - 40, airC + 40];
    for (let k = 0; k < 30; k++) {
      const middle = (low + high) / 2;
      const flux = (activity * concentration(middle) - vapour) / through;
      if ((convection + 5.1) * (airC - middle) > (2501 - 2.361 * middle) * 1000 * flux) low = middle;
      else high = middle;
    }
    return (activity * concentration(low) - vapour) / through;
  };
  const ratesOf = (time: number, state: readonly number[]): number[] => {
    const vapour = state[rugs.length] ?? 0;
    const given = rugs.map((rug, i) =>
      time < (rug.hungAtHour ?? 0) * 3600
        ? 0
        : fluxOf(i, state[i] ?? 0, vapour) * rug.areaM2 * (rug.faces ?? 2),
    );
    const rh = vapour / saturated;
    const taken = dehumidifiers.reduce((sum, { litresPerDay, ratedC = 0, ratedRh = 1, type }) => {
      const keeps = type === 'desiccant' ? 1 : Math.min(1, Math.max(0, (rh - 0.2) / 0.2));
      return sum + ((litresPerDay / 86_400) * keeps * rh * pressure(airC)) / (ratedRh * pressure(ratedC));
    }, 0);
    const exchanged = (room.airChangesPerHour / 3600) * room.volumeM3 * (vapour - outVapour);
    const all = given.reduce((sum, flux) => sum + flux, 0);
    return [
      ...given.map((flux, i) => -flux / (rugs[i]?.dryMassKg ?? 1)),
      (all - taken - exchanged) / room.volumeM3,
    ];
  };
  const moved = (state: readonly number[], by: readonly number[], length: number) =>
    state.map((value, i) => value + length * (by[i] ?? 0));
  let state: readonly number[] = [
    ...rugs.map(({ startRegain = 0 }) => startRegain),
    (room.startRh ?? 0) * saturated,
  ];
  const reached = rugs.map(() => Number.NaN);
  for (let time = 0; time < scenario.hours * 3600 - 1; time += stepS) {
    const a = ratesOf(time, state);
    const b = ratesOf(time + stepS / 2, moved(state, a, stepS / 2));
    const c = ratesOf(time + stepS / 2, moved(state, b, stepS / 2));
    const d = ratesOf(time + stepS, moved(state, c, stepS));
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
  return { reached, endRegain: state.slice(0, -1), endRh: (state.at(-1) ?? Number.NaN) / saturated };
}

const cases: readonly (readonly [string, DryScenario, number])[] = [
  ['one rug in a warm room', dryingScenario({ hours: 24, rugs: [dryingRug({ targetRegain: 0.16 })] }), 120],
  [
    'three rugs hung one after the other, of other fibres',
    dryingScenario({
      hours: 30,
      room: { volumeM3: 150, airC: 27, startRh: 0.5, airSpeed: 0.8, airChangesPerHour: 1.5 },
      outside: { airC: 8, rh: 0.8 },
      dehumidifiers: [{ litresPerDay: 60, ratedC: 27, ratedRh: 0.6, type: 'desiccant' }],
      rugs: [
        dryingRug({ targetRegain: 0.17, startRegain: 0.8 }),
        dryingRug({
          id: 'b',
          targetRegain: 0.15,
          fibres: { silk: 0.5, cotton: 0.5 },
          areaM2: 3,
          dryMassKg: 6,
          hungAtHour: 4,
        }),
        dryingRug({
          id: 'c',
          targetRegain: 0.16,
          areaM2: 2,
          dryMassKg: 3,
          faces: 1.5,
          criticalRegain: 0.5,
          resistance: 80,
          hungAtHour: 9,
        }),
      ],
    }),
    120,
  ],
  [
    'a damp cool room that hardly dries',
    dryingScenario({
      hours: 40,
      room: { volumeM3: 60, airC: 18, startRh: 0.6, airSpeed: 0.3, airChangesPerHour: 3 },
      dehumidifiers: [{ litresPerDay: 30, ratedC: 30, ratedRh: 0.8 }],
      outside: { airC: 10, rh: 0.7 },
      rugs: [dryingRug({ areaM2: 2, dryMassKg: 5, startRegain: 0.7, targetRegain: 0.25 })],
    }),
    120,
  ],
];

describe('a reference integration by other means agrees to 0.5 %', () => {
  test.each(cases)('on %s', (_name, scenario, stepS) => {
    const other = hoursByRungeKutta(scenario, stepS);
    const answer = dryForecast(scenario);
    expect(answer.ok).toBe(true);
    if (!answer.ok) return;
    for (const [i, { hoursToTarget, endRegain }] of answer.value.rugs.entries()) {
      const expected = other.reached[i] ?? Number.NaN;
      expect(Math.abs((hoursToTarget ?? Number.NaN) / expected - 1)).toBeLessThan(0.005);
      expect(Math.abs(endRegain / (other.endRegain[i] ?? Number.NaN) - 1)).toBeLessThan(0.005);
    }
    expect(Math.abs(answer.value.endRh / other.endRh - 1)).toBeLessThan(0.005);
  });
});
