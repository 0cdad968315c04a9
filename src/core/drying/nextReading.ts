import settings from '../../../data/drying/settings.json' with { type: 'json' };
import { readTable } from '../air/index.ts';
import type { PreparedRug } from './preparedRoom.ts';
import { chancesOfTouches } from './readingLikelihood.ts';
import { type RoomCourse, regainsAt } from './runRoom.ts';
import { touches } from './scenario.ts';
import type { Unknowns } from './unknowns.ts';

/** What a reading would tell most about. */
export const tellings = ['starting-water', 'pace', 'pile', 'dry-mass'] as const;
export type Telling = (typeof tellings)[number];

export type NextKind = 'massKg' | 'pocketRh' | 'meterRegain' | 'touch';

/** A reading that would narrow the forecast, and by how much it may be expected to. */
export interface NextReading {
  readonly kind: NextKind;
  readonly hour: number;
  /** Width of the 80 % interval of the finish [h]. */
  readonly widthNow: number;
  readonly widthAfter: number;
  readonly tells: Telling;
}

const meanOf = (values: ArrayLike<number>): number => {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] ?? 0;
  return sum / values.length;
};

/** Mean of the products of two deviations from their means. */
function covariance(a: ArrayLike<number>, b: ArrayLike<number>): number {
  const [middleA, middleB] = [meanOf(a), meanOf(b)];
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += ((a[i] ?? 0) - middleA) * ((b[i] ?? 0) - middleB);
  return sum / a.length;
}

/** What a kind of reading would show in each draw, and the spread of its noise; null for a hand, which sorts. */
const shownBy = {
  massKg: (rug, regain, dryMass) => rug.dryMassKg * dryMass * (1 + regain),
  pocketRh: (rug, regain) => readTable(rug.desorption.activity, regain),
  meterRegain: (_rug, regain) => regain,
} satisfies Readonly<
  Record<Exclude<NextKind, 'touch'>, (rug: PreparedRug, regain: number, dryMass: number) => number>
>;

const noiseOf = (kind: Exclude<NextKind, 'touch'>, shown: ArrayLike<number>): number =>
  kind === 'massKg'
    ? Math.hypot(settings.noise.massShare * meanOf(shown), settings.noise.massKg)
    : settings.noise[kind];

/** Share of the finish's variance that a hand's word is expected to leave. */
function leftByTouch(regains: Float64Array, ends: Float64Array, middle: number): number {
  const chances = new Float64Array(touches.length);
  const [said, ofEnds, ofSquares] = [0, 1, 2].map(() => new Float64Array(touches.length)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  let whole = 0;
  for (let d = 0; d < regains.length; d++) {
    const off = (ends[d] ?? 0) - middle;
    whole += off * off;
    chancesOfTouches(regains[d] ?? 0, chances);
    for (let t = 0; t < chances.length; t++) {
      const chance = chances[t] ?? 0;
      said[t] = (said[t] ?? 0) + chance;
      ofEnds[t] = (ofEnds[t] ?? 0) + chance * off;
      ofSquares[t] = (ofSquares[t] ?? 0) + chance * off * off;
    }
  }
  const left = said.reduce(
    (sum, chance, t) => sum + (ofSquares[t] ?? 0) - (ofEnds[t] ?? 0) ** 2 / Math.max(1e-9, chance),
    0,
  );
  return whole <= 0 ? 1 : left / whole;
}

/** Which unknown links a reading with the finish: shown by the one and deciding the other. */
function tellsOf(at: number, draws: readonly Unknowns[], shown: ArrayLike<number>, ends: ArrayLike<number>) {
  const of = (value: (unknowns: Unknowns) => number) =>
    Float64Array.from(draws, (one) => Math.log(value(one)));
  const link = (unknown: Float64Array): number =>
    Math.abs(covariance(unknown, shown) * covariance(unknown, ends)) /
    Math.max(1e-12, covariance(unknown, unknown));
  const links: Readonly<Record<Telling, number>> = {
    'starting-water': link(of(({ startRegain }) => startRegain[at] ?? 1)),
    pace: link(of(({ g }) => g[at] ?? 1)),
    pile:
      link(of(({ resistance }) => resistance[at] ?? 1)) +
      link(of(({ criticalRegain }) => criticalRegain[at] ?? 1)),
    'dry-mass': link(of(({ dryMass }) => dryMass[at] ?? 1)),
  };
  return tellings.reduce((best, one) => (links[one] > links[best] ? one : best));
}

const { kinds, hoursAhead, soonEnough, leastGain } = settings.nextReading;

/**
 * Which reading of a rug would narrow its forecast most, by kind: the soonest hour that does nearly as
 * well as the best one.
 *
 * @param rug - prepared
 * @param at - its place in the room
 * @param draws - of the unknowns
 * @param courses - of the draws
 * @param hours - at which the courses were sampled
 * @param afterHour - readings before this are no choice any more
 * @param widthNow - of the 80 % interval of the finish [h]
 * @returns by kind, the most telling first; empty where nothing narrows it
 * @source gelman-bda3 for the expected variance after a reading, of a normal finish given a normal reading; a hand’s word by its chances
 */
export function nextReadings(
  rug: PreparedRug,
  at: number,
  draws: readonly Unknowns[],
  courses: readonly RoomCourse[],
  hours: readonly number[],
  afterHour: number,
  widthNow: number,
): readonly NextReading[] {
  const end = hours[hours.length - 1] ?? 0;
  const ends = Float64Array.from(courses, ({ targetAtHour }) => targetAtHour[at] ?? end);
  const whole = covariance(ends, ends);
  const middle = meanOf(ends);
  const candidates = hours.flatMap((hour, k) =>
    hour > afterHour && hour <= afterHour + hoursAhead && hour < middle ? [{ hour, k }] : [],
  );
  if (whole <= 0 || widthNow <= 0) return [];
  const found = candidates.flatMap(({ hour, k }) => {
    const regains = regainsAt(courses, at, k, new Float64Array(courses.length));
    return kinds.map((kind) => {
      const of = kind as NextKind;
      if (of === 'touch') return { hour, kind: of, shown: regains, left: leftByTouch(regains, ends, middle) };
      const shown = regains.map((regain, d) => shownBy[of](rug, regain, draws[d]?.dryMass[at] ?? 1));
      const told = covariance(shown, ends) ** 2 / (covariance(shown, shown) + noiseOf(of, shown) ** 2);
      return { hour, kind: of, shown, left: Math.max(0, 1 - told / whole) };
    });
  });
  return kinds
    .flatMap((kind): readonly NextReading[] => {
      const ofKind = found.filter((one) => one.kind === kind);
      const least = Math.min(...ofKind.map(({ left }) => left));
      const chosen = ofKind.find(({ left }) => Math.sqrt(left) <= Math.sqrt(least) + soonEnough);
      if (chosen === undefined || chosen.left > (1 - leastGain) ** 2) return [];
      const { hour, kind: of, shown, left } = chosen;
      const tells = tellsOf(at, draws, shown, ends);
      return [{ kind: of, hour, widthNow, widthAfter: widthNow * Math.sqrt(left), tells }];
    })
    .sort((a, b) => a.widthAfter - b.widthAfter);
}
