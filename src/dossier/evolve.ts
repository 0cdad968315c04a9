import type { Entry } from './entry.ts';
import type { RugEntry, RugFactOf, RugFactType } from './facts/index.ts';
import { newVisit } from './newVisit.ts';
import { isOneLiquid } from './oneLiquid.ts';
import {
  type Noted,
  nothingYet,
  type RugStanding,
  type Signed,
  type StepStanding,
  type VisitStanding,
} from './standing.ts';

type Evolver<Type extends RugFactType> = (standing: RugStanding, noted: Noted<Type>) => RugStanding;

/** Changes the latest visit; a fact without any visit changes nothing, since evolving judges nothing. */
const inVisit = (
  standing: RugStanding,
  change: (visit: VisitStanding) => Partial<VisitStanding>,
): RugStanding => {
  const last = standing.visits.at(-1);
  if (last === undefined) return standing;
  return { ...standing, visits: [...standing.visits.slice(0, -1), { ...last, ...change(last) }] };
};

/** Puts `item` in the place of the one it supersedes, or at the end. */
const superseding = <Item>(
  items: readonly Item[],
  item: Item,
  same: (other: Item) => boolean,
): readonly Item[] => {
  const at = items.findIndex(same);
  return at === -1 ? [...items, item] : items.map((other, index) => (index === at ? item : other));
};

const ofEarlierPlan = (known: StepStanding): StepStanding =>
  known.step.endsWith(earlierPlan) ? known : { ...known, step: `${known.step}${earlierPlan}` };
const earlierPlan = ' (earlier plan)';

const earlier = (known: string | null, when: string): string =>
  known !== null && known < when ? known : when;

const stepIn = (visit: VisitStanding, step: string) =>
  visit.steps.find((known) => known.step === step) ?? { step, started: null, done: null };

