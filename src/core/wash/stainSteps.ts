import stainTable from '../../../data/wash/stains.json' with { type: 'json' };
import { atMost, type GradedTest, gradedTests, inDate } from './dyeVerdict.ts';
import type { Band, Bounds } from './limit.ts';
import { agentsAllowed, hazardOnRug } from './mixtures.ts';
import type { Agent, Grade, PlanFacts, Stain } from './planFacts.ts';
import { bookOf, isAcid, isSulfite, type Rulebook } from './rulebook.ts';
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

type Spotter = Pick<Treatment, 'agents' | 'dwellMinutes' | 'dose'>;

/** A colour that ran or changed under a spotter. */
const isHarmed = ({ test, grade }: GradedTest): boolean =>
  atMost(grade, '3-4') || (test.colourChangeGrade !== undefined && atMost(test.colourChangeGrade, '4'));

/** The strongest a spotter is made up by weight [g/L]; undefined where its pH sets what it takes, or it is used neat. */
export function spotterStrength({ dose }: Pick<Treatment, 'dose'>): number | undefined {
  if (dose?.kind === 'share') return dose.most * 1000;
  return dose?.kind === 'grams per litre' ? dose.most : undefined;
}

/** Whether a reading was made with this spotter, as strong and for as long as it is used; what nobody noted proves neither. */
function coversUse(book: Rulebook, { test }: GradedTest, spotter: Spotter): boolean {
  const strength = spotterStrength(spotter);
  return (
    inDate(book, test) &&
    spotter.agents.every((agent) => test.agents?.includes(agent) === true) &&
    (test.minutes ?? 0) >= spotter.dwellMinutes &&
    (strength === undefined || (test.strengthGPerL ?? 0) >= strength - 1e-9)
  );
}

/** What of a band a colour has borne this spotter in; null where in none of it. A spotter without a pH has no band. */
function borneIn(
  facts: PlanFacts,
  colour: string,
  spotter: Spotter,
  band: Band | null,
): { readonly band: Band | null } | null {
  const book = bookOf(facts);
  const tried = gradedTests(facts, colour).filter(({ test }) => test.liquid === 'spotter');
  const isHarmedByIt = tried.some(
    (one) =>
      isHarmed(one) &&
      one.test.agents?.every((agent) => spotter.agents.includes(agent)) === true &&
      one.test.agents.length > 0,
  );
  if (isHarmedByIt) return null;
  const good = tried.filter(
    (one) => coversUse(book, one, spotter) && one.test.colourChangeGrade !== undefined && !isHarmed(one),
  );
  if (band === null) return good.length === 0 ? null : { band };
  const { phTolerance } = book.tests;
  const [widest] = good
    .flatMap(({ test: { pH } }) => {
      if (pH === undefined) return [];
      const both = bandWithin({ least: pH - phTolerance, most: pH + phTolerance }, band);
      return both === null ? [] : [both];
    })
    .sort((a, b) => b.most - b.least - (a.most - a.least));
  return widest === undefined ? null : { band: widest };
}

/** Where the colours under a stain have borne its spotter, and those that have not. */
export interface SpotterCover {
  /** What its tests leave of the band its liquid keeps; null where it has none. */
  readonly band: Band | null;
  /** Colours that nobody proved with it, or nobody within that band. */
  readonly unproven: readonly string[];
}

/**
 * What the spotter tests of the colours under a stain cover: the same agents, no weaker, for as long as it is left
 * on, and a pH within the tolerance of the tested one. A bad reading does not age, and no good one beside it takes
 * it back.
 *
 * @source workshop-setting (data/wash/dyeTests.json)
 */
export function spotterCover(
  facts: PlanFacts,
  colours: readonly string[],
  treatment: Treatment,
  bounds: Bounds,
): SpotterCover {
  const whole: SpotterCover = { band: treatmentBand(treatment, bounds), unproven: [] };
  if (!treatment.spotterTest) return whole;
  return colours.reduce<SpotterCover>(({ band, unproven }, colour) => {
    const borne = borneIn(facts, colour, treatment, band);
    return borne === null ? { band, unproven: [...unproven, colour] } : { band: borne.band, unproven };
  }, whole);
}

/** The colours under a stain; one whose colours nobody noted may lie on any. */
export const coloursUnder = ({ colours = [] }: PlanFacts, stain: Stain): readonly string[] =>
  stain.colours ?? colours.map(({ id }) => id);

/** Warmth of a bath or a spotter: no more than the rug bears, nor than the workshop's usual bath. */
export const warmth = ({ shop }: Rulebook, bounds: Bounds, mostC = Number.POSITIVE_INFINITY): Band => {
  const most = Math.min(bounds.temperatureC, mostC, shop.bathTemperatureC);
  return { least: Math.max(5, most - shop.temperatureSpreadK), most };
};

/**
 * The band a treatment's liquid keeps on this rug, or null where it has none. An acid keeps to what the rug is left
 * with, as its acid rinse does; everything else to the bath.
 */
export const treatmentBand = ({ ph, agents }: Treatment, { bathPh, finalPh }: Bounds): Band | null =>
  ph === undefined ? null : bandWithin(ph, agents.some(isAcid) ? finalPh : bathPh);

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
      .filter(({ treatment }) => treatment.ph === undefined || treatmentBand(treatment, bounds) !== null),
  ).map(({ stain, treatment }) => {
    const under = coloursUnder(facts, stain);
    const { band, unproven } = spotterCover(facts, under, treatment, bounds);
    // A stain under which no colour is named proves nothing.
    const isProven = !treatment.spotterTest || (under.length > 0 && unproven.length === 0);
    return { isProven, treatment: band === null ? treatment : { ...treatment, ph: band } };
  });
  return {
    ready: all.filter(({ isProven }) => isProven).map(({ treatment }) => treatment),
    waiting: all.filter(({ isProven }) => !isProven).map(({ treatment }) => treatment),
  };
}

/** Acts a treatment calls for beside its own protection. */
export const needsVentilation = (agents: readonly Agent[]): boolean => agents.some(isSulfite);

/** The grade a spotter must reach on every colour under the stain. */
export const spotterPassesAt = stainTable.spotterPassesAt as Grade;
