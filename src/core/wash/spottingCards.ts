import cautionTable from '../../../data/wash/cautions.json' with { type: 'json' };
import stainTable from '../../../data/wash/stains.json' with { type: 'json' };
import type { Band, Bounds } from './limit.ts';
import { agentsAllowed, hazardOnRug } from './mixtures.ts';
import type { Agent, PlanFacts, StainClass } from './planFacts.ts';
import { type Residue, type ResidueBlock, residueBlock, residuesOf, type WorkEvent } from './residue.ts';
import { bookOf, isSulfite } from './rulebook.ts';
import { spotAmounts, spotMl } from './spotAmounts.ts';
import {
  coloursUnder,
  goldenFirst,
  type StainTreatment,
  spotterCover,
  spotterStrength,
  stainTreatmentsOf,
  treatmentBand,
  warmth,
} from './stainSteps.ts';
import type { Amount, PlanStep, SourceKey } from './washPlan.ts';

/** A spotter test of one colour under a stain, and whether the dossier has it. */
export interface SpotTest {
  readonly colour: string;
  readonly name: string;
  readonly isMade: boolean;
}

/**
 * Whether a card may be worked: ready; waiting for tests, for a rinse that is read, or for the stain to be
 * known; or not on this rug at all.
 */
export type SpotState = 'ready' | 'test first' | 'clear first' | 'not on this rug';

/** One treatment of one stain, with everything a washer needs beside the rug. */
export interface SpottingCard {
  readonly id: string;
  readonly stain: string;
  readonly class: StainClass;
  readonly golden: string;
  readonly phase: StainTreatment['phase'];
  readonly what: string;
  readonly chemistry: string;
  readonly agents: readonly Agent[];
  readonly amounts: readonly Amount[];
  /** What the place takes up of the liquid [mL]; null where nothing is laid on it. */
  readonly takesMl: Band | null;
  /** Nobody measured the place: it is reckoned as a hand's breadth. */
  readonly isUnmeasured: boolean;
  readonly targetPh?: Band;
  readonly temperatureC: Band;
  readonly dwellMinutes: number;
  readonly strength?: string;
  /** What its spotter test must not be weaker than [g/L]; absent where its pH says it, or it is used neat. */
  readonly testStrengthGPerL?: number;
  readonly tests: readonly SpotTest[];
  readonly never: readonly string[];
  /** What must be done before it, because of what is or will be in the rug by then. */
  readonly before: readonly string[];
  readonly cautions: readonly string[];
  readonly state: SpotState;
  readonly because: string;
  readonly source: SourceKey;
}

/** The order stains are worked in, over the whole rug. */
export const goldenOrder: readonly string[] = stainTable.goldenOrder;

const chemistryOf = (kind: StainClass): string => {
  const row = stainTable.rows.find((one) => one.class === kind);
  return row === undefined ? '' : `${row.chemistry} ${row.note}`;
};

const cautionsOf = (
  agents: readonly Agent[],
  golden: string,
  stain: StainClass | undefined,
): readonly string[] => [
  ...(golden === 'dry solids' ? [cautionTable.spotting.dry] : []),
  ...(stain === 'urine' ? [cautionTable.spotting.urine] : []),
  ...(stain === 'mould stain' ? [cautionTable.spotting.mould] : []),
  ...(agents.some((agent) => agent !== 'water') ? [cautionTable.spotting.agent] : []),
  ...(agents.some(isSulfite) ? [cautionTable.spotting.sulfite] : []),
  ...(agents.includes('dry solvent') ? [cautionTable.spotting.solvent] : []),
  ...(agents.includes('hydrogen peroxide') ? [cautionTable.spotting.peroxide] : []),
];

/** Why a treatment may not be done on this rug at all; null where it may. */
function forbidden(facts: PlanFacts, treatment: StainTreatment, bounds: Bounds): string | null {
  const { agents, ph } = treatment;
  if (!agentsAllowed(agents, bounds)) {
    return `This rug does not bear ${agents.filter((agent) => bounds.forbiddenAgents.includes(agent)).join(', ')}.`;
  }
  if (agents.length > 0 && bounds.bathPh === 'no liquid' && !agents.includes('dry solvent')) {
    return 'No liquid may touch this rug.';
  }
  if (ph !== undefined && treatmentBand(treatment, bounds) === null) {
    return `Its pH ${ph.least} to ${ph.most} lies outside what this rug bears.`;
  }
  const hazard = hazardOnRug(facts, agents, treatmentBand(treatment, bounds));
  if (hazard === null) return null;
  const unknown = (facts.stains ?? []).some((stain) => (stain.class ?? 'unknown') === 'unknown');
  return `On this rug it would do harm: ${hazard}.${unknown ? ' A stain nobody knows counts as the worst: find out what it is.' : ''}`;
}

/**
 * The spotting cards of a rug: every treatment of every stain, in the golden order over the whole rug, each
 * with its amounts, limits, tests and what must be cleared before it.
 *
 * @param facts - what is known of the rug, its stains among it
 * @param bounds - its limits
 * @param done - what was already laid on the rug and rinsed out of it, oldest first
 * @returns cards in the order to work them; those that wait or are forbidden say why
 * @source common-practice, golden order (data/wash/stains.json); forbidden meetings from data/wash/mixtures.json
 */
