import settings from '../../../data/drying/settings.json' with { type: 'json' };
import type { Evidence, RugEvidence } from './rugEvidence.ts';
import type { DryRug, DryScenario } from './scenario.ts';

/** What one rug's readings said once it was dry, kept for the rugs to come. */
export interface PastRug extends RugEvidence {
  readonly rug: string;
  /** How it is made, in the workshop's own word; null: it says nothing of its kind. */
  readonly construction: string | null;
}

/** A number as past rugs taught it. */
export interface Learnt {
  readonly likely: number;
  /** Of the logarithm, for the next rug: how rugs differ, and what is still unsure of their middle. */
  readonly spread: number;
  readonly runs: number;
  /** Rugs far from all others; they count little and are to be looked at. */
  readonly standAlone: readonly string[];
}

export interface LearntDrying {
  /** The room's factor. */
  readonly g: Learnt;
  readonly constructions: Readonly<
    Record<string, { readonly resistance: Learnt; readonly criticalRegain: Learnt }>
  >;
}

interface Told extends Evidence {
  readonly rug: string;
}

const { shareOfMiddle, runsOfSpread, tailFreedom, standAloneSpreads, rounds } = settings.learning;

/**
 * The middle and spread of a number over rugs, each of which tells it with an error of its own: a normal
 * model in two storeys, with tails that let a strange rug count little.
 *
 * @param told - by rug
 * @param guess - first guess and the spread of its logarithm, part of which is about the middle, the rest between rugs
 * @source gelman-bda3, chapter 5, hierarchical normal model, by expectation and maximisation; weights lange-little-taylor-1989
 */
function learnt(told: readonly Told[], guess: Evidence): Learnt {
  const middleVariance = shareOfMiddle * guess.spread ** 2;
  const between0 = (1 - shareOfMiddle) * guess.spread ** 2;
  const logs = told.map(({ likely }) => Math.log(likely / guess.likely));
  let [middle, between, unsure] = [0, between0, middleVariance];
  const offOf = (i: number): number =>
    ((logs[i] ?? 0) - middle) / Math.sqrt(between + (told[i]?.spread ?? 0) ** 2);
  for (let round = 0; round < rounds; round++) {
    const weights = told.map((_, i) => (tailFreedom + 1) / (tailFreedom + offOf(i) ** 2));
    const information = told.map(({ spread }, i) => (weights[i] ?? 0) / (between + spread ** 2));
    unsure = 1 / information.reduce((sum, one) => sum + one, 1 / middleVariance);
    middle = unsure * information.reduce((sum, one, i) => sum + one * (logs[i] ?? 0), 0);
    // What each rug truly was, between what it told and the middle, and how unsure that is.
    const squares = told.map(({ spread }, i) => {
      const trust = between / (between + spread ** 2);
      return (trust * ((logs[i] ?? 0) - middle)) ** 2 + trust * spread ** 2 + unsure * trust ** 2;
    });
    const counted = weights.reduce((sum, weight) => sum + weight, runsOfSpread);
    const spreadOut = squares.reduce((sum, one, i) => sum + one * (weights[i] ?? 0), runsOfSpread * between0);
    between = spreadOut / counted;
  }
  return {
    likely: guess.likely * Math.exp(middle),
    spread: Math.sqrt(between + unsure),
    runs: told.length,
    standAlone: told.filter((_, i) => Math.abs(offOf(i)) > standAloneSpreads).map(({ rug }) => rug),
  };
}

/**
 * What past rugs teach of a room and of each construction.
 *
 * @param past - by rug, in any order; a pure function of them, so that it can be worked out again
 * @returns the room's factor, and by construction the pile's resistance [s/m] and critical regain [kg/kg]
 * @source gelman-bda3, chapter 5; strength of the first guess is a workshop setting (data/drying/settings.json, learning)
 */
export function learnDrying(past: readonly PastRug[]): LearntDrying {
  const { belief, criticalRegain, resistanceSPerM } = settings;
  const toldOf = (rugs: readonly PastRug[], of: keyof RugEvidence): readonly Told[] =>
    rugs.flatMap((rug) => {
      const evidence = rug[of];
      return evidence === null ? [] : [{ ...evidence, rug: rug.rug }];
    });
  const names = [...new Set(past.flatMap(({ construction }) => construction ?? []))].sort();
  return {
    g: learnt(toldOf(past, 'g'), { likely: 1, spread: belief.roomSpread }),
    constructions: Object.fromEntries(
      names.map((name) => {
        const alike = past.filter(({ construction }) => construction === name);
        const resistance = { likely: resistanceSPerM, spread: belief.resistanceSpread };
        const critical = { likely: criticalRegain, spread: belief.criticalRegainSpread };
        return [
          name,
          {
            resistance: learnt(toldOf(alike, 'resistance'), resistance),
            criticalRegain: learnt(toldOf(alike, 'criticalRegain'), critical),
          },
        ];
      }),
    ),
  };
}

/**
 * A scenario with what was learnt in place of the first guesses; what the scenario itself says stays.
 *
 * @param scenario - as given
 * @param learning - from past rugs of the same room
 * @source none: substitution
 */
export function asLearnt(scenario: DryScenario, { g, constructions }: LearntDrying): DryScenario {
  const rugAs = (rug: DryRug): DryRug => {
    const kind = rug.construction === undefined ? undefined : constructions[rug.construction];
    if (kind === undefined) return rug;
    const { resistance, criticalRegain } = kind;
    return {
      ...rug,
      resistance: rug.resistance ?? resistance.likely,
      criticalRegain: rug.criticalRegain ?? criticalRegain.likely,
      spreads: { resistance: resistance.spread, criticalRegain: criticalRegain.spread, ...rug.spreads },
    };
  };
  const { room } = scenario;
  return {
    ...scenario,
    room: { ...room, g: room.g ?? g.likely, gSpread: room.gSpread ?? g.spread },
    rugs: scenario.rugs.map(rugAs),
  };
}
