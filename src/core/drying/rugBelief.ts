import { CholeskyDecomposition, inverse, Matrix } from 'ml-matrix';
import settings from '../../../data/drying/settings.json' with { type: 'json' };
import { secondsPerHour } from './givenAir.ts';
import type { PreparedRoom, PreparedRug } from './preparedRoom.ts';
import { type Misfit, misfitOf } from './readingLikelihood.ts';
import type { Background } from './roomSystem.ts';
import { makeRoomRunner } from './runRoom.ts';
import type { DryReading } from './scenario.ts';
import { normal, type Random } from './seededRandom.ts';
import { emptyUnknowns, type Unknowns } from './unknowns.ts';

/**
 * The unknowns of a rug as distances from their first guess, each in its own spread of the logarithm:
 * the room's factor, starting water, resistance, critical regain, dry mass, and the water of the other rugs.
 */
export type Leaning = readonly number[];
export const leanings = 6;

/** Leanings with the weight each has after the readings; weights add up to 1. */
export interface WeightedLeanings {
  readonly leanings: readonly Leaning[];
  readonly weights: readonly number[];
}

export interface JudgedReading {
  readonly reading: DryReading;
  /** Distance from the model that fits the other readings best, in spreads of the noise. */
  readonly spreads: number;
  /** Left out of the belief, since it lies too far from everything else. */
  readonly outlier: boolean;
}

export interface RugBelief extends WeightedLeanings {
  /** The likeliest leaning, around which the others were drawn. */
  readonly best: Leaning;
  readonly readings: readonly JudgedReading[];
  /** Half of the readings or more had to be left out. */
  readonly contradicted: boolean;
}

/** Spreads of the logarithms, in the order of a leaning. */
export const spreadsOf = ({ spreads }: PreparedRug, gSpread: number): readonly number[] => [
  gSpread,
  spreads.start,
  spreads.resistance,
  spreads.critical,
  spreads.dryMass,
];

/** Water that the other rugs of a room give to its air, and how well that is known. */
export interface Others {
  readonly given: Background;
  /** Where the room's factor leans for that water, and how its logarithm goes with it: quick air dries them too. */
  readonly atRoom: number;
  readonly byRoom: number;
  /** Spread of the logarithm that the room's factor leaves. */
  readonly spread: number;
}

/** Sets the unknowns of one rug of a run by its leaning; the others' water only where that has a spread. */
export function lean(
  unknowns: Unknowns,
  at: number,
  rug: PreparedRug,
  { g, gSpread }: Pick<PreparedRoom, 'g' | 'gSpread'>,
  leaning: Leaning,
  others: Others | null = null,
): void {
  const factor = spreadsOf(rug, gSpread).map((spread, i) => Math.exp(spread * (leaning[i] ?? 0)));
  const [room = 1, start = 1, resistance = 1, critical = 1, mass = 1] = factor;
  unknowns.others =
    others === null
      ? 1
      : Math.exp(others.byRoom * ((leaning[0] ?? 0) - others.atRoom) + others.spread * (leaning[5] ?? 0));
  unknowns.g[at] = g * rug.g * room;
  unknowns.startRegain[at] = rug.startRegain * start;
  unknowns.resistance[at] = rug.resistance * resistance;
  unknowns.criticalRegain[at] = rug.criticalRegain * critical;
  unknowns.dryMass[at] = mass;
}

/**
 * A room until a time, with some of its rugs.
 *
 * @param room - prepared
 * @param rugs - those that hang in the run
 * @param seconds - end of the run
 * @source none: the room's own data cut off
 */
export function roomUntil(room: PreparedRoom, rugs: readonly PreparedRug[], seconds: number): PreparedRoom {
  const jumps = [0, seconds, ...room.jumps.filter((time) => time < seconds)];
  return { ...room, seconds, rugs, jumps: [...new Set(jumps)].sort((a, b) => a - b) };
}

const squares = (values: readonly number[]): number => values.reduce((sum, value) => sum + value * value, 0);

interface Fit {
  readonly leaning: Leaning;
  readonly objective: number;
  readonly misfits: readonly Misfit[];
  /** Slopes of the misfits [reading][unknown]. */
  readonly slopes: readonly (readonly number[])[];
}

const slopeStep = 0.05;
const mostRounds = 8;
const furthest = 6;

/** Everything as it was first guessed. */
export const noLeaning: Leaning = new Array<number>(leanings).fill(0);
const ofDryMass = 4;

const isMassGuessed = ({ spreads }: PreparedRug): boolean => spreads.dryMass >= settings.guessedMassSpread;

