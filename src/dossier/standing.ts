import type { RugFactOf, RugFactType } from './facts/index.ts';

/** A recorded fact together with where it stands in the record. `when` is when it happened. */
export type Noted<Type extends RugFactType> = RugFactOf<Type> & Signed;

export interface Signed {
  readonly entry: string;
  readonly when: string;
  readonly by: string;
}

/** One claim about the rug, with who made it and when. */
export type NotedClaim = RugFactOf<'RugIdentified'>['claims'][number] & Signed;
export type NotedColour = RugFactOf<'ColoursNamed'>['colours'][number] & Signed;

export interface StepStanding {
  readonly step: string;
  readonly started: Noted<'StepStarted'> | null;
  readonly done: Noted<'StepDone'> | null;
}

/** One beginning of a step, with the plan it was begun under; a later plan or beginning changes nothing of it. */
export interface BegunStep {
  readonly plan: Noted<'PlanAgreed'> | null;
  readonly started: Noted<'StepStarted'>;
  readonly done: Noted<'StepDone'> | null;
}

export interface StopStanding {
  readonly called: Noted<'StopCalled'>;
  readonly cleared: Noted<'StopCleared'> | null;
}

export type ConsentStanding =
  | { readonly kind: 'none' }
  | { readonly kind: 'given'; readonly given: Noted<'ConsentGiven'> }
  | { readonly kind: 'refused'; readonly refused: Noted<'ConsentRefused'> }
  | { readonly kind: 'withdrawn'; readonly withdrawn: Noted<'ConsentWithdrawn'> };

export type VisitEnd =
  | { readonly how: 'returned'; readonly returned: Noted<'RugReturned'> }
  | {
      readonly how: 'declined';
      readonly declined: Noted<'VisitDeclined'>;
      readonly returned: Noted<'RugReturned'>;
    };

/** One stay of the rug in the workshop. */
export interface VisitStanding {
  readonly received: Noted<'RugReceived'>;
  readonly receiptSigned: Noted<'ReceiptSigned'> | null;
  readonly dryingExpected: Noted<'DryingExpected'> | null;
  readonly dryingForecast: Noted<'DryingForecast'> | null;
  readonly correctiveAim: Noted<'CorrectiveAimAgreed'> | null;
  readonly plan: Noted<'PlanAgreed'> | null;
  readonly quote: Noted<'PriceQuoted'> | null;
  readonly consent: ConsentStanding;
  /** Baths of the workshop's own, beyond what the plan proposes. */
  readonly plannedBaths: readonly Noted<'BathPlanned'>[];
  readonly testRefusals: readonly Noted<'DyeTestRefused'>[];
  readonly overrides: readonly Noted<'OverrideGranted'>[];
  readonly signOffs: readonly Noted<'SignedOff'>[];
  readonly dustings: readonly Noted<'RugDusted'>[];
  readonly steps: readonly StepStanding[];
  /** Every beginning of a step, oldest first: what was laid on the rug stays in it whatever is planned since. */
  readonly begun: readonly BegunStep[];
  readonly baths: readonly Noted<'BathMeasured'>[];
  readonly rinses: readonly Noted<'RinseMeasured'>[];
  readonly stops: readonly StopStanding[];
  readonly hands: readonly Noted<'HandLent'>[];
  readonly spots: readonly Noted<'SpotTreated'>[];
  readonly airings: readonly Noted<'SpotAired'>[];
  readonly oldTreatments: readonly Noted<'OldTreatmentTold'>[];
  readonly residueAnswers: readonly Noted<'ResidueAnswered'>[];
  readonly lengths: readonly Noted<'LengthChecked'>[];
  /** Flows that a person began by hand. */
  readonly flowsBegun: readonly Noted<'FlowBegun'>[];
  readonly flowLog: readonly Noted<'FlowLogged'>[];
  readonly dryingStarted: Noted<'DryingStarted'> | null;
  /** Every place it was put to dry at since it was wetted, the first one first. */
  readonly dryingPlaces: readonly Noted<'DryingStarted'>[];
  readonly turnings: readonly Noted<'RugTurned'>[];
  readonly readings: readonly Noted<'DryingReading'>[];
  readonly dryAccepted: Noted<'DryAccepted'> | null;
  /** Earliest instant at which water touched the rug in this visit. */
  readonly firstWettedAt: string | null;
  /** When it was wetted once more after it had been accepted as dry. */
  readonly wettedAgainAt: string | null;
  readonly finishings: readonly Noted<'FinishingDone'>[];
  readonly inspected: Noted<'RugInspected'> | null;
  readonly comparisons: readonly Noted<'ColoursCompared'>[];
  readonly deposits: readonly Noted<'DepositTaken'>[];
  readonly invoices: readonly Noted<'InvoiceIssued'>[];
  readonly payments: readonly Noted<'PaymentTaken'>[];
  /** `told` is when and how the client heard of it, where that was later than the report. */
  readonly incidents: readonly (Noted<'IncidentReported'> & { readonly told?: Noted<'IncidentTold'> })[];
  readonly storage: Noted<'StorageDue'> | null;
  readonly unclaimed: Noted<'Unclaimed'> | null;
  /** The work was declined; the rug stays in the workshop's care until it is handed back. */
  readonly declined: Noted<'VisitDeclined'> | null;
  readonly end: VisitEnd | null;
}

