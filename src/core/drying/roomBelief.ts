import { airAt, secondsPerHour, vapourIsGivenUntil } from './givenAir.ts';
import type { PreparedRoom } from './preparedRoom.ts';
import { backgroundStepS } from './roomSystem.ts';
import {
  type Leaning,
  lean,
  leanings,
  noLeaning,
  type Others,
  type RugBelief,
  roomUntil,
  rugBelief,
  type WeightedLeanings,
} from './rugBelief.ts';
import { makeRoomRunner } from './runRoom.ts';
import type { DryReading } from './scenario.ts';
import { normal, type Random } from './seededRandom.ts';
import { emptyUnknowns, knownUnknowns, type Unknowns } from './unknowns.ts';

/** Joint draws of what is not known of a room's rugs, and what the readings were worth. */
export interface RoomBelief {
  readonly draws: readonly Unknowns[];
  /** The likeliest unknowns. */
  readonly likely: Unknowns;
  /** By rug; null where none were taken. */
  readonly rugs: readonly (RugBelief | null)[];
  /** The room's factor: middle and the bounds of 80 %. */
  readonly g: { readonly likely: number; readonly least: number; readonly most: number };
}

/** A normal belief about the logarithm of the room's factor, in its own spreads. */
interface Normal {
  readonly mean: number;
  readonly variance: number;
}

const ofRoom = ({ leanings: all, weights }: WeightedLeanings): Normal => {
  const mean = all.reduce((sum, leaning, k) => sum + (leaning[0] ?? 0) * (weights[k] ?? 0), 0);
  const variance = all.reduce(
    (sum, leaning, k) => sum + ((leaning[0] ?? 0) - mean) ** 2 * (weights[k] ?? 0),
    0,
  );
  return { mean, variance: Math.max(variance, 1e-4) };
};

/** All rugs' word on the room's factor: each adds what it learnt beyond the first guess, which is of mean 0 and spread 1. */
function combined(beliefs: readonly WeightedLeanings[]): Normal {
  const learnt = beliefs.map(ofRoom).map(({ mean, variance }) => {
    const information = Math.max(0, 1 / variance - 1);
    return { information, pull: information > 0 ? mean / variance : 0 };
  });
  const information = learnt.reduce((sum, one) => sum + one.information, 1);
  return { mean: learnt.reduce((sum, one) => sum + one.pull, 0) / information, variance: 1 / information };
}

const meanLeaning = ({ leanings: all, weights }: WeightedLeanings): Leaning =>
  Array.from({ length: leanings }, (_, i) =>
    all.reduce((sum, leaning, k) => sum + (leaning[i] ?? 0) * (weights[k] ?? 0), 0),
  );

/** A rug's belief made ready to be asked what it leans to at a value of the room's factor. */
interface AtFactor extends WeightedLeanings {
  /** Spread of its own word on the factor. */
  readonly spread: number;
  /** How each leaning goes with the factor, straight. */
  readonly byFactor: Leaning;
}

function atFactor(belief: WeightedLeanings): AtFactor {
  const { leanings: all, weights } = belief;
  const { variance } = ofRoom(belief);
  const means = meanLeaning(belief);
  const byFactor = means.map((mean, i) => {
    const covariance = all.reduce(
      (sum, one, k) => sum + (weights[k] ?? 0) * ((one[0] ?? 0) - (means[0] ?? 0)) * ((one[i] ?? 0) - mean),
      0,
    );
    return covariance / variance;
  });
  return { leanings: all, weights, spread: Math.sqrt(variance), byFactor };
}

/** The place of one of some weights, by chance. */
function placeBy(weights: ArrayLike<number>, sum: number, random: Random): number {
  let left = random() * sum;
  for (let k = 0; k < weights.length - 1; k++) {
    left -= weights[k] ?? 0;
    if (left < 0) return k;
  }
  return weights.length - 1;
}

/**
 * One leaning of a rug at a value of the room's factor: one that was drawn near it, moved there along the
 * straight line by which its other unknowns go with the factor, so that it still bears the readings.
 *
 * @source beaumont-2002, local linear regression: draws adjusted to a value by weighted regression
 */