/** Where to begin the search: a dry mass that is only guessed may lie so far off that the way there is crooked. */
const beginningsOf = (rug: PreparedRug): readonly Leaning[] =>
  isMassGuessed(rug) ? [-2, -1, 0, 1, 2].map((away) => noLeaning.with(ofDryMass, away)) : [noLeaning];

/** And then water and dry mass lie along a bend that few draws around the likeliest would miss. */
const drawsForGuess = 4;

/** Damped Gauss-Newton from the likeliest of some beginnings to the leaning that readings and first guess bear best. */
function bestLeaning(
  misfitsAt: (leaning: Leaning) => readonly Misfit[],
  beginnings: readonly Leaning[],
): Fit {
  const objectiveOf = (leaning: Leaning, misfits: readonly Misfit[]) =>
    squares(leaning) + squares(misfits.map(({ spreads }) => spreads));
  const slopesAt = (leaning: Leaning, misfits: readonly Misfit[]) => {
    const moved = leaning.map((_, i) =>
      misfitsAt(leaning.map((value, j) => (i === j ? value + slopeStep : value))),
    );
    return misfits.map(({ spreads }, k) => moved.map((of) => ((of[k]?.spreads ?? 0) - spreads) / slopeStep));
  };
  const begun = beginnings.map((leaning) => {
    const misfits = misfitsAt(leaning);
    return { leaning, misfits, objective: objectiveOf(leaning, misfits) };
  });
  let { leaning, misfits, objective } = begun.reduce((a, b) => (b.objective < a.objective ? b : a));
  let slopes = slopesAt(leaning, misfits);
  let damping = 0;
  for (let round = 0; round < mostRounds; round++) {
    const pull = leaning.map((value, i) =>
      misfits.reduce((sum, { spreads }, k) => sum + spreads * (slopes[k]?.[i] ?? 0), value),
    );
    const curve = informationOf(slopes);
    for (let i = 0; i < leanings; i++) curve.set(i, i, curve.get(i, i) * (1 + damping));
    const move = inverse(curve).mmul(Matrix.columnVector([...pull]));
    // No way leads through what nobody would believe; beyond it a run would take forever.
    const next = leaning.map((value, i) => Math.min(furthest, Math.max(-furthest, value - move.get(i, 0))));
    const found = misfitsAt(next);
    const reached = objectiveOf(next, found);
    if (reached < objective) {
      const gained = objective - reached;
      [leaning, misfits, objective] = [next, found, reached];
      slopes = slopesAt(leaning, misfits);
      damping = damping < 0.1 ? 0 : damping / 5;
      if (gained < 0.01) break;
    } else if (damping > 100) break;
    else damping = damping === 0 ? 0.3 : damping * 4;
  }
  return { leaning, objective, misfits, slopes };
}

/** Information of the readings and the first guess together [unknowns × unknowns]. */
function informationOf(slopes: Fit['slopes']): Matrix {
  const curve = Matrix.eye(leanings, leanings);
  for (const row of slopes) {
    for (let i = 0; i < leanings; i++) {
      for (let j = 0; j < leanings; j++) curve.set(i, j, curve.get(i, j) + (row[i] ?? 0) * (row[j] ?? 0));
    }
  }
  return curve;
}

/** Tails of the proposal: heavy enough that no likely leaning is missed. */
const tailFreedom = 6;

/** Where leanings are drawn, and how widely: around the likeliest by its curve, or as earlier draws lay. */
interface Proposal {
  readonly centre: Leaning;
  readonly covariance: Matrix;
}

const proposalOf = (best: Fit): Proposal => ({
  centre: best.leaning,
  covariance: inverse(informationOf(best.slopes)),
});

/** Draws made again lie where those before had weight, somewhat wider. */
const wider = 1.5;
const proposalAs = ({ leanings: all, weights }: WeightedLeanings): Proposal => {
  const mean = (of: (leaning: Leaning) => number) =>
    all.reduce((sum, leaning, k) => sum + (weights[k] ?? 0) * of(leaning), 0);
  const centre = noLeaning.map((_, i) => mean((leaning) => leaning[i] ?? 0));
  const covariance = Matrix.zeros(leanings, leanings);
  for (let i = 0; i < leanings; i++) {
    for (let j = 0; j < leanings; j++) {
      const off = (leaning: Leaning, at: number) => (leaning[at] ?? 0) - (centre[at] ?? 0);
      // A trace of the first guess, lest few heavy draws leave no width at all.
      covariance.set(i, j, wider * mean((one) => off(one, i) * off(one, j)) + (i === j ? 1e-4 : 0));
    }
  }
  return { centre, covariance };
};

