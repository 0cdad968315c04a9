import settings from '../../../data/drying/settings.json' with { type: 'json' };
import type { PreparedRoom } from './preparedRoom.ts';
import { secondsPerHour } from './preparedRoom.ts';
import { type Background, knownUnknowns, type Unknowns } from './roomSystem.ts';
import {
  emptyUnknowns,
  type Leaning,
  lean,
  leanings,
  type RugBelief,
  rugBelief,
  type WeightedLeanings,
} from './rugBelief.ts';
import { makeRoomRunner } from './runRoom.ts';
import type { DryReading } from './scenario.ts';
import { normal, type Random } from './seededRandom.ts';

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

/** Water each rug gives to the air by the hour [kg/s], for what the others of the room are to one of them. */
function giving(room: PreparedRoom, unknowns: Unknowns): readonly (readonly number[])[] {
  const hours = Array.from({ length: Math.floor(room.seconds / secondsPerHour) + 1 }, (_, hour) => hour);
  const { regains } = makeRoomRunner(room)(unknowns, hours);
  return room.rugs.map((rug, i) => {
    const mass = rug.dryMassKg * (unknowns.dryMass[i] ?? 1);
    const lost = hours
      .slice(1)
      .map((_, h) => (mass * ((regains[i]?.[h] ?? 0) - (regains[i]?.[h + 1] ?? 0))) / secondsPerHour);
    return hours.map((_, h) => ((lost[h - 1] ?? lost[h] ?? 0) + (lost[h] ?? lost[h - 1] ?? 0)) / 2);
  });
}

const withoutOne = (given: readonly (readonly number[])[], rug: number): Background =>
  (given[rug] ?? []).map((_, hour) =>
    given.reduce((sum, of, i) => (i === rug ? sum : sum + (of[hour] ?? 0)), 0),
  );

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
  const judgeAll = (unknowns: Unknowns): readonly (RugBelief | null)[] => {
    const given = room.rugs.length > 1 && !room.airIsMeasured ? giving(room, unknowns) : null;
    return room.rugs.map((rug, i) => {
      const of = readings[i] ?? [];
      if (of.length === 0) return null;
      return rugBelief(room, rug, of, given === null ? null : withoutOne(given, i), count, random);
    });
  };
  const likeliest = (of: readonly (RugBelief | null)[]): Unknowns => {
    const unknowns = knownUnknowns(room);
    const { mean } = combined(of.filter((belief) => belief !== null));
    for (const [i, rug] of room.rugs.entries()) {
      const belief = of[i] ?? null;
      lean(unknowns, i, rug, room.g, belief === null ? [mean, 0, 0, 0, 0] : meanLeaning(belief));
    }
    return unknowns;
  };
  const any = readings.some((of) => of.length > 0);
  let beliefs: readonly (RugBelief | null)[] = room.rugs.map(() => null);
  // A second round, since the others’ water was first reckoned from what was only guessed of them.
  for (let round = 0; any && round < (room.rugs.length > 1 && !room.airIsMeasured ? 2 : 1); round++) {
    beliefs = judgeAll(likeliest(beliefs));
  }
  const read = beliefs.filter((belief) => belief !== null);
  const shared = combined(read);
  const spread = Math.sqrt(shared.variance);
  const draws = Array.from({ length: count }, () => {
    const unknowns = emptyUnknowns(room.rugs.length);
    const [only] = read.length === 1 ? read : [];
    const onlyLeaning = only === undefined ? null : drawAny(only, random);
    const factor = onlyLeaning?.[0] ?? shared.mean + spread * normal(random);
    for (const [i, rug] of room.rugs.entries()) {
      const belief = beliefs[i] ?? null;
      const leaning =
        belief === null
          ? [factor, ...Array.from({ length: leanings - 1 }, () => normal(random))]
          : (onlyLeaning ?? drawNear(belief, factor, spread / 2, random));
      lean(unknowns, i, rug, room.g, leaning);
    }
    return unknowns;
  });
  const g = (at: number) => room.g * Math.exp(settings.belief.roomSpread * (shared.mean + at * spread));
  return {
    draws,
    likely: likeliest(beliefs),
    rugs: beliefs,
    g: { likely: g(0), least: g(-1.2816), most: g(1.2816) },
  };
}