function drawAt({ leanings: all, weights, spread, byFactor }: AtFactor, factor: number, random: Random) {
  const near = all.map(
    (leaning, k) => (weights[k] ?? 0) * Math.exp(-2 * (((leaning[0] ?? 0) - factor) / spread) ** 2),
  );
  const sum = near.reduce((total, weight) => total + weight, 0);
  // So far off that none was drawn near it: any, moved there.
  const found = all[sum > 1e-9 ? placeBy(near, sum, random) : placeBy(weights, 1, random)] ?? noLeaning;
  const away = factor - (found[0] ?? 0);
  return found.map((value, i) => (i === 0 ? factor : value + (byFactor[i] ?? 0) * away));
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Courses from which the others' water and its spread are taken. */
const courses = 24;

/** For each rug, what the others give to the air until a time, over joint draws of the room. */
function othersOf(room: PreparedRoom, draws: readonly Unknowns[], seconds: number): readonly Others[] {
  const length = Math.ceil(seconds / backgroundStepS) + 1;
  const hours = Array.from({ length }, (_, step) => (step * backgroundStepS) / secondsPerHour);
  const end = (length - 1) * backgroundStepS;
  const run = makeRoomRunner(roomUntil(room, room.rugs, end));
  const lost = draws.map((unknowns) => {
    const { regains } = run(unknowns, hours);
    return room.rugs.map(({ dryMassKg }, i) =>
      hours.slice(1).map((_, h) => {
        const fall = (regains[i]?.[h] ?? 0) - (regains[i]?.[h + 1] ?? 0);
        return (dryMassKg * (unknowns.dryMass[i] ?? 1) * fall) / backgroundStepS;
      }),
    );
  });
  const reckoned = room.g * (room.rugs[0]?.g ?? 1);
  const rooms = draws.map(({ g }) => Math.log((g[0] ?? reckoned) / reckoned) / room.gSpread);
  const ofAll = lost.map((of) =>
    hours.slice(1).map((_hour, h) => of.reduce((sum, one) => sum + (one[h] ?? 0), 0)),
  );
  return room.rugs.map((_, rug) => {
    const totals = lost.map((of, d) => (ofAll[d] ?? []).map((sum, h) => sum - (of[rug]?.[h] ?? 0)));
    const mean = hours.slice(1).map((_hour, h) => meanOf(totals.map((one) => one[h] ?? 0)));
    const given = hours.map(
      (_hour, h) => ((mean[h - 1] ?? mean[h] ?? 0) + (mean[h] ?? mean[h - 1] ?? 0)) / 2,
    );
    const whole = totals.map((one) => Math.log(Math.max(1e-9, meanOf(one))));
    const [atRoom, middle] = [meanOf(rooms), meanOf(whole)];
    const byRoom =
      meanOf(rooms.map((factor, d) => (factor - atRoom) * ((whole[d] ?? 0) - middle))) /
      Math.max(1e-6, meanOf(rooms.map((factor) => (factor - atRoom) ** 2)));
    const rest = rooms.map((factor, d) => ((whole[d] ?? 0) - middle - byRoom * (factor - atRoom)) ** 2);
    return { given, atRoom, byRoom, spread: Math.min(1, Math.sqrt(meanOf(rest))) };
  });
}

/**
 * What is believed of a room's unknowns after all readings. Each rug is judged with the others' water as
 * it stood in the likeliest course; the room's factor is learnt from all of them together.
 *
 * @param room - prepared
 * @param readings - by rug, in rising time; an empty list where none were taken
 * @param count - joint draws
 * @param random - source of chances
 * @source none: Bayes’ rule over rugBelief; first guesses from data/drying/settings.json
 */
export function roomBelief(
  room: PreparedRoom,
  readings: readonly (readonly DryReading[])[],
  count: number,
  random: Random,
): RoomBelief {
  const drawsOf = (of: readonly (RugBelief | null)[], many: number): readonly Unknowns[] => {
    const read = of.filter((belief) => belief !== null);
    const shared = combined(read);
    const spread = Math.sqrt(shared.variance);
    const asked = of.map((belief) => (belief === null ? null : atFactor(belief)));
    const [only] = read.length === 1 ? read : [];
    return Array.from({ length: many }, () => {
      const unknowns = emptyUnknowns(room.rugs.length);
      const onlyLeaning =
        only === undefined ? null : (only.leanings[placeBy(only.weights, 1, random)] ?? noLeaning);
      const factor = onlyLeaning?.[0] ?? shared.mean + spread * normal(random);
      for (const [i, rug] of room.rugs.entries()) {
        const belief = asked[i] ?? null;
        const leaning =
          belief === null
            ? [factor, ...Array.from({ length: leanings - 1 }, () => normal(random))]
            : (onlyLeaning ?? drawAt(belief, factor, random));
        lean(unknowns, i, rug, room, leaning);
      }
      if (warms) unknowns.walls = Math.exp(room.heat.wallsSpread * normal(random));
      return unknowns;
    });
  };
  const warms = airAt(room.air, room.seconds).airC === null;
  const last = Math.max(0, ...readings.flat().map(({ hour }) => hour * secondsPerHour));
  const sharesAir = room.rugs.length > 1 && !vapourIsGivenUntil(room.air, last);
  let beliefs: readonly (RugBelief | null)[] = room.rugs.map(() => null);
  // A second round where rugs share the air, since the others’ water was first reckoned from what was only
  // guessed of them; the first needs no more draws than there are courses of it, some to spare.
  const rounds = last === 0 ? [] : sharesAir ? [2 * courses, count] : [count];
  for (const draws of rounds) {
    const others = sharesAir ? othersOf(room, drawsOf(beliefs, courses), last) : [];
    beliefs = room.rugs.map((rug, i) => {
      const of = readings[i] ?? [];
      return of.length === 0
        ? null
        : rugBelief(room, rug, of, others[i] ?? null, draws, random, beliefs[i]?.best);
    });
  }
  const shared = combined(beliefs.filter((belief) => belief !== null));
  const likely = knownUnknowns(room);
  for (const [i, rug] of room.rugs.entries()) {
    const belief = beliefs[i] ?? null;
    lean(likely, i, rug, room, belief === null ? [shared.mean] : meanLeaning(belief));
  }
  const spread = Math.sqrt(shared.variance);
  const g = (at: number) => room.g * Math.exp(room.gSpread * (shared.mean + at * spread));
  return {
    draws: drawsOf(beliefs, count),
    likely,
    rugs: beliefs,
    g: { likely: g(0), least: g(-1.2816), most: g(1.2816) },
  };
}