/** Draws leanings and weighs each by how well it bears readings and first guess. */
function weigh(
  { centre, covariance }: Proposal,
  misfitsAt: (leaning: Leaning) => readonly Misfit[],
  count: number,
  random: Random,
): WeightedLeanings {
  const root = new CholeskyDecomposition(covariance.clone().add(covariance.transpose()).div(2))
    .lowerTriangularMatrix;
  const drawn = Array.from({ length: count }, () => {
    const z = Array.from({ length: leanings }, () => normal(random));
    const chi = Array.from({ length: tailFreedom }, () => normal(random) ** 2).reduce(
      (sum, value) => sum + value,
      0,
    );
    const stretch = Math.sqrt(tailFreedom / chi);
    const leaning = centre.map(
      (value, i) => value + stretch * z.reduce((sum, part, j) => sum + root.get(i, j) * part, 0),
    );
    const proposed =
      (-(tailFreedom + leanings) / 2) * Math.log(1 + (stretch * stretch * squares(z)) / tailFreedom);
    const logLikelihood = misfitsAt(leaning).reduce((sum, misfit) => sum + misfit.logLikelihood, 0);
    return { leaning, logWeight: logLikelihood - squares(leaning) / 2 - proposed };
  });
  const most = Math.max(...drawn.map(({ logWeight }) => logWeight));
  const raw = drawn.map(({ logWeight }) => Math.exp(logWeight - most));
  const sum = raw.reduce((total, weight) => total + weight, 0);
  return { leanings: drawn.map(({ leaning }) => leaning), weights: raw.map((weight) => weight / sum) };
}

/**
 * What the readings of one rug say of its unknowns. Readings that stand against all others are marked and
 * left out, not averaged in.
 *
 * @param room - prepared
 * @param rug - one of its rugs
 * @param readings - in rising time
 * @param others - the other rugs of its air, or null where there are none
 * @param count - leanings to draw
 * @param random - source of chances
 * @param before - the likeliest leaning of an earlier round: the search may begin there
 * @returns weighted leanings, each reading judged, and whether the readings contradict the model
 * @source tierney-kadane-1986 for the proposal; weights by Bayes’ rule, noise and first guesses from data/drying/settings.json
 */
export function rugBelief(
  room: PreparedRoom,
  rug: PreparedRug,
  readings: readonly DryReading[],
  others: Others | null,
  count: number,
  random: Random,
  before: Leaning = noLeaning,
): RugBelief {
  const until = Math.max(...readings.map(({ hour }) => hour * secondsPerHour), secondsPerHour);
  const run = makeRoomRunner(roomUntil(room, [rug], until), others?.given ?? null);
  const hours = [...new Set(readings.map(({ hour }) => hour))].sort((a, b) => a - b);
  const unknowns = emptyUnknowns(1);
  const misfitsOf = (of: readonly DryReading[]) => (leaning: Leaning) => {
    lean(unknowns, 0, rug, room, leaning, others);
    const [regains] = run(unknowns, hours).regains;
    const dryMass = unknowns.dryMass[0] ?? 1;
    return of.map((reading) =>
      misfitOf(reading, rug, regains?.[hours.indexOf(reading.hour)] ?? Number.NaN, dryMass),
    );
  };
  const beginnings = before === noLeaning ? beginningsOf(rug) : [before];
  const limit = settings.noise.outlierSpreads ** 2;
  let kept = readings;
  let best = bestLeaning(misfitsOf(kept), beginnings);
  while (best.objective > limit && kept.length > readings.length / 2) {
    const without = kept.map((reading) => {
      const others = kept.filter((one) => one !== reading);
      return { others, best: bestLeaning(misfitsOf(others), beginnings) };
    });
    const least = without.reduce((a, b) => (b.best.objective < a.best.objective ? b : a));
    if (best.objective - least.best.objective < limit) break;
    ({ others: kept, best } = least);
  }
  const first = weigh(proposalOf(best), misfitsOf(kept), count, random);
  const weighed = isMassGuessed(rug)
    ? weigh(proposalAs(first), misfitsOf(kept), drawsForGuess * count, random)
    : first;
  const judged = misfitsOf(readings)(best.leaning);
  return {
    ...weighed,
    best: best.leaning,
    readings: readings.map((reading, i) => ({
      reading,
      spreads: judged[i]?.spreads ?? Number.NaN,
      outlier: !kept.includes(reading),
    })),
    contradicted:
      (readings.length - kept.length) * 2 >= readings.length || best.objective > limit + kept.length,
  };
}