const evolvers: { readonly [Type in RugFactType]: Evolver<Type> } = {
  DossierOpened: (standing, opened) => ({ ...standing, opened }),
  RugReceived: (standing, received) => ({
    ...standing,
    visits: [...standing.visits, newVisit(received)],
    place: received.place ?? null,
  }),
  ReceiptSigned: (standing, receiptSigned) => inVisit(standing, () => ({ receiptSigned })),
  RugMeasured: (standing, noted) => ({ ...standing, measurements: [...standing.measurements, noted] }),
  RugWeighed: (standing, noted) => ({ ...standing, weighings: [...standing.weighings, noted] }),
  PhotographTaken: (standing, noted) => ({ ...standing, photographs: [...standing.photographs, noted] }),
  CornersTapped: (standing, noted) => ({
    ...standing,
    corners: { ...standing.corners, [noted.photo]: noted },
  }),
  ConditionSurveyed: (standing, noted) => ({ ...standing, surveys: [...standing.surveys, noted] }),
  MarkRecorded: (standing, noted) => ({
    ...standing,
    marks: superseding(standing.marks, noted, (other) => other.mark === noted.mark),
  }),
  RugIdentified: (standing, { claims, entry, when, by }) => ({
    ...standing,
    claims: [...standing.claims, ...claims.map((claim) => ({ ...claim, entry, when, by }))],
  }),
  FindingNoted: (standing, noted) => ({
    ...standing,
    findings: superseding(standing.findings, noted, (other) => other.finding === noted.finding),
  }),
  ColoursNamed: (standing, { colours, entry, when, by }) => ({
    ...standing,
    colours: colours.reduce(
      (known, colour) =>
        superseding(known, { ...colour, entry, when, by }, (other) => other.colour === colour.colour),
      standing.colours,
    ),
  }),
  KnotsCounted: (standing, noted) => ({ ...standing, knots: [...standing.knots, noted] }),
  FoundationTested: (standing, noted) => ({
    ...standing,
    foundationTests: [...standing.foundationTests, noted],
  }),
  DyeTested: (standing, noted) => ({
    ...standing,
    dyeTests: [...standing.dyeTests, noted],
    lyingBlots: standing.lyingBlots.filter(
      (blot) =>
        !(
          blot.colour === noted.colour &&
          blot.side === noted.side &&
          isOneLiquid(blot, noted) &&
          (blot.atUrinePlace ?? false) === (noted.atUrinePlace ?? false)
        ),
    ),
  }),
  DyeTestStarted: (standing, noted) => ({ ...standing, lyingBlots: [...standing.lyingBlots, noted] }),
  DyeTestRefused: (standing, noted) =>
    inVisit(standing, (visit) => ({ testRefusals: [...visit.testRefusals, noted] })),
  BathPlanned: (standing, noted) =>
    inVisit(standing, (visit) => ({
      plannedBaths: superseding(visit.plannedBaths, noted, (other) => other.bath === noted.bath),
    })),
  BathDropped: (standing, { bath }) =>
    inVisit(standing, (visit) => ({
      plannedBaths: visit.plannedBaths.filter((planned) => planned.bath !== bath),
    })),
  DryingExpected: (standing, dryingExpected) => inVisit(standing, () => ({ dryingExpected })),
  DryingForecast: (standing, dryingForecast) => inVisit(standing, () => ({ dryingForecast })),
  CorrectiveAimAgreed: (standing, correctiveAim) => inVisit(standing, () => ({ correctiveAim })),
  PlanAgreed: (standing, plan) =>
    inVisit(standing, (visit) => ({
      plan,
      // A plan made after the wash is for another wash: its steps have still to be done.
      steps: visit.dryingStarted === null ? visit.steps : visit.steps.map(ofEarlierPlan),
    })),
  PriceQuoted: (standing, quote) => inVisit(standing, () => ({ quote })),
  ConsentGiven: (standing, given) => inVisit(standing, () => ({ consent: { kind: 'given', given } })),
  ConsentRefused: (standing, noted) =>
    inVisit(standing, () => ({ consent: { kind: 'refused', refused: noted } })),
  ConsentWithdrawn: (standing, withdrawn) =>
    inVisit(standing, () => ({ consent: { kind: 'withdrawn', withdrawn } })),
  OverrideGranted: (standing, noted) =>
    inVisit(standing, (visit) => ({ overrides: [...visit.overrides, noted] })),
  SignedOff: (standing, noted) => inVisit(standing, (visit) => ({ signOffs: [...visit.signOffs, noted] })),
  RugDusted: (standing, noted) => inVisit(standing, (visit) => ({ dustings: [...visit.dustings, noted] })),
  StepStarted: (standing, started) =>
    inVisit(standing, (visit) => {
      const next = { step: started.step, started, done: null };
      const steps = superseding(visit.steps, next, (other) => other.step === started.step);
      const begun = [...visit.begun, { plan: visit.plan, started, done: null }];
      const firstWettedAt = started.wets ? earlier(visit.firstWettedAt, started.when) : visit.firstWettedAt;
      if (!started.wets || visit.dryAccepted === null) return { steps, begun, firstWettedAt };
      // Water after the dry standard undoes it, and what was inspected was another state.
      return {
        ...{ steps, begun, firstWettedAt, wettedAgainAt: started.when },
        ...{ dryAccepted: null, dryingStarted: null, dryingPlaces: [], inspected: null },
      };
    }),
  StepDone: (standing, noted) =>
    inVisit(standing, (visit) => {
      const next = { ...stepIn(visit, noted.step), done: noted };
      const last = visit.begun.findLast(({ started }) => started.step === noted.step);
      return {
        steps: superseding(visit.steps, next, (other) => other.step === noted.step),
        begun: visit.begun.map((one) => (one === last ? { ...one, done: noted } : one)),
      };
    }),
  BathMeasured: (standing, noted) => inVisit(standing, (visit) => ({ baths: [...visit.baths, noted] })),
  RinseMeasured: (standing, noted) => inVisit(standing, (visit) => ({ rinses: [...visit.rinses, noted] })),
  HandLent: (standing, noted) => inVisit(standing, (visit) => ({ hands: [...visit.hands, noted] })),
  LengthChecked: (standing, noted) => inVisit(standing, (visit) => ({ lengths: [...visit.lengths, noted] })),
  SpotTreated: (standing, noted) => inVisit(standing, (visit) => ({ spots: [...visit.spots, noted] })),
  SpotAired: (standing, noted) => inVisit(standing, (visit) => ({ airings: [...visit.airings, noted] })),
  FlowBegun: (standing, noted) =>
    inVisit(standing, (visit) => ({ flowsBegun: [...visit.flowsBegun, noted] })),
  OldTreatmentTold: (standing, noted) =>
    inVisit(standing, (visit) => ({ oldTreatments: [...visit.oldTreatments, noted] })),
  ResidueAnswered: (standing, noted) =>
    inVisit(standing, (visit) => ({ residueAnswers: [...visit.residueAnswers, noted] })),
  FlowLogged: (standing, noted) => inVisit(standing, (visit) => ({ flowLog: [...visit.flowLog, noted] })),
  // A question answered anew takes the place of its earlier answer, which stays in the history.
  StainAnswered: (standing, noted) => ({
    ...standing,
    stainAnswers: superseding(
      standing.stainAnswers,
      noted,
      (other) => other.mark === noted.mark && other.question === noted.question,
    ),
  }),
  StopCalled: (standing, called) =>
    inVisit(standing, (visit) => ({ stops: [...visit.stops, { called, cleared: null }] })),
  StopCleared: (standing, cleared) =>
    inVisit(standing, (visit) => ({
      stops: visit.stops.map((stop) => (stop.called.stop === cleared.stop ? { ...stop, cleared } : stop)),
    })),
  DryingStarted: (standing, dryingStarted) =>
    inVisit({ ...standing, place: dryingStarted.place }, ({ dryingPlaces }) => ({
      dryingStarted,
      dryingPlaces: [...dryingPlaces, dryingStarted],
      dryAccepted: null,
    })),
  RugTurned: (standing, noted) => inVisit(standing, (visit) => ({ turnings: [...visit.turnings, noted] })),
  DryingReading: (standing, noted) =>
    inVisit(standing, (visit) => ({ readings: [...visit.readings, noted] })),
  DryAccepted: (standing, dryAccepted) => inVisit(standing, () => ({ dryAccepted })),
  FinishingDone: (standing, noted) =>
    inVisit(standing, (visit) => ({ finishings: [...visit.finishings, noted] })),
  RugInspected: (standing, inspected) => inVisit(standing, () => ({ inspected })),
  ColoursCompared: (standing, noted) =>
    inVisit(standing, (visit) => ({ comparisons: [...visit.comparisons, noted] })),
  InvoiceIssued: (standing, noted) =>
    inVisit(standing, (visit) => ({ invoices: [...visit.invoices, noted] })),
  PaymentTaken: (standing, noted) => inVisit(standing, (visit) => ({ payments: [...visit.payments, noted] })),
  DepositTaken: (standing, noted) => inVisit(standing, (visit) => ({ deposits: [...visit.deposits, noted] })),
  RugReturned: (standing, returned) =>
    inVisit({ ...standing, place: null }, ({ declined }) => ({
      end: declined === null ? { how: 'returned', returned } : { how: 'declined', declined, returned },
    })),
  VisitDeclined: (standing, declined) => inVisit(standing, () => ({ declined })),
  RugMoved: (standing, { place }) => ({ ...standing, place }),
  SentOut: (standing, out) => ({ ...standing, out }),
  CameBack: (standing) => ({ ...standing, out: null }),
  Quarantined: (standing, quarantine) => ({ ...standing, quarantine }),
  QuarantineReleased: (standing, released) => ({
    ...standing,
    quarantine: null,
    quarantineReleases: [...standing.quarantineReleases, released],
  }),
  IncidentTold: (standing, told) =>
    inVisit(standing, (visit) => ({
      incidents: visit.incidents.map((one) =>
        one.entry === told.incident ? { ...one, clientTold: true, told } : one,
      ),
    })),
  IncidentReported: (standing, noted) =>
    inVisit(standing, (visit) => ({ incidents: [...visit.incidents, noted] })),
  StorageDue: (standing, storage) => inVisit(standing, () => ({ storage })),
  Unclaimed: (standing, unclaimed) => inVisit(standing, () => ({ unclaimed })),
  NoteAdded: (standing, noted) => ({ ...standing, notes: [...standing.notes, noted] }),
  // A withdrawal works through `standingOf`, which leaves the withdrawn entry out of the fold.
  EntryWithdrawn: (standing) => standing,
};

