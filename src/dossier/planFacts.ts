import { conditionWords } from '../core/condition/index.ts';
import {
  type Differential,
  differentialOf,
  type Finding,
  type FindingCode,
  type Grade,
  type PlanFacts,
  type PlanStep,
  planWash,
  rulingGrade,
  type StainClass,
  shippedRulebook,
  type WashPlan,
} from '../core/wash/index.ts';
import { done, type Problem, type Result, refused } from '../units/index.ts';
import { atMarkedPlace, stainOf } from './dyeSites.ts';
import { expectedDrying } from './expectedDrying.ts';
import type { RugFactOf } from './facts/index.ts';
import { rulebookOf } from './rulebook.ts';
import {
  latestVisit,
  type Noted,
  type NotedClaim,
  type RugStanding,
  type VisitStanding,
} from './standing.ts';
import { wetSince } from './wetting.ts';
import type { WorkshopSettings } from './workshopFacts.ts';

export type SizeNotMeasured = Problem<'size-not-measured', Readonly<Record<string, never>>>;

/** How far the questions have narrowed a stain that nobody knew. */
export const differentialIn = ({ stainAnswers }: RugStanding, mark: string): Differential =>
  differentialOf(stainAnswers.filter((answered) => answered.mark === mark));

/** The class of a mark's stain: as named, else as the questions narrowed it; undefined where it is no stain. */
export function stainClassOf(standing: RugStanding, mark: Noted<'MarkRecorded'>): StainClass | undefined {
  const named = stainOf(mark);
  return named === 'unknown' ? differentialIn(standing, mark.mark).class : named;
}

/** A possible claim, or the client's word alone, does not make a rug safe: it counts as unknown. */
const counts = (claim: NotedClaim): boolean =>
  claim.confidence !== 'possible' && claim.evidence !== 'client says';

/** The claims that speak about something; one shape may serve several subjects. */
export type ClaimAbout<About, Claim = NotedClaim> = Claim extends { readonly about: infer Subject }
  ? About extends Subject
    ? Claim
    : never
  : never;

/** The latest claim about something that is sure enough to plan on, or undefined. */
export function soundClaim<About extends NotedClaim['about']>(
  standing: RugStanding,
  about: About,
): ClaimAbout<About> | undefined {
  const claim = standing.claims.findLast((one) => one.about === about && counts(one));
  return claim as ClaimAbout<About> | undefined;
}

/** Mean length and width, latest measuring of an occasion. */
export function sizeOf(
  standing: RugStanding,
  occasion?: 'intake' | 'after work',
): { readonly lengthMm: number; readonly widthMm: number; readonly areaM2: number } | null {
  const measured = standing.measurements.findLast(
    (noted) => occasion === undefined || noted.occasion === occasion,
  );
  if (measured === undefined) return null;
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
  const [lengthMm, widthMm] = [mean(measured.lengthsMm), mean(measured.widthsMm)];
  const fill = measured.shape === 'round' || measured.shape === 'oval' ? Math.PI / 4 : 1;
  return { lengthMm, widthMm, areaM2: (lengthMm * widthMm * fill) / 1e6 };
}

/** Damage found since the client last agreed stops the work until they have heard of it. */
function damageSinceConsent(standing: RugStanding): boolean {
  const visit = latestVisit(standing);
  if (visit === null || visit.consent.kind !== 'given') return false;
  const agreedAt = visit.consent.given.when;
  return (
    standing.marks.some((mark) => mark.foundDuringWork === true && mark.grade >= 3 && mark.when > agreedAt) ||
    visit.incidents.some((incident) => !incident.clientTold && incident.when > agreedAt)
  );
}

/**
 * Whether somebody looked the rug over, face and back, since it came in. An earlier visit's look proves
 * nothing: between two visits a rug lives where nobody watches it.
 */
export function isLookedOver(standing: RugStanding): boolean {
  const receivedAt = latestVisit(standing)?.received.when ?? '';
  return standing.surveys.some(({ sides, when }) => sides === 'face and back' && when >= receivedAt);
}