export function spottingCards(
  facts: PlanFacts,
  bounds: Bounds,
  done: readonly WorkEvent[] = [],
): readonly SpottingCard[] {
  const limits = bookOf(facts).residues;
  const present = residuesOf(done, limits);
  const planned: WorkEvent[] = [...done];
  const waiting: { readonly stain: string; readonly what: string }[] = [];
  return goldenFirst(
    (facts.stains ?? []).flatMap((stain) =>
      stainTreatmentsOf(facts, stain).map((treatment) => ({ stain, treatment })),
    ),
  ).map(({ stain, treatment }) => {
    const { agents, golden, phase, what, never, dwellMinutes, strength, source } = treatment;
    const { band, unproven } = spotterCover(facts, coloursUnder(facts, stain), treatment, bounds);
    const under = (facts.colours ?? []).filter(({ id }) => stain.colours?.includes(id) ?? true);
    const tests = !treatment.spotterTest
      ? []
      : under.map(({ id, name }) => ({ colour: id, name, isMade: !unproven.includes(id) }));
    const testStrengthGPerL = treatment.spotterTest ? spotterStrength(treatment) : undefined;
    const next = { what, agents, ...(band === null ? {} : { ph: band }) };
    const not = forbidden(facts, treatment, bounds);
    const missing = tests.filter(({ isMade }) => !isMade);
    const isUntested = treatment.spotterTest && (missing.length > 0 || under.length === 0);
    const locked = waiting
      .filter((one) => one.stain === stain.id)
      .map((one) => `At this place “${one.what}” comes first, and waits for its test.`);
    const now = residueBlock(facts, present, next, bounds);
    const later = residueBlock(facts, residuesOf(planned, limits), next, bounds);
    const [state, because]: readonly [SpotState, string] =
      not !== null
        ? ['not on this rug', not]
        : isUntested
          ? ['test first', untestedWords(missing.map(({ name }) => name))]
          : now !== null
            ? ['clear first', hazardWords(now.hazard, now.residues)]
            : ['ready', chemistryOf(stain.class ?? 'unknown')];
    // What waits for its test may still be laid: what comes after it is told of it now.
    if (state !== 'not on this rug' && agents.length > 0) {
      planned.push({ kind: 'laid', where: stain.id, agents, ...(band === null ? {} : { ph: band.least }) });
    }
    if (state === 'test first') waiting.push({ stain: stain.id, what });
    return {
      id: `${stain.id}/${golden}`,
      ...{ stain: stain.id, class: stain.class ?? ('unknown' as const), golden, phase, what },
      chemistry: chemistryOf(stain.class ?? 'unknown'),
      ...{ agents, amounts: spotAmounts(treatment, bounds, bookOf(facts)) },
      takesMl: agents.length === 0 ? null : spotMl(stain.areaCm2, bookOf(facts)),
      isUnmeasured: agents.length > 0 && (stain.areaCm2 ?? 0) <= 0,
      ...(band === null ? {} : { targetPh: band }),
      temperatureC: warmth(bookOf(facts), bounds, treatment.mostC),
      dwellMinutes,
      ...(strength === undefined ? {} : { strength }),
      ...(testStrengthGPerL === undefined ? {} : { testStrengthGPerL }),
      ...{
        tests,
        never,
        before: [...(later === null ? [] : beforeWords(later)), ...locked],
        cautions: cautionsOf(agents, golden, stain.class),
        state,
        because,
        source,
      },
    };
  });
}

/** What will be in the rug by then, what it would do, and how to clear the way. */
const beforeWords = ({ residues, hazard, clear }: ResidueBlock): readonly string[] => [
  `${[...new Set(residues.map(({ agent }) => agent))].join(' and ')} laid before it would make: ${hazard}. ${clear.join(' ')}`,
];

/**
 * The step of a plan that a card is, or undefined where the plan leaves it out. The plan's dwell counts: it is
 * cut to what the wet minutes hold.
 *
 * @source none: reads the plan
 */
export const stepOfCard = (
  steps: readonly PlanStep[],
  { stain, golden, what }: Pick<SpottingCard, 'stain' | 'golden' | 'what'>,
): PlanStep | undefined =>
  steps.find(
    (step) =>
      step.stain === stain &&
      // Plans of before the place in the order was kept are known by their words.
      (step.golden === undefined ? step.what.startsWith(what) : step.golden === golden),
  );

const untestedWords = (names: readonly string[]): string =>
  names.length === 0
    ? 'The colours are not named yet; each under the stain is tested with this spotter first.'
    : `Not proven with this spotter at this pH, strength and time: ${names.join(', ')}.`;

const hazardWords = (hazard: string, residues: readonly Residue[]): string =>
  `Still in the rug: ${[...new Set(residues.map(({ agent }) => agent))].join(', ')}. Together: ${hazard}.`;