/** What a rug's entries amount to now, withdrawn ones left out. */
export interface RugStanding {
  /** Revision of the stream, withdrawals counted. */
  readonly revision: number;
  readonly seal: string;
  readonly opened: Noted<'DossierOpened'> | null;
  readonly visits: readonly VisitStanding[];
  readonly measurements: readonly Noted<'RugMeasured'>[];
  readonly weighings: readonly Noted<'RugWeighed'>[];
  readonly photographs: readonly Noted<'PhotographTaken'>[];
  /** Latest corners tapped, by photograph. */
  readonly corners: Readonly<Record<string, Noted<'CornersTapped'>>>;
  readonly surveys: readonly Noted<'ConditionSurveyed'>[];
  /** Latest record of each mark, in order of first mention. */
  readonly marks: readonly Noted<'MarkRecorded'>[];
  readonly claims: readonly NotedClaim[];
  /** Latest word on each finding. */
  readonly findings: readonly Noted<'FindingNoted'>[];
  /** Answers of the differentials of unknown stains, in the order given. */
  readonly stainAnswers: readonly Noted<'StainAnswered'>[];
  /** Latest naming of each colour, in order of first mention. */
  readonly colours: readonly NotedColour[];
  readonly knots: readonly Noted<'KnotsCounted'>[];
  readonly foundationTests: readonly Noted<'FoundationTested'>[];
  readonly dyeTests: readonly Noted<'DyeTested'>[];
  /** Blots that lie now: started, not yet read. */
  readonly lyingBlots: readonly Noted<'DyeTestStarted'>[];
  readonly quarantine: Noted<'Quarantined'> | null;
  readonly quarantineReleases: readonly Noted<'QuarantineReleased'>[];
  readonly place: string | null;
  readonly out: Noted<'SentOut'> | null;
  readonly notes: readonly Noted<'NoteAdded'>[];
}

export const nothingYet: RugStanding = {
  revision: 0,
  seal: '',
  opened: null,
  visits: [],
  measurements: [],
  weighings: [],
  photographs: [],
  corners: {},
  surveys: [],
  marks: [],
  claims: [],
  findings: [],
  stainAnswers: [],
  colours: [],
  knots: [],
  foundationTests: [],
  dyeTests: [],
  lyingBlots: [],
  quarantine: null,
  quarantineReleases: [],
  place: null,
  out: null,
  notes: [],
};

/** The visit that is under way, or null when the rug is not in the workshop's care. */
export const presentVisit = (standing: RugStanding): VisitStanding | null => {
  const last = standing.visits.at(-1);
  return last === undefined || last.end !== null ? null : last;
};

/** The latest visit, ended or not. */
export const latestVisit = (standing: RugStanding): VisitStanding | null => standing.visits.at(-1) ?? null;