/** Findings drawn from marks, then what was noted of each finding later on. */
export function findingsOf(standing: RugStanding): readonly Finding[] | undefined {
  const found = new Map<FindingCode, Finding & { readonly when: string }>();
  const note = (code: FindingCode, certainty: Finding['certainty'], when: string, at?: string) => {
    const known = found.get(code);
    if (known?.certainty === 'seen' && certainty === 'suspected') return;
    found.set(code, { code, certainty: certainty ?? 'seen', when, ...(at === undefined ? {} : { at }) });
  };
  for (const mark of standing.marks) {
    const word = conditionWords.find((known) => known.word === mark.word);
    if (word === undefined) continue;
    for (const code of word.suggests) note(code, word.suggests.length > 1 ? 'suspected' : 'seen', mark.when);
    if (mark.activity === 'stable') continue;
    const certainty = mark.activity === 'unknown' ? 'suspected' : 'seen';
    for (const code of word.suggestsUnlessStable) note(code, certainty, mark.when);
  }
  for (const tested of standing.foundationTests) {
    if (tested.result === 'dry rot') note('dry rot', 'seen', tested.when, tested.where);
    if (tested.result === 'weak') note('weak foundation', 'seen', tested.when, tested.where);
  }
  // A flow that somebody saw reason to begin is a suspicion of what it is for.
  for (const begun of latestVisit(standing)?.flowsBegun ?? []) {
    const flow = shippedRulebook.flows.find(({ id }) => id === begun.flow);
    for (const code of flow?.findings ?? []) note(code, 'suspected', begun.when, begun.where);
  }
  for (const noted of standing.findings) {
    const before = found.get(noted.finding);
    // A mark recorded after the finding was ruled out counts again.
    if (noted.certainty === 'ruled out' && before !== undefined && before.when > noted.when) continue;
    found.set(noted.finding, {
      code: noted.finding,
      certainty: noted.certainty,
      when: noted.when,
      ...(noted.at === undefined ? {} : { at: noted.at }),
    });
  }
  if (damageSinceConsent(standing)) note('damage during work', 'seen', '');
  if (!isLookedOver(standing) && found.size === 0) return undefined;
  return [...found.values()].map(({ when: _when, ...finding }) => finding);
}

const daysBetween = (from: string, until: string) => (Date.parse(until) - Date.parse(from)) / 86_400_000;

const dyeTestOf =
  (now: string) =>
  (test: Noted<'DyeTested'>): NonNullable<PlanFacts['dyeTests']>[number] => ({
    colour: test.colour,
    side: test.side,
    liquid: test.liquid,
    ageDays: Math.max(0, daysBetween(test.when, now)),
    ...(test.agents === undefined ? {} : { agents: test.agents }),
    ...(test.strengthGPerL === undefined ? {} : { strengthGPerL: test.strengthGPerL }),
    ...(test.ph === undefined ? {} : { pH: test.ph }),
    ...(test.temperatureC === undefined ? {} : { temperatureC: test.temperatureC }),
    ...(test.minutes === undefined ? {} : { minutes: test.minutes }),
    ...(test.atUrinePlace === undefined ? {} : { atUrinePlace: test.atUrinePlace }),
    ...(test.afterPretreatment === undefined ? {} : { afterPretreatment: test.afterPretreatment }),
    ...(test.reading.kind === 'graded'
      ? {
          outcome: 'graded',
          grade: test.reading.staining,
          ...(test.reading.by === 'photograph' ? { gradeProbabilities: test.reading.probability } : {}),
          ...(test.reading.colourChange === undefined
            ? {}
            : { colourChangeGrade: test.reading.colourChange }),
        }
      : { outcome: 'unclear' }),
  });

/** The grade a blot counts with: from a photograph the worst with a probability above 5 %; null while unclear. */
export const countsAs = (test: Noted<'DyeTested'>): Grade | null => rulingGrade(dyeTestOf(test.when)(test));

/** A bath of the workshop's own as the plan engine weighs it. */
export const bathOf = ({
  purpose,
  agents,
  ph,
}: Pick<RugFactOf<'BathPlanned'>, 'purpose' | 'agents' | 'ph'>): NonNullable<
  PlanFacts['plannedBaths']
>[number] => ({ purpose, agents, ...(ph === undefined ? {} : { pH: ph }) });

/**
 * What the plan engine is told of a rug: everything the record supports and nothing it does not.
 *
 * @param standing - the rug's standing
 * @param settings - the workshop's settings
 * @param now - instant, for the age of dye tests and the time to the promised day
 * @refuses size-not-measured - amounts and weights need the rug's area
 * @source none: rule of this project
 */
