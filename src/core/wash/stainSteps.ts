import stainTable from '../../../data/wash/stains.json' with { type: 'json' };
import { atMost, type GradedTest, gradedTests, inDate } from './dyeVerdict.ts';
import type { Band, Bounds } from './limit.ts';
import { agentsAllowed, hazardOnRug } from './mixtures.ts';
import type { Agent, Grade, PlanFacts, Stain } from './planFacts.ts';
import { bookOf, isSulfite, type Rulebook } from './rulebook.ts';
import type { Treatment } from './ruleTables.ts';
import type { SourceKey } from './washPlan.ts';

/** One treatment of one stain, within the rug's bounds. */
export interface StainTreatment extends Treatment {
  readonly stain: string;
  readonly areaCm2?: number | undefined;
  readonly never: readonly string[];
  readonly source: SourceKey;
}

/** Both bands together, or null when they do not touch. */
export const bandWithin = (a: Band | undefined, b: Bounds['bathPh']): Band | null => {
  if (b === 'no liquid') return null;
  const met = { least: Math.max(a?.least ?? 0, b.least), most: Math.min(a?.most ?? 14, b.most) };
  return met.least <= met.most ? met : null;
};

type Spotter = Pick<Treatment, 'agents' | 'dwellMinutes'>;

/** A colour that ran or changed under a spotter. */
const isHarmed = ({ test, grade }: GradedTest): boolean =>
  atMost(grade, '3-4') || (test.colourChangeGrade !== undefined && atMost(test.colourChangeGrade, '4'));

/**
 * Whether a colour has borne this spotter for as long as it is left on; nobody's minutes prove none. A bad
 * reading does not age, and no good one beside it takes it back.
 */
export function spotterProvenOn(
  facts: PlanFacts,
  colour: string,
  { agents, dwellMinutes }: Spotter,
): boolean {
  const tried = gradedTests(facts, colour).filter(({ test }) => test.liquid === 'spotter');
  const isHarmedByIt = tried.some(
    (one) =>
      isHarmed(one) &&
      one.test.agents?.every((agent) => agents.includes(agent)) === true &&
      one.test.agents.length > 0,
  );
  return (
    !isHarmedByIt &&
    tried.some(
      (one) =>
        inDate(bookOf(facts), one.test) &&
        agents.every((agent) => one.test.agents?.includes(agent) === true) &&
        (one.test.minutes ?? 0) >= dwellMinutes &&
        one.test.colourChangeGrade !== undefined &&
        !isHarmed(one),
    )
  );
}

/** Whether every colour under a stain has borne this spotter; a stain under which none is named proves nothing. */
export function spotterProven(facts: PlanFacts, stain: Stain, spotter: Spotter): boolean {
  const under = stain.colours ?? (facts.colours ?? []).map(({ id }) => id);
  return under.length > 0 && under.every((colour) => spotterProvenOn(facts, colour, spotter));
}

/** Warmth of a bath or a spotter: no more than the rug bears, nor than the workshop's usual bath. */
export const warmth = ({ shop }: Rulebook, bounds: Bounds, mostC = Number.POSITIVE_INFINITY): Band => {
  const most = Math.min(bounds.temperatureC, mostC, shop.bathTemperatureC);
  return { least: Math.max(5, most - shop.temperatureSpreadK), most };
};

/** The band a treatment's liquid keeps on this rug, or null where it has none. */
export const treatmentBand = ({ ph }: Treatment, { bathPh }: Bounds): Band | null =>
  ph === undefined ? null : bandWithin(ph, bathPh);

/** Treatments in the golden order over the whole rug; the order within one place of it is kept. */
export const goldenFirst = <One extends { readonly treatment: StainTreatment }>(
  all: readonly One[],
): readonly One[] =>
  [...all].sort(
    (a, b) =>
      stainTable.goldenOrder.indexOf(a.treatment.golden) - stainTable.goldenOrder.indexOf(b.treatment.golden),
  );

/** All treatments of one stain, whether this rug bears them or not. */
export const stainTreatmentsOf = (facts: PlanFacts, stain: Stain): readonly StainTreatment[] => {
  const row = bookOf(facts).stains.find((one) => one.class === (stain.class ?? 'unknown'));
  return (row?.treatments ?? []).map((treatment) => ({
    ...treatment,
    ...{ stain: stain.id, areaCm2: stain.areaCm2 },
    never: row?.never ?? [],
    source: row?.source ?? 'common-practice',
  }));
};

/**
 * Treatments of a phase over the whole rug in the golden order: those whose agents this rug and its tests
 * allow, and apart from them those that wait for a spotter test.
 *
 * @source common-practice, golden order (data/wash/stains.json)
 */
export function stainTreatments(
  facts: PlanFacts,
  bounds: Bounds,
  phase: Treatment['phase'],
): { readonly ready: readonly StainTreatment[]; readonly waiting: readonly StainTreatment[] } {
  const all = goldenFirst(
    (facts.stains ?? [])
      .flatMap((stain) => stainTreatmentsOf(facts, stain).map((treatment) => ({ stain, treatment })))
      .filter(({ treatment }) => treatment.phase === phase && agentsAllowed(treatment.agents, bounds))
      .filter(
        ({ treatment }) => hazardOnRug(facts, treatment.agents, treatmentBand(treatment, bounds)) === null,
      )
      .filter(
        ({ treatment }) => treatment.ph === undefined || bandWithin(treatment.ph, bounds.bathPh) !== null,
      ),
  );
  const proven = ({ stain, treatment }: (typeof all)[number]) =>
    !treatment.spotterTest || spotterProven(facts, stain, treatment);
  return {
    ready: all.filter(proven).map(({ treatment }) => treatment),
    waiting: all.filter((one) => !proven(one)).map(({ treatment }) => treatment),
  };
}

/** Acts a treatment calls for beside its own protection. */
export const needsVentilation = (agents: readonly Agent[]): boolean => agents.some(isSulfite);

/** The grade a spotter must reach on every colour under the stain. */
export const spotterPassesAt = stainTable.spotterPassesAt as Grade;
