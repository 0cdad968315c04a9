import { airAt, secondsPerHour, vapourIsGivenUntil } from './givenAir.ts';
import type { PreparedRoom } from './preparedRoom.ts';
import { backgroundStepS } from './roomSystem.ts';
import {
  type Leaning,
  lean,
  leanings,
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

/** One leaning of a rug, likely in itself and near a value of the room's factor. */
function drawNear(
  { leanings: all, weights }: WeightedLeanings,
  room: number,
  width: number,
  random: Random,
): Leaning {
  const near = all.map(
    (leaning, k) => (weights[k] ?? 0) * Math.exp(-0.5 * (((leaning[0] ?? 0) - room) / width) ** 2),
  );
  const sum = near.reduce((total, weight) => total + weight, 0);
  const use = sum > 1e-12 ? near : weights;
  let left = random() * (sum > 1e-12 ? sum : 1);
  const found = all.findIndex((_, k) => {
    left -= use[k] ?? 0;
    return left < 0;
  });
  return all[found === -1 ? all.length - 1 : found] ?? new Array<number>(leanings).fill(0);
}

/** One leaning of a rug by weight alone. */
const drawAny = (belief: WeightedLeanings, random: Random): Leaning =>
  drawNear(belief, 0, Number.POSITIVE_INFINITY, random);

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
  return room.rugs.map((_, rug) => {
    const totals = lost.map((of) =>
      hours
        .slice(1)
        .map((_hour, h) => of.reduce((sum, one, i) => (i === rug ? sum : sum + (one[h] ?? 0)), 0)),
    );
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

const meanLeaning = ({ leanings: all, weights }: WeightedLeanings): Leaning =>
  Array.from({ length: leanings }, (_, i) =>
    all.reduce((sum, leaning, k) => sum + (leaning[i] ?? 0) * (weights[k] ?? 0), 0),
  );

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
    return Array.from({ length: many }, () => {
      const unknowns = emptyUnknowns(room.rugs.length);
      const [only] = read.length === 1 ? read : [];
      const onlyLeaning = only === undefined ? null : drawAny(only, random);
      const factor = onlyLeaning?.[0] ?? shared.mean + spread * normal(random);
      for (const [i, rug] of room.rugs.entries()) {
        const belief = of[i] ?? null;
        const leaning =
          belief === null
            ? [factor, ...Array.from({ length: leanings - 1 }, () => normal(random))]
            : (onlyLeaning ?? drawNear(belief, factor, spread / 2, random));
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
  // A second round where rugs share the air, since the others’ water was first reckoned from what was only guessed of them.
  for (let round = 0; last > 0 && round < (sharesAir ? 2 : 1); round++) {
    const others = sharesAir ? othersOf(room, drawsOf(beliefs, courses), last) : [];
    beliefs = room.rugs.map((rug, i) => {
      const of = readings[i] ?? [];
      return of.length === 0 ? null : rugBelief(room, rug, of, others[i] ?? null, count, random);
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