export function planFactsOf(
  standing: RugStanding,
  settings: WorkshopSettings,
  now: string,
): Result<PlanFacts, SizeNotMeasured> {
  const size = sizeOf(standing);
  const visit = latestVisit(standing);
  if (size === null || visit === null) return refused('size-not-measured', {});
  const { received } = visit;
  const dryingHours = expectedDrying(visit);
  const construction = soundClaim(standing, 'construction')?.construction;
  const pile = soundClaim(standing, 'pile')?.fibres;
  const warp = soundClaim(standing, 'warp')?.fibre;
  const weft = soundClaim(standing, 'weft')?.fibre;
  const backing = soundClaim(standing, 'backing')?.fibre;
  const latex = standing.marks.some(({ word }) => word === 'delamination')
    ? 'failing'
    : soundClaim(standing, 'latex')?.latex;
  const weighed = standing.weighings.at(-1);
  const pileHeightMm = standing.measurements.at(-1)?.pileHeightMm;
  const findings = findingsOf(standing);
  const value = received.declaredValue;
  const authority = settings.washersAuthority;
  const valueAboveAuthority =
    value === undefined || authority === null || value.currency !== authority.currency
      ? undefined
      : value.amountMinor > authority.amountMinor;
  const clientRefusals = [
    ...visit.testRefusals.map(({ signed }) => ({ what: 'dye test' as const, signed })),
    ...(visit.consent.kind === 'refused' && visit.consent.refused.what !== 'the plan'
      ? [{ what: visit.consent.refused.what, signed: visit.consent.refused.signed }]
      : []),
  ];
  return done({
    rulebook: rulebookOf(settings),
    route: received.route,
    areaM2: size.areaM2,
    lengthM: Math.max(size.lengthMm, size.widthMm) / 1000,
    ...(construction === undefined ? {} : { construction }),
    ...(pile === undefined ? {} : { pile }),
    foundation: {
      ...(warp === undefined ? {} : { warp }),
      ...(weft === undefined ? {} : { weft }),
      ...(backing === undefined ? {} : { backing }),
    },
    ...(latex === undefined ? {} : { latex }),
    ...(weighed === undefined ? {} : { dryMassKg: weighed.massKg }),
    ...(pileHeightMm === undefined ? {} : { pileHeightMm }),
    colours: standing.colours.map((named) => {
      const { colour, name, kind, dyeClass, besideLightField } = named;
      const atUrinePlace = atMarkedPlace(standing, named);
      return {
        ...{ id: colour, name, kind, dyeClass },
        ...(besideLightField === undefined ? {} : { besideLightField }),
        ...(atUrinePlace === undefined ? {} : { atUrinePlace }),
      };
    }),
    dyeTests: [
      ...standing.dyeTests.map(dyeTestOf(now)),
      ...visit.testRefusals.map(
        ({ colour }) => ({ colour, side: 'face', liquid: 'cold water', outcome: 'refused' }) as const,
      ),
    ],
    ...(findings === undefined ? {} : { findings }),
    ...(findings === undefined || isLookedOver(standing) ? {} : { lookedOver: false }),
    stains: standing.marks.flatMap((mark, index) => {
      const stain = stainClassOf(standing, mark);
      if (stain === undefined) return [];
      return [
        {
          id: mark.mark,
          class: stain,
          // As the picture numbers it: an id says nothing to whoever reads the plan.
          at: `mark ${index + 1}`,
          ...(mark.areaCm2 === undefined ? {} : { areaCm2: mark.areaCm2 }),
          ...(mark.colours === undefined ? {} : { colours: mark.colours }),
        },
      ];
    }),
    ...(dryingHours === null
      ? {}
      : { expectedDryingHours: dryingHours.hours, expectedDryingFrom: dryingHours.from }),
    ...(received.soiling === undefined ? {} : { soiling: received.soiling }),
    ...(received.monthsSinceWash === undefined ? {} : { monthsSinceWash: received.monthsSinceWash }),
    ...(received.promisedFor === undefined || visit.dryAccepted !== null
      ? {}
      : {
          promiseHours: Math.max(
            0,
            daysBetween(wetSince(visit) ?? now, `${received.promisedFor}T17:00:00Z`) * 24,
          ),
        }),
    ...(valueAboveAuthority === undefined ? {} : { valueAboveAuthority }),
    liftingLimitKg: settings.liftingLimitKg,
    equipmentDown: settings.equipmentDown,
    clientRefusals,
    signOffs: visit.signOffs.map(({ as }) => as),
    correctiveAimAgreed: visit.correctiveAim !== null,
    plannedBaths: visit.plannedBaths.map(bathOf),
    overrides: visit.overrides.flatMap(({ rule, reason, about }) =>
      rule === 'dry standard' ? [] : [{ rule, reason, about }],
    ),
  });
}

/**
 * The wash plan the record supports now.
 *
 * @source none: composes the plan engine of core/wash over the record
 */
export function planOf(standing: RugStanding, settings: WorkshopSettings, now: string) {
  const facts = planFactsOf(standing, settings, now);
  return facts.ok ? planWash(facts.value) : facts;
}

/** A plan's step by its own name, the same as long as the plan is. */
export const stepId = (step: Pick<PlanStep, 'order' | 'kind'>): string =>
  `${step.order}-${step.kind.replaceAll(' ', '-')}`;

/** The agreed plan of the latest visit, as recorded. */
export const agreedPlan = (standing: RugStanding): WashPlan | null =>
  planOnRecord(latestVisit(standing)?.plan ?? null);

/** A plan as it was put on record. */
export const planOnRecord = (agreed: VisitStanding['plan']): WashPlan | null =>
  agreed === null ? null : (agreed.plan as unknown as WashPlan);