/**
 * The standing after one more entry. Total and judging nothing: a fact that makes no sense where it
 * stands changes nothing rather than failing.
 *
 * @source none: rule of this project
 */
export function evolve(standing: RugStanding, entry: RugEntry): RugStanding {
  const { fact, id, at, by, revision, seal } = entry;
  const signed: Signed = { entry: id, when: fact.happenedAt ?? at, by };
  const evolver = evolvers[fact.type] as Evolver<RugFactType> | undefined;
  const next = evolver === undefined ? standing : evolver(standing, { ...fact, ...signed } as never);
  return { ...next, revision, seal };
}

/**
 * Ids of the entries that a later withdrawal takes out of account.
 *
 * @source none: rule of this project
 */
export const withdrawnIds = (entries: readonly Entry[]): ReadonlySet<string> =>
  new Set(
    (entries as readonly RugEntry[]).flatMap(({ fact }) =>
      fact.type === 'EntryWithdrawn' ? [(fact as RugFactOf<'EntryWithdrawn'>).entry] : [],
    ),
  );

/**
 * What a rug's entries amount to: the fold over all that are not withdrawn.
 *
 * @param entries - the whole stream, oldest first
 * @source none: rule of this project
 */
export function standingOf(entries: readonly Entry[]): RugStanding {
  const withdrawn = withdrawnIds(entries);
  const standing = (entries as readonly RugEntry[])
    .filter(({ id }) => !withdrawn.has(id))
    .reduce(evolve, nothingYet);
  const last = entries.at(-1);
  return last === undefined ? standing : { ...standing, revision: last.revision, seal: last.seal };
}
